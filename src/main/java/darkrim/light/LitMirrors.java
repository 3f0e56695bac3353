package darkrim.light;

import darkrim.geom.Outline;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import java.util.SortedMap;
import java.util.TreeMap;

/** The flat mirrors of a whole scene that may show the pupil, by plane and side. Immutable. */
final class LitMirrors {
    private final ImagePlanes images;
    /** Whether there is a mirror on the side of the plane's normal, and the pupil reaches that side; likewise for the other side. */
    private final boolean[] front;

    private final boolean[] back;

    LitMirrors(Scene scene, PupilSource pupil) {
        SortedMap<Integer, Integer> facetOf = new TreeMap<>();
        for (Surface surface : scene.surfaces()) {
            // Through a window the image of the pupil is not that of a flat outline: mirrors are followed instead.
            if (surface.finish().reflection().hasMirror() && pupil.window == null) {
                for (int f = surface.firstFacet(); f < surface.firstFacet() + surface.facetCount(); f++) {
                    facetOf.putIfAbsent(scene.plane(f), f);
                }
            }
        }
        images = new ImagePlanes(scene, facetOf);
        front = new boolean[images.count()];
        back = new boolean[images.count()];
        boolean[] shinesFront = new boolean[images.count()];
        boolean[] shinesBack = new boolean[images.count()];
        for (int i = 0; i < images.count(); i++) {
            double height = images.height(i, pupil.cx, pupil.cy, pupil.cz);
            double reach = reach(pupil.outline);
            shinesFront[i] = height + reach > 0;
            shinesBack[i] = height - reach < 0;
        }
        for (Surface surface : scene.surfaces()) {
            if (surface.finish().reflection().hasMirror()) {
                for (int f = surface.firstFacet(); f < surface.firstFacet() + surface.facetCount(); f++) {
                    mark(scene, surface, f, shinesFront, shinesBack);
                }
            }
        }
    }

    private void mark(Scene scene, Surface surface, int facet, boolean[] shinesFront, boolean[] shinesBack) {
        int at = images.index(scene.plane(facet));
        if (at < 0) {
            return;
        }
        double along = scene.normal(facet, 0) * images.plane(at, 0)
                + scene.normal(facet, 1) * images.plane(at, 1)
                + scene.normal(facet, 2) * images.plane(at, 2);
        if ((along > 0) != surface.back()) {
            front[at] |= shinesFront[at];
        } else {
            back[at] |= shinesBack[at];
        }
    }

    /** A little more than the pupil's reach: what is left out must surely not shine. */
    private static double reach(Outline outline) {
        return outline.reach() * (1 + 1e-9) + 1e-9;
    }

    /** The planes. */
    ImagePlanes images() {
        return images;
    }

    /**
     * The planes that may show the pupil to a point. That depends on the point only.
     *
     * @param into receives their numbers among the {@link #images}
     * @return how many there are
     */
    int before(double x, double y, double z, int[] into) {
        int count = 0;
        for (int i = 0; i < front.length; i++) {
            double height = images.height(i, x, y, z);
            if ((height > 0 && front[i]) || (height < 0 && back[i])) {
                into[count++] = i;
            }
        }
        return count;
    }
}
