package darkrim.layout;

import darkrim.diagnostic.Findings;
import darkrim.diagnostic.Place;
import darkrim.geom.Outline;
import darkrim.layout.form.Wording;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.strtree.STRtree;

/** Whether the openings of a plate, where they are widest, lie within it and leave something between each other. */
final class OpeningFit {
    private static final int MOST = 10_000;

    /** An opening of a group. */
    private record Opening(int number, int group, String name, Footprint footprint, Place place) {}

    private final double thickness;
    private final Findings findings;
    private final List<Opening> openings = new ArrayList<>();
    private int groups;

    /**
     * @param thickness thickness of the plate, mm
     * @param findings receives what does not fit
     */
    OpeningFit(double thickness, Findings findings) {
        this.thickness = thickness;
        this.findings = findings;
    }

    /** Adds a group of openings; false, with a finding, if it cannot be widened as asked or there are too many. */
    boolean add(Shape.Openings group, Place place) {
        if ((long) group.columns() * group.rows() + openings.size() > MOST) {
            findings.error("too-many", place, "the plate has too many openings, expected at most " + MOST);
            return false;
        }
        double widening = group.knifeEdge()
                .map(edge -> (thickness - edge.land()) * StrictMath.tan(Math.toRadians(edge.bevel())))
                .orElse(group.undercut().map(Shape.Undercut::depth).orElse(0.0));
        Optional<Outline> widest = Footprint.widened(group.outline(), widening);
        if (widest.isEmpty()) {
            findings.error(
                    "opening",
                    place,
                    "the " + (group.undercut().isPresent() ? "undercut" : "bevel") + " widens the opening by "
                            + Wording.number(widening) + " mm, so that a side vanishes or its outline crosses itself,"
                            + " expected less "
                            + (group.undercut().isPresent() ? "depth" : "bevel"));
            return false;
        }
        for (int j = 0; j < group.rows(); j++) {
            for (int i = 0; i < group.columns(); i++) {
                double x = group.centre().getX() + (i - (group.columns() - 1) / 2.0) * group.pitchX();
                double y = group.centre().getY() + (j - (group.rows() - 1) / 2.0) * group.pitchY();
                String index = group.columns() * group.rows() == 1 ? "" : "[" + (i + 1) + "," + (j + 1) + "]";
                openings.add(new Opening(
                        openings.size(), groups, group.name() + index, new Footprint(widest.get(), x, y), place));
            }
        }
        groups++;
        return true;
    }

    /**
     * Checks all that were added; false, with a finding for each group that leaves the plate and each two that
     * overlap.
     */
    boolean check(Outline plate) {
        boolean fits = true;
        Footprint whole = new Footprint(plate, 0, 0);
        STRtree index = new STRtree();
        Set<Integer> outside = new HashSet<>();
        for (Opening opening : openings) {
            if (!opening.footprint().isInside(whole) && outside.add(opening.group())) {
                fits = false;
                findings.error(
                        "opening",
                        opening.place(),
                        "'" + Wording.shortened(opening.name())
                                + "' leaves the plate where it is widest, " + extent(opening.footprint())
                                + ", expected it within the plate, " + extent(whole));
            }
            index.insert(opening.footprint().bounds(), opening);
        }
        boolean overlap = overlap(index);
        return fits && !overlap;
    }

    private static String extent(Footprint footprint) {
        Envelope bounds = footprint.bounds();
        return "x from " + range(bounds.getMinX(), bounds.getMaxX()) + " and y from "
                + range(bounds.getMinY(), bounds.getMaxY()) + " mm";
    }

    /** From where to where both reach along the axis along which their middles lie farther apart. */
    private static String extents(Opening one, Opening other) {
        Envelope a = one.footprint().bounds();
        Envelope b = other.footprint().bounds();
        boolean alongX = Math.abs(a.centre().x - b.centre().x) >= Math.abs(a.centre().y - b.centre().y);
        return (alongX ? "x" : "y") + " from "
                + (alongX ? range(a.getMinX(), a.getMaxX()) : range(a.getMinY(), a.getMaxY())) + " and from "
                + (alongX ? range(b.getMinX(), b.getMaxX()) : range(b.getMinY(), b.getMaxY())) + " mm";
    }

    private static String range(double least, double greatest) {
        return Wording.number(least) + " to " + Wording.number(greatest);
    }

    private boolean overlap(STRtree index) {
        Set<List<Integer>> reported = new HashSet<>();
        for (Opening opening : openings) {
            for (Object found : index.query(opening.footprint().bounds())) {
                Opening other = (Opening) found;
                List<Integer> pair = List.of(opening.group(), other.group());
                if (other.number() > opening.number()
                        && !reported.contains(pair)
                        && opening.footprint().overlaps(other.footprint())) {
                    reported.add(pair);
                    findings.error(
                            "opening",
                            other.place(),
                            "'" + Wording.shortened(opening.name()) + "' and '" + Wording.shortened(other.name())
                                    + "' overlap where they are widest, " + extents(opening, other)
                                    + ", expected some of the plate between them");
                }
            }
        }
        return !reported.isEmpty();
    }
}
