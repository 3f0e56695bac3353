package darkrim.study.review;

import darkrim.assembly.Assembly;
import darkrim.assembly.Die;
import darkrim.assembly.Opening;
import darkrim.diagnostic.Findings;
import darkrim.shadow.OpeningMargin;
import darkrim.study.CheckResult;
import darkrim.study.section.LayoutSection;
import darkrim.study.section.SectionPlane;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Chooses where a review cuts a layout: square to x and to y through the middle of the opening with the least room. Openings of a mesh are not known: where
 * there are no others, through the middle of the first detector, else through the origin.
 */
final class SectionChoice {
    private static final double WHOLE = 1e6;

    private SectionChoice() {}

    static List<LayoutSection> of(CheckResult result) {
        Vector3D middle = middle(result);
        return Stream.of(SectionPlane.square(0, middle.getX()), SectionPlane.square(1, middle.getY()))
                .map(plane -> LayoutSection.of(result, plane))
                .filter(section -> !section.bodies().isEmpty())
                .toList();
    }

    private static Vector3D middle(CheckResult result) {
        Assembly assembly = Assembly.of(result.layout(), new Findings());
        List<Opening> openings = assembly.openings();
        Optional<String> tightest = result.margins().openings().stream()
                .min(Comparator.comparingDouble(SectionChoice::least))
                .map(OpeningMargin::opening);
        return openings.stream()
                .filter(opening -> tightest.isEmpty() || tightest.get().equals(opening.name()))
                .findFirst()
                .or(() -> openings.stream().findFirst())
                .map(Opening::centre)
                .or(() -> assembly.detectors().stream().findFirst().map(SectionChoice::middle))
                .map(SectionChoice::rounded)
                .orElse(Vector3D.ZERO);
    }

    private static Vector3D middle(Die detector) {
        Vector3D.Sum sum = Vector3D.Sum.create();
        detector.active().forEach(sum::add);
        return sum.get().multiply(1.0 / detector.active().size());
    }

    private static double least(OpeningMargin margin) {
        return Math.min(room(margin.outward()), room(margin.inward()));
    }

    private static double room(Optional<OpeningMargin.Room> room) {
        return room.map(OpeningMargin.Room::millimetres).orElse(Double.POSITIVE_INFINITY);
    }

    /** To a nanometre: what is less is rounding, and would be written in the title of the drawing. */
    private static Vector3D rounded(Vector3D point) {
        return Vector3D.of(
                Math.rint(point.getX() * WHOLE) / WHOLE + 0.0,
                Math.rint(point.getY() * WHOLE) / WHOLE + 0.0,
                Math.rint(point.getZ() * WHOLE) / WHOLE + 0.0);
    }
}
