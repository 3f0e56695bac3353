package darkrim.cli;

import darkrim.diagnostic.Findings;
import darkrim.diagnostic.UnusableInput;
import darkrim.layout.Layout;
import darkrim.layout.SourceSpec;
import darkrim.present.RejectionChart;
import darkrim.present.RejectionCsv;
import darkrim.present.RejectionReport;
import darkrim.present.json.JsonResult;
import darkrim.scene.DistantBody;
import darkrim.study.NoWindow;
import darkrim.study.PlacedScene;
import darkrim.study.UnusableStudy;
import darkrim.study.rejection.RejectionResult;
import darkrim.study.rejection.RejectionSettings;
import darkrim.study.rejection.RejectionStudy;
import darkrim.study.star.StarScanSettings;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code darkrim rejection}: how well the light of Sun and Moon beside the field is kept out. */
@Command(
        name = "rejection",
        description =
                "Finds how much light of a body far away, such as the Moon, reaches the detectors, over its angle from"
                        + " the axis: their irradiance over that of a plane that faces the body.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        footerHeading = "%nExample:%n",
        footer = {
            "  java -jar target/darkrim.jar rejection geometries/dusk-tube.yaml \\",
            "      --angles '10 to 70 step 10' --chart rejection.svg",
            "",
            "Exit codes:",
            "  0  done; this is no verdict",
            "  2  the layout, an option or an output cannot be used; standard error says why",
            "  3  the work was stopped; the outputs hold what was found until then",
            "  4  the program broke; standard error says what to report"
        })
final class RejectionCommand implements Callable<Integer>, LayoutCommand {
    /** Batches of each direction where nothing else is asked for. */
    static final int BATCHES = 8;

    private static final long MOST_BATCHES = 1_000_000;
    private static final double MOON = 0.53;

    private final Surroundings surroundings;

    @Option(
            names = "--angles",
            paramLabel = "DEG",
            order = -20,
            converter = Angles.Reader.class,
            defaultValue = "0 to 80 step 5",
            description = "Angles off axis: 'A to B step C' or a list 'A, B, C'; default: '0 to 80 step 5'.")
    private Angles angles;

    @Option(
            names = "--azimuth",
            paramLabel = "DEG",
            order = -19,
            converter = RealNumber.Azimuth.class,
            description = "Direction about z, from +x toward +y; may be repeated. Default: the source's, otherwise 0.")
    private List<Double> azimuths;

    @Option(
            names = "--source",
            paramLabel = "NAME",
            order = -18,
            description =
                    "A source of kind 'distant' of the layout: its size, entrance and irradiance; its own angle is"
                            + " added to the angles.")
    private String source;

    @Option(
            names = "--diameter",
            paramLabel = "DEG",
            order = -17,
            converter = RealNumber.Diameter.class,
            description = "Angular diameter of the body; default: the source's, otherwise 0.53, of Sun and Moon.")
    private Double diameter;

    @Option(
            names = "--most",
            paramLabel = "N",
            order = -16,
            converter = WholeNumber.Reflections.class,
            defaultValue = "2",
            description = "Reflections that are followed, 1 to 8; default: 2.")
    private long most;

    @Option(
            names = "--onto",
            paramLabel = "PATTERN",
            order = -15,
            defaultValue = StarScanSettings.ACTIVE,
            description = "Surfaces on which light counts; default: '**/active'.")
    private String onto;

    @Option(
            names = "--csv",
            paramLabel = "FILE",
            order = -4,
            description = "Also write the curve into this file, a line for each direction and number of reflections.")
    private Path csv;

    @Option(
            names = "--json",
            paramLabel = "FILE",
            order = -3,
            description = "Also write the whole study into this file.")
    private Path json;

    @Option(
            names = "--chart",
            paramLabel = "FILE",
            order = -2,
            description = "Also draw the curve into this file (.svg or .png).")
    private Path chart;

    @Mixin
    private LayoutOptions options;

    RejectionCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() {
        StudyAttempt attempt = this::run;
        return attempt.code(surroundings.errors());
    }

    private int run() throws UnusableInput, UnusableStudy, IOException {
        if (chart != null) {
            RejectionChart.check(chart.toString());
        }
        String version = Version.number();
        StudyOutputs<RejectionResult> outputs = new StudyOutputs<>();
        outputs.addText("--csv", csv, result -> RejectionCsv.of(result));
        outputs.addText("--json", json, result -> JsonResult.of(result, version));
        outputs.add("--chart", chart, result -> new RejectionChart(result, version).content(chart.toString()));
        if (!outputs.areUsable(options, surroundings.errors())) {
            return ExitCode.UNUSABLE;
        }
        RejectionResult result = surroundings.watched(watch -> {
            Findings findings = new Findings();
            PlacedScene placed = PlacedScene.of(options.layout(), options.effort(), findings, watch);
            NoWindow.require(placed.layout(), "rejection");
            return RejectionStudy.of(placed, settings(placed.layout()), options.effort(), findings, watch);
        });
        surroundings.show(result.warnings(), new RejectionReport(version).of(result));
        if (!outputs.write(result, surroundings.errors())) {
            return ExitCode.UNUSABLE;
        }
        return result.stopped() ? ExitCode.UNDECIDED : ExitCode.DONE;
    }

    private RejectionSettings settings(Layout layout) throws UnusableStudy {
        Optional<SourceSpec.Distant> named = named(layout);
        DistantBody given = named.map(DistantBody::of).orElse(new DistantBody(0, 0, MOON, Optional.empty()));
        DistantBody body = diameter == null ? given : new DistantBody(0, 0, diameter, given.entrance());
        List<Double> all = Stream.concat(angles.degrees().stream(), named.map(SourceSpec.Distant::offAxis).stream())
                .sorted()
                .distinct()
                .toList();
        int batches =
                options.effort().mostSamples().map(RejectionCommand::batches).orElse(BATCHES);
        return new RejectionSettings(
                named.map(SourceSpec.Distant::name),
                body,
                named.flatMap(SourceSpec.Distant::irradiance)
                        .map(OptionalDouble::of)
                        .orElse(OptionalDouble.empty()),
                all,
                azimuths != null
                        ? azimuths.stream().distinct().toList()
                        : List.of(named.map(SourceSpec.Distant::azimuth).orElse(0.0)),
                onto,
                Math.toIntExact(most),
                batches);
    }

    /** Batches that hold so many samples, at least 1; no more than a million. */
    static int batches(long samples) {
        return (int) Math.min(MOST_BATCHES, 1 + (samples - 1) / RejectionSettings.BATCH);
    }

    private Optional<SourceSpec.Distant> named(Layout layout) throws UnusableStudy {
        if (source == null) {
            return Optional.empty();
        }
        return Optional.of(DistantSource.of(layout, source));
    }

    @Override
    public LayoutOptions options() {
        return options;
    }
}
