package darkrim.assembly;

import darkrim.layout.Shape.KnifeEdge;
import darkrim.layout.Shape.Openings;
import darkrim.layout.Shape.Plate;
import darkrim.layout.Shape.Toward;
import darkrim.layout.Shape.Undercut;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/**
 * A level cross-section of an opening where its wall changes.
 *
 * <p>The outline in the layout is the smallest cross-section: a straight land of the stated height at one face of the plate. From the inner
 * end of the land the bevel widens by (thickness - land) tan(bevel) to the other face; an undercut steps back level.
 *
 * @param z its height, mm
 * @param border its border
 * @param wallBelow name of the wall between it and the next lower one: {@code wall}, {@code land}, {@code bevel} or {@code step}; empty for the lowest
 * @param smallest whether it has the outline in the layout
 */
record CrossSection(double z, Border border, String wallBelow, boolean smallest) {
    /**
     * The cross-sections of an opening about its own centre, from the top of the plate down.
     *
     * @throws IllegalArgumentException if the land leaves no height for the bevel, or the outline cannot be widened
     */
    static List<CrossSection> of(Plate plate, Openings group) {
        double bottom = plate.height();
        double top = plate.height() + plate.thickness();
        if (group.undercut().isPresent()) {
            return undercut(bottom, top, group, group.undercut().get());
        }
        if (group.knifeEdge().isEmpty()) {
            Border wall = Border.ofHole(group.outline(), 0, 0);
            return List.of(new CrossSection(top, wall, "wall", true), new CrossSection(bottom, wall, "", true));
        }
        KnifeEdge edge = group.knifeEdge().get();
        double slope = plate.thickness() - edge.land();
        if (!(slope > 0 && edge.land() >= 0)) {
            throw new IllegalArgumentException("the land of its " + group.name() + " leaves no height for the bevel");
        }
        double widen = slope * StrictMath.tan(Math.toRadians(edge.bevel()));
        Border narrow = Border.ofHole(group.outline(), 0, widen);
        Border wide = Border.ofHole(group.outline(), widen, widen);
        List<CrossSection> sections = new ArrayList<>();
        if (edge.toward() == Toward.PUPIL) {
            sections.add(new CrossSection(top, narrow, "land", true));
            sections.add(new CrossSection(top - edge.land(), narrow, "bevel", true));
            sections.add(new CrossSection(bottom, wide, "", false));
        } else {
            sections.add(new CrossSection(top, wide, "bevel", false));
            sections.add(new CrossSection(bottom + edge.land(), narrow, "land", true));
            sections.add(new CrossSection(bottom, narrow, "", true));
        }
        if (edge.land() == 0) {
            sections.removeIf(section -> section.wallBelow().equals("land"));
        }
        return sections;
    }

    /** A land, a level step outward at its inner end, and a straight wall on to the other face. */
    private static List<CrossSection> undercut(double bottom, double top, Openings group, Undercut undercut) {
        if (!(undercut.land() > 0 && undercut.land() < top - bottom)) {
            throw new IllegalArgumentException(
                    "the land of its " + group.name() + " leaves no height for the undercut");
        }
        Border narrow = Border.ofHole(group.outline(), 0, undercut.depth());
        Border wide = Border.ofHole(group.outline(), undercut.depth(), undercut.depth());
        if (undercut.toward() == Toward.PUPIL) {
            double z = top - undercut.land();
            return List.of(
                    new CrossSection(top, narrow, "land", true),
                    new CrossSection(z, narrow, "step", true),
                    new CrossSection(z, wide, "wall", false),
                    new CrossSection(bottom, wide, "", false));
        }
        double z = bottom + undercut.land();
        return List.of(
                new CrossSection(top, wide, "wall", false),
                new CrossSection(z, wide, "step", false),
                new CrossSection(z, narrow, "land", true),
                new CrossSection(bottom, narrow, "", true));
    }

    /** The cross-section moved level by a vector, mm. */
    CrossSection moved(Vector2D by) {
        return new CrossSection(z, border.moved(by), wallBelow, smallest);
    }

    /** Its corners, mm. */
    List<Vector3D> corners() {
        return Mesh.at(z, border.loop());
    }
}
