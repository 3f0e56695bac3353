package darkrim.study.comparison;

import darkrim.layout.Dimension;
import darkrim.layout.FinishSpec;
import darkrim.layout.Layout;
import darkrim.layout.Part;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiPredicate;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** Finds what two layouts differ in: names, numbers and surfaces. */
final class LayoutDifferences {
    /** Surfaces differ when their middles or a corner do by more, mm, or their areas by more than this share. */
    private static final double ROUNDING = 1e-9;

    private LayoutDifferences() {}

    static List<Changed<Dimension>> dimensions(Layout before, Layout after) {
        return changed(
                before.dimensions(),
                after.dimensions(),
                (one, two) -> one.value() == two.value() && one.kind() == two.kind());
    }

    static List<Changed<FinishSpec>> finishes(Layout before, Layout after) {
        return changed(
                before.finishes(),
                after.finishes(),
                (one, two) -> one.reflection().equals(two.reflection())
                        && one.emissivity().equals(two.emissivity()));
    }

    /** Names of parts of one layout that the other has not. */
    static List<String> partsOnlyIn(Layout one, Layout other) {
        Set<String> names =
                new LinkedHashSet<>(one.parts().stream().map(Part::name).toList());
        other.parts().forEach(part -> names.remove(part.name()));
        return List.copyOf(names);
    }

    private static <T> List<Changed<T>> changed(Map<String, T> before, Map<String, T> after, BiPredicate<T, T> alike) {
        Set<String> names = new LinkedHashSet<>(before.keySet());
        names.addAll(after.keySet());
        List<Changed<T>> changed = new ArrayList<>();
        for (String name : names) {
            T one = before.get(name);
            T two = after.get(name);
            if (one == null || two == null || !alike.test(one, two)) {
                changed.add(new Changed<>(name, Optional.ofNullable(one), Optional.ofNullable(two)));
            }
        }
        return changed;
    }

    static List<SurfaceChange> surfaces(Scene before, Scene after) {
        List<SurfaceChange> changes = new ArrayList<>();
        for (Surface one : before.surfaces()) {
            Optional<Surface> two = after.surface(one.name());
            if (two.isEmpty()) {
                changes.add(new SurfaceChange(
                        one.name(),
                        one.area(),
                        0,
                        Double.NaN,
                        Double.NaN,
                        one.finish().name(),
                        ""));
                continue;
            }
            double moved = middle(before, one).distance(middle(after, two.get()));
            double cornerMoved = cornerMoved(before, one, after, two.get());
            boolean sized = Math.abs(one.area() - two.get().area()) > ROUNDING * one.area();
            String finishBefore = one.finish().name();
            String finishAfter = two.get().finish().name();
            // A surface that is turned about its middle, or is as large in another outline, has the same middle and
            // area.
            boolean shaped = Double.isNaN(cornerMoved) || cornerMoved > ROUNDING;
            if (moved > ROUNDING || shaped || sized || !finishBefore.equals(finishAfter)) {
                changes.add(new SurfaceChange(
                        one.name(), one.area(), two.get().area(), moved, cornerMoved, finishBefore, finishAfter));
            }
        }
        for (Surface two : after.surfaces()) {
            if (before.surface(two.name()).isEmpty()) {
                changes.add(new SurfaceChange(
                        two.name(),
                        0,
                        two.area(),
                        Double.NaN,
                        Double.NaN,
                        "",
                        two.finish().name()));
            }
        }
        return changes;
    }

    /** The greatest distance between the same corners of the same facets, mm; NaN where they are not as many. */
    private static double cornerMoved(Scene before, Surface one, Scene after, Surface two) {
        if (one.facetCount() != two.facetCount()) {
            return Double.NaN;
        }
        double farthest = 0;
        for (int f = 0; f < one.facetCount(); f++) {
            for (int corner = 0; corner < 3; corner++) {
                Vector3D from = before.corner(one.firstFacet() + f, corner);
                farthest = Math.max(farthest, from.distance(after.corner(two.firstFacet() + f, corner)));
            }
        }
        return farthest;
    }

    /** Mean of the middles of its facets, by area, mm. */
    private static Vector3D middle(Scene scene, Surface surface) {
        Vector3D sum = Vector3D.ZERO;
        double area = 0;
        for (int f = surface.firstFacet(); f < surface.firstFacet() + surface.facetCount(); f++) {
            Vector3D middle = scene.corner(f, 0)
                    .add(scene.corner(f, 1))
                    .add(scene.corner(f, 2))
                    .multiply(1 / 3.0);
            sum = sum.add(middle.multiply(scene.facetArea(f)));
            area += scene.facetArea(f);
        }
        return sum.multiply(1 / area);
    }
}
