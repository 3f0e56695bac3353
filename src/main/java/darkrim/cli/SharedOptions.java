package darkrim.cli;

import darkrim.study.PointSight;
import darkrim.study.path.PathSettings;
import darkrim.study.pixel.PixelView;
import darkrim.study.rejection.RejectionSettings;
import darkrim.study.star.StarScanSettings;
import darkrim.study.tolerance.ToleranceSettings;
import darkrim.verdict.Plan;
import java.util.List;
import java.util.ListResourceBundle;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;

/** What {@link LayoutOptions} are to each command: a default differs from one to the other, and an option that would have no effect is not there. */
final class SharedOptions {
    private static final String SAMPLES = "--samples";

    /** Options without effect: no file is written here, or nothing is sampled for a verdict. */
    private static final Map<String, List<String>> IDLE =
            Map.of("view", List.of("--overwrite"), "section", List.of(SAMPLES), "maps", List.of(SAMPLES));

    private SharedOptions() {}

    /** Fits those of a command, which has its place in the program already. */
    static void fit(CommandLine command) {
        CommandSpec spec = command.getCommandSpec();
        IDLE.getOrDefault(spec.name(), List.of()).forEach(option -> spec.remove(spec.findOption(option)));
        Optional.ofNullable(spec.findOption(SAMPLES))
                .ifPresent(samples -> command.setResourceBundle(
                        new Words("samples", "Samples at most, such as 2e8; default: " + samples(spec.name()) + ".")));
    }

    private static String samples(String command) {
        return switch (command) {
            case "seen-from" -> number(PointSight.SAMPLES);
            case "pixel-view" -> number(PixelView.RAYS) + " from each point";
            case "paths" -> number(PathSettings.SAMPLES) + " onto each surface";
            case "star-scan" ->
                number((long) StarScanSettings.ACROSS * StarScanSettings.ACROSS) + " for each position of the star";
            case "rejection" ->
                number((long) RejectionCommand.BATCHES * RejectionSettings.BATCH) + " for each direction";
            case "sweep" -> number(Plan.samplesOf(SweepCommand.BATCHES)) + " for each number";
            case "tolerance" -> number(Plan.samplesOf(ToleranceSettings.BATCHES)) + " for each number of a build";
            default -> "the layout's";
        };
    }

    private static String number(long count) {
        return String.format(Locale.ROOT, "%,d", count);
    }

    /** The one description that takes the place of the declared one. */
    private static final class Words extends ListResourceBundle {
        private final String option;
        private final String words;

        Words(String option, String words) {
            this.option = option;
            this.words = words;
        }

        @Override
        protected Object[][] getContents() {
            return new Object[][] {{option, words}};
        }
    }
}
