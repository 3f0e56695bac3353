package darkrim.cli;

import darkrim.diagnostic.Finding;
import darkrim.layout.FinishLibrary;
import darkrim.layout.LayoutReader;
import darkrim.layout.LayoutReading;
import darkrim.layout.form.Wording;
import darkrim.present.FinishChart;
import darkrim.present.FinishReport;
import darkrim.present.ListedFinish;
import darkrim.present.table.PartTables;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code darkrim finishes}: the finish library, or the finishes of a layout, as a list and as curves. */
@Command(
        name = "finishes",
        description =
                "Lists the finishes that come with the program, or those of a layout: what they reflect at several"
                        + " angles, and where the numbers come from.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        footerHeading = "%nExample:%n",
        footer = {
            "  java -jar target/darkrim.jar finishes smooth-black-lacquer \\",
            "      rough-anodise-black --chart blacks.svg",
            "",
            "In a layout, 'black: {library: rough-anodise-black}' takes an entry for the",
            "layout's band.",
            "",
            "Exit codes:",
            "  0  done",
            "  2  a name, the layout, an option or an output cannot be used; standard error",
            "     says why",
            "  4  the program broke; standard error says what to report"
        })
final class FinishesCommand implements Callable<Integer> {
    /** Bands of the list where none is given, um: visible, and three windows of the air. */
    private static final double[][] BANDS = {{0.4, 0.7}, {1.2, 2.5}, {3, 5}, {8, 12}};

    private final Surroundings surroundings;

    @Parameters(paramLabel = "NAME", arity = "0..*", description = "Names of finishes; default: all.")
    private List<String> names = new ArrayList<>();

    @Option(names = "--layout", paramLabel = "FILE", description = "List the finishes of this layout instead.")
    private Path layout;

    @Option(
            names = "--band",
            paramLabel = "FROM,TO",
            converter = BandOption.Reader.class,
            description = "Band of wavelengths for the library, um, such as 1,2.5; default: several.")
    private BandOption band;

    @Option(
            names = "--chart",
            paramLabel = "FILE",
            description = "Also draw reflectance against angle and BRDF into this file (.svg or .png).")
    private Path chart;

    @Option(names = "--overwrite", description = "Replace the output file if there is one.")
    private boolean overwrite;

    @Mixin
    private TableOptions tables;

    FinishesCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() {
        if (band != null && layout != null) {
            return refuse("--band: a layout states its own band; leave the option out");
        }
        if (chart != null && !FinishChart.isPicture(chart.toString())) {
            return refuse(
                    "--chart " + Wording.shortened(chart.toString()) + ": expected a name that ends in .svg or .png");
        }
        Optional<OutputFile> output =
                Optional.ofNullable(chart).map(file -> new OutputFile("--chart", file, overwrite));
        Path input = layout == null ? Path.of("") : layout;
        List<OutputFile> files = tables.files(output.stream().toList(), overwrite);
        if (!OutputFile.areUsable(files, List.of(input), surroundings.errors())) {
            return ExitCode.UNUSABLE;
        }
        List<ListedFinish> known = new ArrayList<>();
        List<Finding> warnings = new ArrayList<>();
        if (layout == null) {
            FinishLibrary.entries().forEach(entry -> add(entry, known));
        } else {
            LayoutReading reading = LayoutReader.read(layout);
            if (reading.hasErrors()) {
                return Refusal.of(reading.findings(), surroundings.errors());
            }
            // Whether a finish is used does not matter here.
            reading.findings().stream()
                    .filter(finding -> !finding.code().equals("unused"))
                    .forEach(warnings::add);
            reading.layout()
                    .orElseThrow()
                    .finishes()
                    .values()
                    .forEach(finish -> known.add(
                            new ListedFinish(finish.name(), finish.source(), "the layout's", finish.reflection())));
        }
        List<String> unknown = names.stream()
                .distinct()
                .filter(name -> known.stream().noneMatch(each -> each.name().equals(name)))
                .toList();
        if (!unknown.isEmpty()) {
            unknown.forEach(name -> surroundings.errors().println("darkrim: " + unknown(name, known)));
            surroundings.errors().flush();
            return ExitCode.UNUSABLE;
        }
        List<ListedFinish> chosen = names.stream()
                .distinct()
                .flatMap(name -> known.stream().filter(each -> each.name().equals(name)))
                .toList();
        List<ListedFinish> shown = names.isEmpty() ? known : chosen;
        if (shown.isEmpty()) {
            return refuse(
                    layout == null
                            ? "no finish has values for all of that band, expected a narrower one"
                            : "the layout has no finishes, expected one that has, or no --layout for those of the program");
        }
        if (chart != null && shown.size() > FinishChart.MOST) {
            return refuse("--chart draws at most " + FinishChart.MOST + " curves and these are " + shown.size()
                    + "; name some finishes, or a band");
        }
        surroundings.show(warnings, FinishReport.of(shown));
        if (output.isPresent()
                && !output.get()
                        .write(
                                new FinishChart(shown, Version.number()).content(chart.toString()),
                                surroundings.errors())) {
            return ExitCode.UNUSABLE;
        }
        return tables.write(() -> PartTables.finishes(shown, Version.number()), overwrite, surroundings.errors())
                ? ExitCode.DONE
                : ExitCode.UNUSABLE;
    }

    private String unknown(String name, List<ListedFinish> known) {
        return "there is no finish '" + Wording.shortened(name) + "'"
                + (band == null ? "" : " with values for that band") + ", "
                + Wording.suggestion(
                        name, known.stream().map(ListedFinish::name).distinct().toList());
    }

    private void add(FinishLibrary.Entry entry, List<ListedFinish> known) {
        for (double[] each : band == null ? BANDS : new double[][] {{band.from(), band.to()}}) {
            entry.in(each[0], each[1])
                    .ifPresent(reflection -> known.add(new ListedFinish(
                            entry.name(),
                            entry.what() + "; " + entry.source()
                                    + (entry.dyed() ? "; caution: no black beyond 0.75 um" : ""),
                            Wording.number(each[0]) + "-" + Wording.number(each[1]) + " um",
                            reflection)));
        }
    }

    private int refuse(String why) {
        surroundings.errors().println("darkrim: " + why + ".");
        surroundings.errors().flush();
        return ExitCode.UNUSABLE;
    }
}
