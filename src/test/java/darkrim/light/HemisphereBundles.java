package darkrim.light;

import darkrim.geom.Frame;
import darkrim.geom.Ring;
import darkrim.scene.Beam;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.Warmth;
import darkrim.trace.FacetTree;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * What a point sees, in 16 independent bundles of rays: over the standard error of their mean a right mean follows Student's law of 15 degrees of
 * freedom, which exceeds {@link #STUDENT} in 4e-6 of all seeds.
 */
final class HemisphereBundles {
    static final int BUNDLES = 16;

    static final double STUDENT = 7;

    static final double FROM = 1;

    static final double TO = 5.3;

    static FacetTree tree(Scene scene) {
        return FacetTree.build(scene.copyCorners(), scene.copyPlanes(), scene.bound());
    }

    static List<HemisphereTally> look(
            Scene scene, Optional<Warmth> warmth, Vector3D position, Vector3D normal, int side) {
        HemisphereView view = new HemisphereView(scene, tree(scene), warmth, 11);
        return IntStream.range(0, BUNDLES)
                .mapToObj(i -> view.batch("a point", position, normal, i, side))
                .toList();
    }

    static Estimate mean(List<HemisphereTally> bundles, ToDoubleFunction<HemisphereTally> sum) {
        Accumulator means = new Accumulator();
        bundles.forEach(bundle -> means.add(sum.applyAsDouble(bundle) / bundle.rays()));
        return means.estimate(Double.POSITIVE_INFINITY);
    }

    static Vector3D at(double x, double y, double z) {
        return Vector3D.of(x, y, z);
    }

    static Beam anyBeam() {
        return Beam.of(new Pupil(Ring.disc(1), Frame.about(Vector3D.of(0, 0, 100), Vector3D.Unit.MINUS_Z)));
    }

    private HemisphereBundles() {}
}
