package darkrim.recipe;

import java.io.File;
import java.io.IOException;
import java.io.StringWriter;
import java.lang.reflect.Constructor;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.net.MalformedURLException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import javax.tools.JavaCompiler;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;

/** The program with some of its sources changed: these are compiled aside and come before the others. Everything else is what the tests run with. */
final class Overlay extends URLClassLoader {
    private Overlay(URL[] places) {
        super("recipes", places, Overlay.class.getClassLoader());
    }

    /**
     * Compiles, with warnings as errors.
     *
     * @param sources changed and new sources by their path in the tree
     * @param folder an empty folder
     */
    static Overlay of(Map<Path, String> sources, Path folder) throws IOException {
        List<Path> files = new ArrayList<>();
        for (Map.Entry<Path, String> source : sources.entrySet()) {
            Path file = folder.resolve(source.getKey());
            Files.createDirectories(file.getParent());
            files.add(Files.writeString(file, source.getValue()));
        }
        Path classes = Files.createDirectories(folder.resolve("classes"));
        JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
        StringWriter words = new StringWriter();
        try (StandardJavaFileManager manager = compiler.getStandardFileManager(null, null, null)) {
            List<String> options = List.of(
                    "-proc:none",
                    "-implicit:none",
                    "-Xlint:all,-processing,-path,-classfile",
                    "-Werror",
                    "-d",
                    classes.toString());
            boolean done = compiler.getTask(
                            words, manager, null, options, null, manager.getJavaFileObjectsFromPaths(files))
                    .call();
            if (!done) {
                throw new AssertionError(words.toString());
            }
        }
        List<URL> places = new ArrayList<>(List.of(url(classes)));
        for (String entry : System.getProperty("java.class.path").split(File.pathSeparator, -1)) {
            places.add(url(Path.of(entry)));
        }
        return new Overlay(places.toArray(URL[]::new));
    }

    private static URL url(Path place) throws MalformedURLException {
        return place.toUri().toURL();
    }

    /** Our own classes from here, so that changed and unchanged ones know each other; libraries from where they are loaded already. */
    @Override
    protected Class<?> loadClass(String name, boolean resolve) throws ClassNotFoundException {
        if (!name.startsWith("darkrim.")) {
            return super.loadClass(name, resolve);
        }
        synchronized (getClassLoadingLock(name)) {
            Class<?> loaded = findLoadedClass(name);
            return loaded == null ? findClass(name) : loaded;
        }
    }

    /** Runs every test of a class and returns their names. */
    List<String> run(String test) throws ReflectiveOperationException {
        Class<?> type = loadClass(test);
        List<String> run = new ArrayList<>();
        for (Method method : Arrays.stream(type.getDeclaredMethods())
                .filter(each -> each.isAnnotationPresent(Test.class))
                .toList()) {
            Constructor<?> constructor = type.getDeclaredConstructor();
            constructor.setAccessible(true);
            method.setAccessible(true);
            try {
                method.invoke(constructor.newInstance());
            } catch (InvocationTargetException failed) {
                throw new AssertionError(test + "." + method.getName(), failed.getCause());
            }
            run.add(method.getName());
        }
        return run;
    }
}
