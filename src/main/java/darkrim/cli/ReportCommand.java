package darkrim.cli;

import darkrim.diagnostic.UnusableInput;
import darkrim.present.Printable;
import darkrim.present.review.Imprint;
import darkrim.present.review.ReviewPage;
import darkrim.present.review.ReviewPdf;
import darkrim.study.review.Review;
import darkrim.study.review.ReviewStudy;
import darkrim.verdict.Watch;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code darkrim report}: a file for a review. */
@Command(
        name = "report",
        description =
                "Checks a layout and writes what a review needs into one file: the verdict, every requirement with its"
                        + " evidence, margins, light paths, maps, section drawings, finishes, and what is not covered.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        footerHeading = "%nExample:%n",
        footer = {
            "  java -jar target/darkrim.jar report geometries/nightglow-b.yaml -o review.html",
            "",
            "The file refers to nothing outside itself. Where SOURCE_DATE_EPOCH is set",
            "(seconds since 1970, UTC) the date is that moment, and an HTML file has the same",
            "bytes whenever it is made.",
            "",
            "Exit codes:",
            "  0  every requirement holds; the files are written, as with 1 and 3",
            "  1  a requirement does not hold",
            "  2  a layout, an option or an output cannot be used; standard error says why",
            "  3  no requirement fails, but at least one is not decided; or the work was",
            "     stopped, and nothing was written",
            "  4  the program broke; standard error says what to report"
        })
final class ReportCommand implements Callable<Integer>, LayoutCommand {
    private static final List<String> ENDINGS = List.of(".html", ".pdf");

    private final Surroundings surroundings;
    private final Map<String, String> environment;

    @Option(
            names = {"-o", "--output"},
            paramLabel = "FILE",
            order = -10,
            required = true,
            description = "The review: .html for a browser, .pdf for paper; may be repeated.")
    private List<Path> outputs;

    @Option(
            names = "--against",
            paramLabel = "OTHER",
            order = -9,
            description = "The layout as it was before: what differs is told too.")
    private Path against;

    @Option(
            names = "--builds",
            paramLabel = "N",
            order = -8,
            converter = WholeNumber.Builds.class,
            description = "Also look for the worst case within the tolerances, and sample N builds; takes several times"
                    + " as long.")
    private Long builds;

    @Mixin
    private LayoutOptions options;

    ReportCommand(Surroundings surroundings, Map<String, String> environment) {
        this.surroundings = surroundings;
        this.environment = Map.copyOf(environment);
    }

    @Override
    public Integer call() {
        OutputFiles files = new OutputFiles(outputs, ENDINGS, options);
        Optional<ReviewDate> date = ReviewDate.of(environment, surroundings.errors());
        List<String> problems = files.problems();
        problems.forEach(problem -> surroundings.errors().println("darkrim: " + problem + "; nothing was done."));
        List<Path> inputs =
                Stream.of(options.layout(), against).filter(Objects::nonNull).toList();
        boolean usable = OutputFile.areUsable(files.files(), inputs, surroundings.errors());
        if (!problems.isEmpty() || !usable || date.isEmpty()) {
            return ExitCode.UNUSABLE;
        }
        try {
            return surroundings
                    .watched(watch -> drawn(date.get(), watch))
                    .map(drawn -> written(files, drawn))
                    .orElseGet(() -> {
                        surroundings.errors().println("darkrim: the work was stopped; nothing was written.");
                        return ExitCode.UNDECIDED;
                    });
        } catch (UnusableInput unusable) {
            return Refusal.of(unusable.findings(), surroundings.errors());
        }
    }

    /**
     * A review on its pages, which are not written yet.
     *
     * @param review what was found
     * @param files the bytes of each file
     * @param lacking what of its letters a document lacks, in words
     */
    private record Drawn(Review review, Map<Path, byte[]> files, Set<String> lacking) {}

    /** The review on its pages; empty if the work was stopped, be it while the last picture was drawn. */
    private Optional<Drawn> drawn(ReviewDate date, Watch watch) throws UnusableInput {
        Review review = ReviewStudy.of(
                options.layout(),
                Optional.ofNullable(against),
                new ReviewStudy.Settings(
                        options.effort(), Optional.ofNullable(builds).map(Math::toIntExact)),
                watch);
        if (review.stopped()) {
            return Optional.empty();
        }
        int threads = options.effort().threads();
        Imprint imprint = new Imprint(Version.number(), date.text(), command(review));
        Set<String> lacking = new LinkedHashSet<>();
        Map<Path, byte[]> made = new LinkedHashMap<>();
        for (Path path : outputs) {
            watch.progress("pages", made.size(), outputs.size());
            if (watch.stop()) {
                return Optional.empty();
            }
            made.put(
                    path,
                    OutputFiles.ending(path).equals(".pdf")
                            ? ReviewPdf.of(review, imprint, threads, lacking::add)
                            : ReviewPage.of(review, imprint, threads).getBytes(StandardCharsets.UTF_8));
        }
        return watch.stop() ? Optional.empty() : Optional.of(new Drawn(review, made, lacking));
    }

    private int written(OutputFiles files, Drawn drawn) {
        if (!files.write(drawn.files(), surroundings.errors())) {
            return ExitCode.UNUSABLE;
        }
        drawn.lacking()
                .forEach(letters -> surroundings
                        .errors()
                        .println("darkrim: warning: the PDF shows # or ? in place of " + letters
                                + "; the HTML shows them where the reader's fonts do."));
        surroundings.show(drawn.review().result().warnings(), words(drawn.review()));
        return ExitCode.of(drawn.review().result().judgement().verdict());
    }

    private String words(Review review) {
        List<String> names =
                outputs.stream().map(path -> Printable.of(path.toString())).toList();
        return review.result().judgement().verdict() + ": the review is in " + String.join(" and ", names) + "."
                + System.lineSeparator();
    }

    /** The command that makes the same numbers again, with what the layouts leave open written out. */
    private String command(Review review) {
        StringBuilder words = new StringBuilder(
                "darkrim report " + ShellQuote.of(options.layout().toString()));
        if (against != null) {
            words.append(" --against ").append(ShellQuote.of(against.toString()));
        }
        words.append(" --seed ").append(review.result().effort().seed());
        words.append(" --samples ").append(review.result().effort().mostSamples());
        if (options.effort().warm()) {
            words.append(" --warm");
        }
        if (builds != null) {
            words.append(" --builds ").append(builds);
        }
        return words.append(" -o review.html").toString();
    }

    @Override
    public LayoutOptions options() {
        return options;
    }
}
