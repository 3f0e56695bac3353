package darkrim.study.section;

import darkrim.shadow.OpeningMargin.Room;
import java.util.Optional;

/**
 * A margin that belongs into a section, as the check found it.
 *
 * <p>Either that of a requirement, on a surface that the section cuts, or that of an edge which is moved.
 */
public sealed interface SectionMargin {
    /**
     * The margin of a requirement's surface.
     *
     * @param requirement name of the requirement
     * @param surface name of the surface
     * @param millimetres the margin, mm; negative where light arrives
     * @param setBy what sets it; may be empty
     * @param behindFacets whether it is that of facets, which is not proved for the curved surfaces that they stand for
     */
    record OfSurface(String requirement, String surface, double millimetres, String setBy, boolean behindFacets)
            implements SectionMargin {
        /** Whether a clearance ends without an edge that explains it: the surface may have more room. */
        public boolean isUnexplained() {
            return millimetres >= 0 && setBy.isEmpty();
        }

        /** Where the margin is, on one line. */
        public String words() {
            return requirement + ", " + surface + (behindFacets ? " (behind the facets: no proof)" : "");
        }
    }

    /**
     * How far an edge can be moved.
     *
     * @param edge the edge
     * @param outward until a surface gets light that must not; empty where none is near
     * @param inward until a detector loses part of the pupil; empty without a detector below
     */
    record OfEdge(LimitingEdge edge, Optional<Room> outward, Optional<Room> inward) implements SectionMargin {}
}
