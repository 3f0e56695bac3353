package darkrim.cli;

import static darkrim.study.vanes.VaneText.number;

import darkrim.layout.LayoutSchema;
import darkrim.layout.form.Letters;
import darkrim.layout.form.Wording;
import darkrim.study.first.FirstBaffle;
import darkrim.study.first.FirstLayout;
import darkrim.study.first.FirstWishes;
import darkrim.verdict.Watch;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import org.apache.commons.text.WordUtils;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import picocli.CommandLine.TypeConversionException;

/** {@code darkrim new}: a first layout from a few answers. */
@Command(
        name = "new",
        description = {
            "Writes a first layout: detectors behind a lid with openings, and walls.",
            "On a terminal it asks for what no option says; the return key takes the value in brackets. Elsewhere an"
                    + " option must say it where no default is named."
        },
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        footerHeading = "%nExample:%n",
        footer = {
            "  java -jar target/darkrim.jar new first.yaml --columns 2 --rows 2 \\",
            "      --pixels 2048 --pixel-pitch 18 --die-margin 0.6 --spacing 40.2 \\",
            "      --pupil-distance 320 --f-number 7 --edge-height 2.4",
            "",
            "Exit codes:",
            "  0  the layout is written; this is no verdict",
            "  2  an option, an answer or the file cannot be used; standard error says why",
            "  3  stopped by Ctrl-C; nothing was written",
            "  4  the program broke; standard error says what to report"
        })
final class NewCommand implements Callable<Integer> {
    private static final String TITLE = "--title";
    private static final String TITLE_EXPECTED = "expected a title of 1 to 300 characters, none of them hidden";
    private static final String PUPIL_DIAMETER = "--pupil-diameter";
    /** Columns of what is printed, as of every report. */
    private static final int WIDTH = 100;

    private static final int FIRST_IN_HELP = -100;
    private static final String SCHEMA_NAME = "layout.schema.json";

    private final Surroundings surroundings;
    private final Supplier<Optional<Answers>> nearby;

    @Parameters(paramLabel = "FILE", description = "The layout file to write.")
    private Path file;

    @Option(
            names = TITLE,
            paramLabel = "TEXT",
            defaultValue = "First baffle",
            description = "Title; default: First baffle.")
    private String title;

    @Option(
            names = PUPIL_DIAMETER,
            paramLabel = "MM",
            converter = RealNumber.Length.class,
            description = "Diameter of the pupil, mm, instead of --f-number.")
    private Double pupilDiameter;

    @Option(
            names = "--schema",
            description = "Also write " + SCHEMA_NAME + " beside it, with which editors complete and check the keys.")
    private boolean withSchema;

    @Option(names = "--overwrite", description = "Replace the files if there are such.")
    private boolean overwrite;

    @Spec
    private CommandSpec spec;

    /** What options answered before anything was asked. */
    private Set<Question> options = Set.of();

    private NewCommand(Surroundings surroundings, Supplier<Optional<Answers>> nearby) {
        this.surroundings = surroundings;
        this.nearby = nearby;
    }

    /**
     * The command, with an option for each question.
     *
     * @param surroundings where it runs
     * @param nearby finds out whether there is a person to ask
     */
    static CommandLine line(Surroundings surroundings, Supplier<Optional<Answers>> nearby) {
        CommandLine line = new CommandLine(new NewCommand(surroundings, nearby));
        int order = FIRST_IN_HELP;
        for (Question question : Question.values()) {
            line.getCommandSpec()
                    .addOption(OptionSpec.builder(question.option())
                            .paramLabel(question.label())
                            .type(Double.class)
                            .order(order++)
                            .converters(text -> read(question, text))
                            .description(question.words()
                                    + (question.hasDefault() ? "; default: " + defaultWords(question) + "." : "."))
                            .build());
        }
        return line;
    }

    private static String defaultWords(Question question) {
        return question == Question.FIELD_HALF_WIDTH
                ? "5 mm beyond the last pixel, rounded up"
                : number(question.suggested(Map.of()));
    }

    private static Double read(Question question, String text) {
        OptionalDouble value = question.read(text);
        if (value.isEmpty()) {
            throw new TypeConversionException(question.expected() + ", got '" + Wording.shortened(text) + "'");
        }
        return value.getAsDouble();
    }

    @Override
    public Integer call() {
        OutputFile output = new OutputFile("FILE", file, overwrite);
        Path beside = file.resolveSibling(SCHEMA_NAME);
        OutputFile schema = new OutputFile("--schema", beside, overwrite);
        List<String> problems = new ArrayList<>();
        output.problem(Path.of("")).ifPresent(why -> problems.add(file + ": " + why));
        if (withSchema) {
            schema.problem(Path.of("")).ifPresent(why -> problems.add("--schema " + beside + ": " + why));
        }
        Map<Question, Double> given = given(problems);
        Optional<Answers> person = nearby.get();
        if (person.isEmpty()) {
            fill(given, problems);
        }
        // Before anything is asked: no answer can mend what options say.
        problems.addAll(Clash.among(given));
        if (!isTitle(title)) {
            problems.add(TITLE + ": " + TITLE_EXPECTED);
        }
        pupilProblem(given).ifPresent(problems::add);
        if (!problems.isEmpty()) {
            return refuse(problems);
        }
        Watch watch = surroundings.watch().get();
        if (person.isPresent() && !ask(given, person.get(), watch)) {
            surroundings.errors().println();
            return watch.stop()
                    ? stopped()
                    : refuse(List.of("the answers ended before the last question, expected all of them"));
        }
        FirstWishes wishes = Question.wishes(given);
        FirstBaffle baffle = FirstBaffle.of(wishes);
        FirstLayout layout = new FirstLayout(
                Wording.oneLine(title), wishes, baffle, withSchema ? Optional.of(SCHEMA_NAME) : Optional.empty());
        boolean written = (!withSchema || schema.write(LayoutSchema.text(), surroundings.errors()))
                && output.write(layout.text(), surroundings.errors());
        if (written) {
            surroundings.output().print(report(wishes, baffle));
            surroundings.output().flush();
        }
        return written ? ExitCode.DONE : ExitCode.UNUSABLE;
    }

    /** What options say. */
    private Map<Question, Double> given(List<String> problems) {
        Map<Question, Double> given = new EnumMap<>(Question.class);
        for (Question question : Question.values()) {
            Double value = spec.commandLine().getParseResult().matchedOptionValue(question.option(), null);
            if (value != null) {
                given.put(question, value);
            }
        }
        if (pupilDiameter != null && given.containsKey(Question.F_NUMBER)) {
            problems.add("--f-number and " + PUPIL_DIAMETER + " say the same, expected one of them");
        } else if (pupilDiameter != null && pupilDiameter == 0) {
            problems.add(PUPIL_DIAMETER + ": expected a diameter above 0");
        }
        return given;
    }

    /** Puts defaults where options say nothing, and tells what has none. */
    private void fill(Map<Question, Double> given, List<String> problems) {
        List<String> missing = new ArrayList<>();
        for (Question question : Question.values()) {
            settlePupil(question, given);
            boolean needed = question.matters(given) && !given.containsKey(question);
            if (needed && question.hasDefault() && missing.isEmpty()) {
                given.put(question, question.suggested(given));
            } else if (needed && !question.hasDefault()) {
                missing.add(question.option() + " ("
                        + (question == Question.F_NUMBER ? "or " + PUPIL_DIAMETER : question.words()) + ")");
            }
        }
        if (!missing.isEmpty()) {
            problems.add("nobody can be asked here, and these options are missing: " + String.join(", ", missing));
        }
    }

    /** Asks what options do not say; false where the answers ended or were stopped. */
    private boolean ask(Map<Question, Double> given, Answers answers, Watch watch) {
        options = given.isEmpty() ? Set.of() : EnumSet.copyOf(given.keySet());
        for (Question question : Question.values()) {
            settlePupil(question, given);
            if (question.matters(given) && !given.containsKey(question)) {
                OptionalDouble answer = answer(question, given, answers, watch);
                if (answer.isEmpty()) {
                    return false;
                }
                given.put(question, answer.getAsDouble());
            }
        }
        askTitle(answers, watch);
        return !watch.stop();
    }

    /** All else is known by then: where the answers ended, the title that is suggested will do. */
    private void askTitle(Answers answers, Watch watch) {
        boolean open = !spec.commandLine().getParseResult().hasMatchedOption(TITLE);
        while (open) {
            surroundings.errors().print("Title [" + title + "]: ");
            surroundings.errors().flush();
            String said = answers.next(watch::stop)
                    .map(String::strip)
                    .filter(text -> !text.isEmpty())
                    .orElse(title);
            open = !isTitle(said);
            if (open) {
                surroundings.errors().println("  " + TITLE_EXPECTED + ".");
            } else {
                title = said;
            }
        }
    }

    private static boolean isTitle(String text) {
        return Wording.oneLine(text).matches(Letters.LINE.pattern());
    }

    private OptionalDouble answer(Question question, Map<Question, Double> given, Answers answers, Watch watch) {
        double suggested = question.suggested(given);
        while (true) {
            surroundings.errors().print(question.words() + " [" + number(suggested) + "]: ");
            surroundings.errors().flush();
            Optional<String> line = answers.next(watch::stop);
            if (line.isEmpty()) {
                return OptionalDouble.empty();
            }
            OptionalDouble value = line.get().isBlank() ? OptionalDouble.of(suggested) : question.read(line.get());
            Optional<String> wrong =
                    value.isEmpty() ? Optional.of(question.expected()) : clash(question, given, value.getAsDouble());
            if (wrong.isEmpty()) {
                return value;
            }
            surroundings.errors().println("  " + wrong.get() + ".");
        }
    }

    /** What does not go together is refused where the last of it is asked, and only that is asked again. */
    private Optional<String> clash(Question question, Map<Question, Double> given, double value) {
        Map<Question, Double> tried = new EnumMap<>(given);
        tried.put(question, value);
        return Clash.of(question, tried, options)
                .or(() -> question == Question.PUPIL_DISTANCE ? pupilProblem(tried) : Optional.empty());
    }

    /** That a given diameter of the pupil makes no f-number of a beam, once the distance is known. */
    private Optional<String> pupilProblem(Map<Question, Double> given) {
        if (pupilDiameter == null || pupilDiameter == 0 || !given.containsKey(Question.PUPIL_DISTANCE)) {
            return Optional.empty();
        }
        String number = number(given.get(Question.PUPIL_DISTANCE) / pupilDiameter);
        return Question.F_NUMBER.read(number).isEmpty()
                ? Optional.of(PUPIL_DIAMETER + ": the f-number is " + number + ", " + Question.F_NUMBER.expected())
                : Optional.empty();
    }

    /** A pupil diameter stands for the f-number, once the distance is known. */
    private void settlePupil(Question question, Map<Question, Double> given) {
        Double distance = given.get(Question.PUPIL_DISTANCE);
        if (question == Question.F_NUMBER && pupilDiameter != null) {
            given.put(question, distance == null ? 1.0 : distance / pupilDiameter);
        }
    }

    private String report(FirstWishes wishes, FirstBaffle baffle) {
        StringBuilder text = new StringBuilder();
        text.append("Written: ")
                .append(shown())
                .append(", openings of ")
                .append(number(baffle.opening()))
                .append(" mm, edges at ")
                .append(number(wishes.edgeHeight()))
                .append(" mm.\n");
        if (baffle.conflicts().isEmpty()) {
            text.append("Feasible: h = ")
                    .append(number(wishes.edgeHeight()))
                    .append(" mm is within N (d - 2t) = ")
                    .append(number(wishes.greatestHeight()))
                    .append(" mm.\n");
        }
        if (!FirstLayout.hasBonds(wishes)) {
            text.append("No bond wires are written: of this many rows of detectors not all could leave outward.\n");
        }
        baffle.conflicts()
                .forEach(conflict -> text.append(WordUtils.wrap("CONFLICT: " + conflict, WIDTH, "\n", false))
                        .append('\n'));
        return text.append("Next: ")
                .append(Started.words())
                .append(" check ")
                .append(ShellQuote.of(shown()))
                .append('\n')
                .toString();
    }

    private String shown() {
        return Wording.oneLine(file.toString());
    }

    private int stopped() {
        surroundings.errors().println("darkrim: stopped; nothing was written.");
        return ExitCode.UNDECIDED;
    }

    private int refuse(List<String> problems) {
        problems.forEach(problem -> surroundings.errors().println("darkrim: " + problem));
        surroundings.errors().println("darkrim: nothing was written.");
        return ExitCode.UNUSABLE;
    }
}
