package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import darkrim.study.LocalThreads;
import darkrim.study.PointWorkers;
import java.io.File;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine.TypeConversionException;

/** Where points are worked out. */
class WorkersOptionTest {
    @Test
    void withoutTheOptionTheyAreWorkedOutHere() throws Exception {
        try (PointWorkers workers = new WorkersOption().open(1)) {
            assertThat(workers).isInstanceOf(LocalThreads.class);
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "spark://head.observatory:7077",
                "spark://a:7077,b:7077",
                "k8s://https://10.0.0.1:6443",
                "yarn",
                "local",
                "local[2]",
                "local[*]",
                "local-cluster[2,1,1024]"
            })
    void aClusterIsNamedAsSparkNamesIt(String text) {
        assertThat(new WorkersOption.Address().convert(text)).isEqualTo(text);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "sprak://host:7077", "spark://", "host:7077", "http://host", "local[]", "yarn cluster"})
    void anythingElseIsRefusedWithAnExample(String text) {
        assertThatThrownBy(() -> new WorkersOption.Address().convert(text))
                .isInstanceOf(TypeConversionException.class)
                .hasMessageContaining("'" + text + "'")
                .hasMessageContaining("spark://host:7077");
    }

    @Test
    void withoutSparkItSaysWhatIsMissingAndHowToStartIt() throws Exception {
        try (URLClassLoader withoutSpark = withoutSpark()) {
            Class<?> address = withoutSpark.loadClass(WorkersOption.Address.class.getName());
            var constructor = address.getDeclaredConstructor();
            constructor.setAccessible(true);
            var convert = address.getMethod("convert", String.class);
            convert.setAccessible(true);
            Object reader = constructor.newInstance();
            assertThatThrownBy(() -> convert.invoke(reader, "spark://head:7077"))
                    .cause()
                    .hasMessageContaining("needs Apache Spark")
                    .hasMessageContaining("spark-submit --master spark://head:7077 darkrim.jar");
        }
    }

    /** What a desktop user has: everything on the class path of the tests but Spark. */
    private static URLClassLoader withoutSpark() throws Exception {
        List<URL> places = new ArrayList<>();
        for (String entry : System.getProperty("java.class.path").split(File.pathSeparator, -1)) {
            if (!Path.of(entry).getFileName().toString().startsWith("spark-")) {
                places.add(Path.of(entry).toUri().toURL());
            }
        }
        return new URLClassLoader(places.toArray(URL[]::new), ClassLoader.getPlatformClassLoader());
    }
}
