package darkrim.view.work;

import darkrim.light.Reflector;
import java.util.stream.Stream;

/**
 * Light that comes to a surface by another.
 *
 * @param via name of the surface that reflects it
 * @param part which part of its finish reflects it, in a word
 * @param share share of all once-reflected light of the receiver, 0 to 1; NaN where only the order is known
 * @param light what it gives, where that is known
 */
public record PathFact(String via, String part, double share, Reading light) {
    /** The part of the finish that reflects. */
    Reflector.Part reflector() {
        return Stream.of(Reflector.Part.values())
                .filter(each -> each.word().equals(part))
                .findFirst()
                .orElseThrow();
    }
}
