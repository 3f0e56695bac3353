package darkrim.cli;

import darkrim.present.Ink;
import darkrim.verdict.Watch;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.EOFException;
import java.io.File;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;

/**
 * The built jar in one process that runs command after command in a folder: Java compiles the program to machine code once for all of them.
 * What a process of its own does besides, streams, signals and its end, is left to {@link Jar}.
 */
final class WarmJar implements AutoCloseable {
    private final Path folder;
    private Process process;
    private DataOutputStream words;
    private DataInputStream answers;

    /** Starts the process in a folder. */
    WarmJar(Path folder) throws IOException {
        this.folder = folder;
        start();
    }

    private void start() throws IOException {
        // The jar comes first: of the classes of the build only this one and Run are taken.
        String classes = Path.of("target/test-classes").toAbsolutePath().toString();
        process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Djava.awt.headless=true",
                        "-cp",
                        Jar.path() + File.pathSeparator + classes,
                        WarmJar.class.getName())
                .directory(folder.toFile())
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        words = new DataOutputStream(process.getOutputStream());
        answers = new DataInputStream(process.getInputStream());
    }

    /** Runs a command to its end. One that dies or does not come to an end fails its test; the next has a new process. */
    Run run(String... arguments) throws IOException {
        Process mine = process;
        Future<?> patience = CompletableFuture.runAsync(
                mine::destroyForcibly, CompletableFuture.delayedExecutor(Jar.PATIENCE_SECONDS, TimeUnit.SECONDS));
        try {
            words.writeInt(arguments.length);
            for (String argument : arguments) {
                words.writeUTF(argument);
            }
            words.flush();
            return new Run(answers.readInt(), read(), read());
        } catch (IOException lost) {
            mine.destroyForcibly();
            start();
            throw new IOException("the process died, or came to no end within " + Jar.PATIENCE_SECONDS + " s", lost);
        } finally {
            patience.cancel(false);
        }
    }

    private String read() throws IOException {
        byte[] text = new byte[answers.readInt()];
        answers.readFully(text);
        return new String(text, StandardCharsets.UTF_8);
    }

    @Override
    public void close() {
        process.destroy();
    }

    /** What the process does: reads how many words a command has and the words; answers with exit code, standard output and errors. */
    public static void main(String[] none) throws IOException {
        DataInputStream words = new DataInputStream(System.in);
        DataOutputStream answers = new DataOutputStream(new FileOutputStream(FileDescriptor.out));
        // Whatever prints by itself must not speak between.
        System.setOut(System.err);
        while (true) {
            String[] arguments;
            try {
                arguments = new String[words.readInt()];
            } catch (EOFException end) {
                return;
            }
            for (int i = 0; i < arguments.length; i++) {
                arguments[i] = words.readUTF();
            }
            StringWriter output = new StringWriter();
            StringWriter errors = new StringWriter();
            int code = Main.run(
                    new Surroundings(OutputWriter.to(output), new PrintWriter(errors), Ink.PLAIN, () -> Watch.NONE),
                    arguments);
            answers.writeInt(code);
            write(answers, output.toString());
            write(answers, errors.toString());
            answers.flush();
        }
    }

    private static void write(DataOutputStream answers, String text) throws IOException {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        answers.writeInt(bytes.length);
        answers.write(bytes);
    }
}
