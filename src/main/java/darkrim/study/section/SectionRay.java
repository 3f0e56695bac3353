package darkrim.study.section;

import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * A ray that grazes an edge and ends in the section, and the trace of the border of shadow that it belongs to. Every ray was traced against all parts: nothing stands in its way.
 *
 * @param kind which ray
 * @param edge the edge that it passes
 * @param from where it leaves the plane of the pupil, mm; it may lie beside the section
 * @param trace where the plane through the edge and the ray meets both the section and the plane of the pupil, mm: in the section the border of the
 *     shadow is the line from here to the landing. Where the edge is square to the section it is the ray as it is seen
 * @param past where it passes the edge, in the section as it is seen, mm
 * @param to where it lands, in the section, mm
 * @param surface name of the surface on which it lands
 */
public record SectionRay(
        Kind kind, LimitingEdge edge, Vector3D from, Vector3D trace, Vector3D past, Vector3D to, String surface) {
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
