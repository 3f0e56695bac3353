package darkrim.study;

import darkrim.diagnostic.Findings;
import darkrim.diagnostic.UnusableInput;
import darkrim.layout.BeamSpec;
import darkrim.layout.Layout;
import java.util.Optional;

/** Refuses a layout with a window where light is followed in straight lines to the pupil only. */
public final class NoWindow {
    private NoWindow() {}

    /**
     * Refuses a layout with a window.
     *
     * @param layout the layout
     * @param work what cannot be done with one, such as {@code pixel-view}
     * @throws UnusableInput if it has a window
     */
    public static void require(Layout layout, String work) throws UnusableInput {
        Optional<BeamSpec.WindowSpec> window = layout.beam().window();
        if (window.isPresent()) {
            Findings findings = new Findings();
            findings.error(
                    "window-not-followed",
                    window.get().place(),
                    work + " does not follow light through a window, expected a layout without one"
                            + " (check, paths, sweep, tolerance, advise, compare and draw do follow it)");
            throw new UnusableInput(findings.sorted());
        }
    }
}
