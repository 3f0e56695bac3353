package darkrim.cli;

import darkrim.diagnostic.Findings;
import darkrim.diagnostic.UnusableInput;
import darkrim.layout.form.Wording;
import darkrim.present.StarScanCsv;
import darkrim.present.StarScanReport;
import darkrim.present.json.JsonResult;
import darkrim.present.picture.StarMapPicture;
import darkrim.study.NoWindow;
import darkrim.study.PlacedScene;
import darkrim.study.UnusableStudy;
import darkrim.study.star.StarRegion;
import darkrim.study.star.StarScan;
import darkrim.study.star.StarScanResult;
import darkrim.study.star.StarScanSettings;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code darkrim star-scan}: where no bright star must stand. */
@Command(
        name = "star-scan",
        description =
                "Maps how much of a star's light reaches the detectors after one reflection, over the position of the star"
                        + " on and around them, and says where no bright star must stand.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        footerHeading = "%nExample:%n",
        footer = {
            "  java -jar target/darkrim.jar star-scan geometries/nightglow-a.yaml \\",
            "      --picture stars.png",
            "",
            "Put patterns in single quotes: they hold stars, which a shell takes for its own.",
            "No date is written unless --date gives one: the same command makes the same",
            "bytes.",
            "",
            "Exit codes:",
            "  0  done; this is no verdict",
            "  2  the layout, an option or an output cannot be used; standard error says why",
            "  3  the work was stopped; the outputs hold what was found until then",
            "  4  the program broke; standard error says what to report"
        })
final class StarScanCommand implements Callable<Integer>, LayoutCommand {
    /** A bound on the work and on the memory it takes. */
    private static final String MOST_POSITIONS = "60000";

    private final Surroundings surroundings;

    @Option(
            names = "--level",
            paramLabel = "SHARE",
            order = -20,
            converter = RealNumber.FluxShare.class,
            defaultValue = "1e-3",
            description = "Share of the star's flux that is too much; default: 1e-3.")
    private double level;

    @Option(
            names = "--within",
            paramLabel = "X0..X1,Y0..Y1",
            order = -19,
            converter = RegionOption.class,
            description =
                    "Positions of the star, mm; default: the lit surfaces and 10 mm around them, as far as the field.")
    private StarRegion within;

    @Option(
            names = "--finest",
            paramLabel = "MM",
            order = -18,
            converter = RealNumber.Width.class,
            defaultValue = "0.2",
            description = "Width down to which the map is made finer where it changes; default: 0.2.")
    private double finest;

    @Option(
            names = "--defocus",
            paramLabel = "MM",
            order = -17,
            converter = RealNumber.Height.class,
            defaultValue = "0",
            description = "How far above the focal plane the light comes together, negative: below; default: 0.")
    private double defocus;

    @Option(
            names = "--onto",
            paramLabel = "PATTERN",
            order = -16,
            defaultValue = StarScanSettings.ACTIVE,
            description = "Surfaces on which light counts; default: '**/active'.")
    private String onto;

    @Option(
            names = "--most-positions",
            paramLabel = "N",
            order = -15,
            converter = WholeNumber.Points.class,
            defaultValue = MOST_POSITIONS,
            description = "Make the map no finer once so many positions were looked at; default: 60,000.")
    private long mostPositions;

    @Option(
            names = "--picture",
            paramLabel = "FILE",
            order = -10,
            description = "Also draw the map into this file (.png).")
    private Path picture;

    @Option(
            names = "--size",
            paramLabel = "WxH",
            order = -9,
            converter = PictureSize.Reader.class,
            defaultValue = "1300x1100",
            description = "Width and height of the picture in pixels; default: 1300x1100.")
    private PictureSize size;

    @Option(
            names = "--csv",
            paramLabel = "FILE",
            order = -8,
            description = "Also write the positions into this file, a line each.")
    private Path csv;

    @Option(
            names = "--json",
            paramLabel = "FILE",
            order = -7,
            description = "Also write the whole scan with the corners of the zone into this file.")
    private Path json;

    @Option(
            names = "--date",
            paramLabel = "YYYY-MM-DD",
            order = -6,
            converter = DateOption.class,
            description = "Also write this date on the picture.")
    private String date;

    @Mixin
    private LayoutOptions options;

    StarScanCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() {
        StudyAttempt attempt = this::run;
        return attempt.code(surroundings.errors());
    }

    private int run() throws UnusableInput, UnusableStudy, IOException {
        if (picture != null && !picture.toString().toLowerCase(Locale.ROOT).endsWith(".png")) {
            throw new UnusableStudy(
                    "--picture " + Wording.shortened(picture.toString()) + ": expected a name that ends in .png");
        }
        StudyOutputs<StarScanResult> outputs = new StudyOutputs<>();
        String version = Version.number();
        outputs.add(
                "--picture",
                picture,
                result -> new StarMapPicture(result, version, Optional.ofNullable(date))
                        .png(size.width(), size.height()));
        outputs.addText("--csv", csv, result -> StarScanCsv.of(result));
        outputs.addText("--json", json, result -> JsonResult.of(result, version));
        if (!outputs.areUsable(options, surroundings.errors())) {
            return ExitCode.UNUSABLE;
        }
        StarScanResult result = surroundings.watched(watch -> {
            Findings findings = new Findings();
            PlacedScene placed = PlacedScene.of(options.layout(), options.effort(), findings, watch);
            NoWindow.require(placed.layout(), "star-scan");
            return StarScan.of(placed, settings(), options.effort(), findings, watch);
        });
        surroundings.show(result.warnings(), new StarScanReport(version).of(result));
        if (!outputs.write(result, surroundings.errors())) {
            return ExitCode.UNUSABLE;
        }
        return result.stopped() ? ExitCode.UNDECIDED : ExitCode.DONE;
    }

    private StarScanSettings settings() {
        int across = options.effort()
                .mostSamples()
                .map(samples ->
                        (int) Math.max(2, Math.min(StarScanSettings.MOST_ACROSS, Math.round(Math.sqrt(samples)))))
                .orElse(StarScanSettings.ACROSS);
        return new StarScanSettings(onto, defocus, Optional.ofNullable(within), finest, level, across, (int)
                Math.min(10_000_000, mostPositions));
    }

    @Override
    public LayoutOptions options() {
        return options;
    }
}
