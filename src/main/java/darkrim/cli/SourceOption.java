package darkrim.cli;

import darkrim.layout.Layout;
import darkrim.layout.SourceSpec;
import darkrim.scene.Scene;
import darkrim.study.UnusableStudy;
import java.util.Optional;
import picocli.CommandLine.Option;

/** {@code --source}: whose light is shown. */
final class SourceOption {
    @Option(
            names = "--source",
            paramLabel = "NAME",
            order = -21,
            description =
                    "The light of this source of the layout, of kind 'distant', instead of the beam's, relative to its irradiance."
                            + " It is sampled, not judged: no verdict comes with it.")
    private String source;

    boolean isGiven() {
        return source != null;
    }

    /** The source; empty for the beam, and where it cannot be used, which is then a problem. */
    Optional<SourceSpec.Distant> of(Layout layout, Scene scene, Problems problems) {
        if (source == null) {
            return Optional.empty();
        }
        if (scene.beam().window().isPresent()) {
            problems.add("--source does not follow light through the window of the layout, expected none");
        }
        try {
            return Optional.of(DistantSource.of(layout, source));
        } catch (UnusableStudy none) {
            problems.add(none.getMessage());
            return Optional.empty();
        }
    }
}
