package darkrim.cli;

import darkrim.present.Ink;
import darkrim.verdict.Watch;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.io.Writer;
import java.nio.charset.Charset;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;

/** Where the program begins. */
public final class Main {
    private Main() {}

    /** Runs a command and ends with its exit code. */
    public static void main(String[] arguments) {
        // Charts need no display, and must not fail where the one that is named cannot be reached.
        System.setProperty("java.awt.headless", "true");
        Map<String, String> environment = System.getenv();
        Terminal terminal = Terminal.detect();
        PrintStream errors = System.err;
        System.setErr(LibraryErrors.before(errors));
        Interruption interruption = new Interruption(errors);
        interruption.listen();
        Supplier<Watch> watch = () -> terminal.progress(environment)
                ? new Progress(errors, interruption::asked)
                : new Quiet(interruption::asked);
        Surroundings surroundings = new Surroundings(
                // Not System.out, which keeps to itself why something could not be written.
                OutputWriter.to(writer(new FileOutputStream(FileDescriptor.out), "stdout.encoding")),
                new PrintWriter(new VisibleWriter(writer(errors, "stderr.encoding")), true),
                terminal.colour(environment) ? Ink.COLOUR : Ink.PLAIN,
                watch);
        interruption.exit(run(surroundings, arguments));
    }

    /** Writes in the encoding of the terminal, which Java names from 19 on and otherwise takes for its default. */
    private static Writer writer(OutputStream stream, String encoding) {
        Charset charset = Charset.forName(
                System.getProperty(encoding, Charset.defaultCharset().name()));
        return new OutputStreamWriter(stream, charset);
    }

    /** Runs a command in given surroundings and returns its exit code; throws nothing. */
    static int run(Surroundings surroundings, String... arguments) {
        CommandLine line = Commands.forArguments(surroundings, arguments);
        line.setParameterExceptionHandler((wrong, given) -> complain(surroundings.errors(), line, wrong, given));
        line.setExecutionExceptionHandler((failure, command, given) -> broken(failure, line, surroundings));
        try {
            return surroundings.output().delivered(line.execute(arguments), surroundings.errors());
        } catch (Throwable failure) {
            // Errors, such as too little memory, pass by the handler above.
            return broken(failure, line, surroundings);
        }
    }

    private static int broken(Throwable failure, CommandLine line, Surroundings surroundings) {
        Optional<LayoutOptions> options = Optional.ofNullable(line.getParseResult())
                .map(ParseResult::subcommand)
                .map(given -> given.commandSpec().userObject())
                .filter(LayoutCommand.class::isInstance)
                .map(command -> ((LayoutCommand) command).options());
        Breakage.report(
                failure,
                options.map(given -> String.valueOf(given.layout())).orElse("the command line"),
                options.map(LayoutOptions::verbose).orElse(false),
                surroundings.errors());
        return ExitCode.BROKEN;
    }

    private static int complain(PrintWriter errors, CommandLine line, ParameterException wrong, String... given) {
        WrongUse.of(line, wrong, given).forEach(words -> errors.println("darkrim: " + words));
        errors.println(
                "'" + wrong.getCommandLine().getCommandSpec().qualifiedName() + " --help' shows how it is used.");
        errors.flush();
        return ExitCode.UNUSABLE;
    }
}
