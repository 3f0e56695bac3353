package darkrim.study.star;

import darkrim.geom.Frame;
import darkrim.layout.Layout;
import darkrim.layout.SourceSpec;
import darkrim.layout.form.Wording;
import darkrim.scene.Scene;
import darkrim.study.UnusableStudy;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** A star lights the pupil only from behind its plane, which beside a tilted pupil reaches down to the foci. */
final class InFrontOfPupil {
    private InFrontOfPupil() {}

    /**
     * @throws UnusableStudy if not all foci of a region, or of the stars of a layout, lie in front of the pupil's plane
     */
    static void require(Scene scene, Layout layout, StarRegion region, double focusHeight) throws UnusableStudy {
        Frame pupil = scene.beam().pupil().frame();
        for (double x : List.of(region.fromX(), region.toX())) {
            for (double y : List.of(region.fromY(), region.toY())) {
                if (!isInFront(pupil, Vector3D.of(x, y, focusHeight))) {
                    throw new UnusableStudy("a star at x " + Wording.number(x) + " mm, y " + Wording.number(y)
                            + " mm would lie behind the plane of the tilted pupil, expected --within in front of it");
                }
            }
        }
        for (SourceSpec source : layout.sources()) {
            if (source instanceof SourceSpec.Star star && !isInFront(pupil, star.focus())) {
                throw new UnusableStudy("the star '" + Wording.shortened(star.name())
                        + "' lies behind the plane of the tilted pupil, expected it in front");
            }
        }
    }

    private static boolean isInFront(Frame pupil, Vector3D focus) {
        return focus.subtract(pupil.origin()).dot(pupil.normal()) > 0;
    }
}
