package darkrim.study.section;

import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * A ray that grazes an edge and ends in the section, and the trace of the border of shadow that it belongs to. Every ray was traced against all parts: nothing stands in its way.
 *
 * @param kind which ray
 * @param edge the edge that it passes
 * @param from where it leaves the plane of the pupil, mm; it may lie beside the section
 * @param course where the plane through the edge and the ray meets the section, from the plane of the pupil to the landing, mm: two points, and between
 *     them those on the upper and the lower face of the window, if there is one. In the section this line is the border of the shadow; where the edge
 *     is square to the section it is the ray as it is seen
 * @param past where it passes the edge, in the section as it is seen, mm
 * @param to where it lands, in the section, mm
 * @param surface name of the surface on which it lands
 */
public record SectionRay(
        Kind kind,
        LimitingEdge edge,
        Vector3D from,
        List<Vector3D> course,
        Vector3D past,
        Vector3D to,
        String surface) {
    /** Copies the list. */
    public SectionRay {
        course = List.copyOf(course);
    }

    /** Which ray. */
    public enum Kind {
        /** From the rim of the pupil that is farther beyond the edge's own side: where light ends. */
        LIGHT_ENDS("light ends"),
        /** From the middle of the pupil. */
        CHIEF("chief ray"),
        /** From the rim of the pupil on the edge's own side: from here on the edge hides nothing of the pupil. */
        PUPIL_WHOLE("whole pupil from here");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        /** In a few plain words. */
        public String words() {
            return words;
        }
    }
}
