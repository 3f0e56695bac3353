package darkrim.study.way;

import darkrim.light.Reflector;
import darkrim.reflection.Reflection;
import darkrim.scene.Beam;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import darkrim.trace.Ray;
import darkrim.trace.StartPoints;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Looks for ways of light from the pupil by one surface to another: points of receiver, reflector and pupil are tried in turn, spread evenly
 * by an additive recurrence (Weyl 1916, with powers of the root of x^8 = x + 1), and kept where nothing stands between. By a mirror the point
 * of reflection follows from the image of the pupil's point in the mirror's plane, which each facet of a curved mirror has of its own. Every way
 * that is found carries light and can be drawn; that none is found proves nothing. For use by one thread.
 */
public final class WaySearch {
    /** Numbers that one try needs: facet and two weights of the receiver and of the reflector, two on the pupil. */
    private static final int NUMBERS = 8;

    private static final double[] STEPS = steps();

    private final Scene scene;
    private final FacetTree tree;
    private final StartPoints starts;
    private final Ray ray = new Ray();
    private final double[] place = new double[3];
    private final double[] onPupil = new double[2];

    /**
     * @param scene the scene
     * @param tree the tree over its facets
     */
    public WaySearch(Scene scene, FacetTree tree) {
        this.scene = scene;
        this.tree = tree;
        starts = new StartPoints(scene.corners(), tree);
    }

    private static double[] steps() {
        double root = 1;
        for (int i = 0; i < 64; i++) {
            root = StrictMath.pow(1 + root, 1.0 / NUMBERS);
        }
        double[] steps = new double[NUMBERS];
        for (int i = 0; i < NUMBERS; i++) {
            steps[i] = StrictMath.pow(root, -(i + 1));
        }
        return steps;
    }

    /**
     * Ways of light to a surface by another.
     *
     * @param receiver where it arrives
     * @param via what reflects it
     * @param part the part of its finish that reflects
     * @param most how many ways are wanted
     * @param tries how many are tried
     * @param stop whether to give up
     */
    public List<Way> find(
            Surface receiver, Surface via, Reflector.Part part, int most, int tries, BooleanSupplier stop) {
        double[] receiverAreas = areas(receiver);
        double[] viaAreas = areas(via);
        List<Way> found = new ArrayList<>();
        double[] at = new double[NUMBERS];
        for (int i = 1; i <= tries && found.size() < most && !stop.getAsBoolean(); i++) {
            for (int k = 0; k < NUMBERS; k++) {
                at[k] = (0.5 + i * STEPS[k]) % 1;
            }
            int end = facet(receiver, receiverAreas, at[0]);
            Vector3D arrives = point(end, receiver, at[1], at[2]);
            int middle = facet(via, viaAreas, at[3]);
            Pupil pupil = scene.covering().pupil();
            pupil.outline().place(at[6], at[7], onPupil);
            Vector3D from = pupil.frame().at(onPupil[0], onPupil[1]);
            Optional<Way> way = part == Reflector.Part.MIRROR
                    ? mirrored(from, via, middle, arrives, receiver, end)
                    : scattered(from, via, middle, point(middle, via, at[4], at[5]), arrives, receiver, end, part);
            way.filter(each -> each.carried() > 0).ifPresent(found::add);
        }
        return found;
    }

    private Optional<Way> scattered(
            Vector3D from,
            Surface via,
            int facet,
            Vector3D middle,
            Vector3D arrives,
            Surface receiver,
            int end,
            Reflector.Part part) {
        boolean faces = isBefore(via, facet, middle, from)
                && isBefore(via, facet, middle, arrives)
                && isBefore(receiver, end, arrives, middle);
        return faces && isClear(arrives, middle, scene.plane(end)) && isLit(middle, from, scene.plane(facet))
                ? Optional.of(way(from, via, facet, middle, arrives, end, part))
                : Optional.empty();
    }

    /** With what it carries: law of reflection times cosines over the square of the second leg; of the first, which hardly differs, only the direction counts. */
    private Way way(
            Vector3D from, Surface via, int facet, Vector3D middle, Vector3D arrives, int end, Reflector.Part part) {
        Vector3D out = from.subtract(middle);
        Vector3D back = arrives.subtract(middle);
        double leg = back.norm();
        double cosineIn = Math.min(1, Math.abs(scene.normal(facet).dot(out)) / out.norm());
        double cosineOut = Math.min(1, Math.abs(scene.normal(facet).dot(back)) / leg);
        double cosineEnd = Math.abs(scene.normal(end).dot(back)) / leg;
        Reflection law = via.finish().reflection();
        double share = cosineIn * cosineOut * cosineEnd / (leg * leg);
        double carried = switch (part) {
            case MIRROR -> law.mirror(cosineIn) * cosineEnd;
            case DIFFUSE -> law.broad(cosineIn, cosineOut) * share;
            case LOBE -> law.lobe(cosineIn, cosineOut, back.dot(out) / (leg * out.norm())) * share;
        };
        return new Way(from, middle, arrives, carried);
    }

    private Optional<Way> mirrored(Vector3D from, Surface via, int facet, Vector3D arrives, Surface receiver, int end) {
        Vector3D corner = scene.corner(facet, 0);
        if (!isBefore(via, facet, corner, from) || !isBefore(via, facet, corner, arrives)) {
            return Optional.empty();
        }
        Vector3D normal = scene.normal(facet);
        Vector3D image = from.subtract(normal.multiply(2 * normal.dot(from.subtract(corner))));
        Vector3D along = image.subtract(arrives);
        if (!isBefore(receiver, end, arrives, image)) {
            return Optional.empty();
        }
        ray.set(arrives, along, 1, scene.plane(end));
        int met = tree.nearest(ray);
        boolean byMirror = met >= 0
                && scene.plane(met) == scene.plane(facet)
                && scene.surfaceMet(met, along.getX(), along.getY(), along.getZ()) == via.index();
        if (!byMirror) {
            return Optional.empty();
        }
        // A hair before the mirror, so that the other half of the way begins on its bright side.
        double lift = starts.lift() * (via.back() ? -1 : 1);
        Vector3D middle = arrives.add(along.multiply(ray.distance()))
                .add(scene.normal(met).multiply(lift));
        return isLit(middle, from, scene.plane(met))
                ? Optional.of(way(from, via, met, middle, arrives, end, Reflector.Part.MIRROR))
                : Optional.empty();
    }

    /** Whether a point lies in front of a surface's facet. */
    private boolean isBefore(Surface surface, int facet, Vector3D on, Vector3D point) {
        double height = scene.normal(facet).dot(point.subtract(on));
        return surface.back() ? height < 0 : height > 0;
    }

    private boolean isLit(Vector3D point, Vector3D from, int plane) {
        Beam beam = scene.covering();
        Vector3D along = from.subtract(point);
        boolean passes = beam.fieldLimit()
                .map(limit -> limit.passes(
                        point.getX(), point.getY(), point.getZ(), along.getX(), along.getY(), along.getZ()))
                .orElse(true);
        // Through a window not every line that seems to come from the pupil does.
        boolean shines = scene.beam().window().isEmpty() || scene.beam().surelyShines(point, along);
        return passes && shines && beam.pupil().frame().height(point) > 0 && isClear(point, from, plane);
    }

    private boolean isClear(Vector3D from, Vector3D to, int plane) {
        Vector3D along = to.subtract(from);
        ray.set(from, along, 1, plane);
        return !tree.blocked(ray);
    }

    private double[] areas(Surface surface) {
        double[] sums = new double[surface.facetCount()];
        double sum = 0;
        for (int i = 0; i < sums.length; i++) {
            sum += scene.facetArea(surface.firstFacet() + i);
            sums[i] = sum;
        }
        return sums;
    }

    private static int facet(Surface surface, double[] sums, double share) {
        int found = Arrays.binarySearch(sums, share * sums[sums.length - 1]);
        return surface.firstFacet() + Math.min(sums.length - 1, found < 0 ? -found - 1 : found);
    }

    private Vector3D point(int facet, Surface surface, double s, double t) {
        double root = Math.sqrt(s);
        starts.place(facet, 1 - root, root * (1 - t), !surface.back(), place);
        return Vector3D.of(place);
    }
}
