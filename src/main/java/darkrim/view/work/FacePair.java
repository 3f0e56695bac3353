package darkrim.view.work;

import darkrim.view.look.Light;
import darkrim.view.parts.Stage;
import java.nio.file.Path;
import java.util.Optional;

/**
 * The face of one name in two layouts that stand side by side.
 *
 * @param name its name
 * @param first the layout and its light, as they were
 * @param second as they are now
 * @param source name of the source whose light is compared; empty for the beam
 */
public record FacePair(String name, Content first, Content second, Optional<String> source) {
    /** The face of a name in the light of the beam. */
    public static FacePair of(String name, Content first, Content second) {
        return new FacePair(name, first, second, Optional.empty());
    }

    /** Which layout does not have it, in words; empty where both have it or one cannot be read. */
    public Optional<String> absence() {
        if (first.stage().isEmpty() || second.stage().isEmpty()) {
            return Optional.empty();
        }
        if (!has(first) && !has(second)) {
            return Optional.of("neither layout has a face of this name");
        }
        if (isGone()) {
            return Optional.of("gone: " + file(second) + " has no face of this name");
        }
        return isNew() ? Optional.of("new: " + file(first) + " has no face of this name") : Optional.empty();
    }

    /** Whether only the first layout has it. */
    public boolean isGone() {
        return has(first) && second.stage().isPresent() && !has(second);
    }

    /** Whether only the second layout has it. */
    public boolean isNew() {
        return has(second) && first.stage().isPresent() && !has(first);
    }

    /** The light on it before. */
    public Reading before(Light light) {
        return reading(first, light);
    }

    /** The light on it after. */
    public Reading after(Light light) {
        return reading(second, light);
    }

    /** What became of its light. */
    public LightChange change(Light light) {
        int compared =
                second.lighting(source).map(known -> known.surfaces().size()).orElse(1);
        return new LightChange(before(light), after(light), compared);
    }

    private boolean has(Content content) {
        return content.stage().flatMap(stage -> stage.scene().surface(name)).isPresent();
    }

    private Reading reading(Content content, Light light) {
        return content.light(source, name).map(known -> known.of(light)).orElse(Reading.UNKNOWN);
    }

    private static String file(Content content) {
        Stage stage = content.stage().orElseThrow();
        return String.valueOf(Path.of(stage.layout().source().name()).getFileName());
    }
}
