package darkrim.study.live;

import darkrim.diagnostic.Finding;
import darkrim.layout.Layout;
import darkrim.scene.Scene;
import darkrim.study.RequirementMargin;
import darkrim.verdict.Judgement;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What is known of one position of the dimensions. Immutable. */
public sealed interface LiveState {
    /** Number of the move that asked for it; later moves have greater numbers. */
    long move();

    /** The values chosen instead of those of the file, by name of the dimension, in mm, degrees or plain. */
    Map<String, Double> chosen();

    /**
     * A position that exists.
     *
     * @param move number of the move that asked for it
     * @param chosen the values chosen instead of those of the file, by name of the dimension
     * @param layout the layout with these values
     * @param scene what light meets
     * @param judgement requirements and surfaces with what is known of them so far; what is not known yet is undecided
     * @param margins the margins that are known so far, by name of the requirement, in the order in which they were found
     * @param warnings what deserves attention in the layout
     * @param detail how much is known
     */
    record Placed(
            long move,
            Map<String, Double> chosen,
            Layout layout,
            Scene scene,
            Judgement judgement,
            Map<String, RequirementMargin> margins,
            List<Finding> warnings,
            LiveDetail detail)
            implements LiveState {
        /** Copies the maps and the list. */
        public Placed {
            chosen = Map.copyOf(chosen);
            margins = Collections.unmodifiableMap(new LinkedHashMap<>(margins));
            warnings = List.copyOf(warnings);
        }
    }

    /**
     * A position that cannot be: parts that overlap, a size below 0.
     *
     * @param move number of the move that asked for it
     * @param chosen the values chosen instead of those of the file, by name of the dimension
     * @param findings why, at least one of them an error
     * @param last the last position that exists, with what was known of it; empty if there was none yet
     */
    record Impossible(long move, Map<String, Double> chosen, List<Finding> findings, Optional<Placed> last)
            implements LiveState {
        /** Copies the map and the list. */
        public Impossible {
            chosen = Map.copyOf(chosen);
            findings = List.copyOf(findings);
        }
    }

    /**
     * The program broke over a position, or found that it contradicts itself: nothing that it said of this position may be trusted.
     *
     * @param move number of the move that asked for it
     * @param chosen the values chosen instead of those of the file, by name of the dimension
     * @param cause what happened
     */
    record Broken(long move, Map<String, Double> chosen, RuntimeException cause) implements LiveState {
        /** Copies the map. */
        public Broken {
            chosen = Map.copyOf(chosen);
        }
    }
}
