package darkrim.study;

import darkrim.diagnostic.Findings;
import darkrim.layout.Layout;
import darkrim.layout.form.Wording;
import darkrim.scene.Scene;

/** Says what a check leaves out where there is a window. */
final class WindowCaution {
    private WindowCaution() {}

    static void of(Layout layout, Scene scene, Findings findings) {
        layout.beam().window().ifPresent(spec -> {
            double back = scene.beam().window().orElseThrow().reflectance(1);
            findings.warning(
                    "window-reflection",
                    spec.place(),
                    "light that parts throw up and the window " + spec.name() + " throws back down, "
                            + Wording.number(Math.round(1e5 * back) / 1e3)
                            + " % of it at normal incidence, is not judged here: darkrim paths measures it; margins in"
                            + " mm are for a pupil as wide as rays through the window could make it seem");
        });
    }
}
