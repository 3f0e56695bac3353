package darkrim.cli;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import picocli.CommandLine;
import picocli.CommandLine.Help.Ansi;

/** The commands by name. A start makes only the one that is asked for: to read the annotations of all takes longer than a small check. */
final class Commands {
    /** For measuring the program, not for its users: no help names it. */
    private static final String HIDDEN = "bench-trace";

    /** Columns of a terminal that was not made wider. */
    private static final int HELP_WIDTH = 80;

    private static final Map<String, Function<Surroundings, Object>> BY_NAME = byName();

    private Commands() {}

    private static Map<String, Function<Surroundings, Object>> byName() {
        Map<String, Function<Surroundings, Object>> made = new LinkedHashMap<>();
        made.put("new", surroundings -> NewCommand.line(surroundings, Answers::ofPerson));
        made.put("check", CheckCommand::new);
        made.put("seen-from", SeenFromCommand::new);
        made.put("pixel-view", PixelViewCommand::new);
        made.put("paths", PathsCommand::new);
        made.put("faces", FacesCommand::new);
        made.put("draw", DrawCommand::new);
        made.put("section", SectionCommand::new);
        made.put("maps", MapsCommand::new);
        made.put("export", ExportCommand::new);
        made.put("star-scan", StarScanCommand::new);
        made.put("rejection", RejectionCommand::new);
        made.put("sweep", SweepCommand::new);
        made.put("tolerance", ToleranceCommand::new);
        made.put("advise", AdviseCommand::new);
        made.put("compare", CompareCommand::new);
        made.put("report", surroundings -> new ReportCommand(surroundings, System.getenv()));
        made.put("finishes", FinishesCommand::new);
        made.put("place-vanes", PlaceVanesCommand::new);
        made.put("view", ViewCommand::new);
        made.put("completion", CompletionCommand::new);
        made.put(HIDDEN, BenchTraceCommand::new);
        return made;
    }

    /** The names, in the order of the help. */
    static List<String> names() {
        return BY_NAME.keySet().stream().filter(name -> !name.equals(HIDDEN)).toList();
    }

    /** The program with the one command that the arguments begin with, or with all where they begin otherwise. */
    static CommandLine forArguments(Surroundings surroundings, String... arguments) {
        Function<Surroundings, Object> asked = arguments.length > 0 ? BY_NAME.get(arguments[0]) : null;
        return asked == null ? all(surroundings) : dressed(surroundings, List.of(asked));
    }

    /** The program with all its commands. */
    static CommandLine all(Surroundings surroundings) {
        return dressed(surroundings, List.copyOf(BY_NAME.values()));
    }

    private static CommandLine dressed(Surroundings surroundings, List<Function<Surroundings, Object>> commands) {
        CommandLine line = new CommandLine(new DarkrimCommand());
        commands.forEach(command -> line.addSubcommand(command.apply(surroundings)));
        line.getSubcommands().values().forEach(SharedOptions::fit);
        line.setOut(surroundings.output());
        line.setErr(surroundings.errors());
        line.setColorScheme(CommandLine.Help.defaultColorScheme(Ansi.OFF));
        line.setUsageHelpWidth(HELP_WIDTH);
        line.registerConverter(Path.class, new FileName());
        // A file whose name begins so is a file, not a list of further words.
        line.setExpandAtFiles(false);
        return line;
    }
}
