package darkrim.view.work;

import darkrim.assembly.Assembly;
import darkrim.assembly.Feasibility;
import darkrim.diagnostic.Finding;
import darkrim.diagnostic.Findings;
import darkrim.diagnostic.UnusableInput;
import darkrim.layout.Layout;
import darkrim.present.HeadCautions;
import java.util.List;

/** What speaks against relying on a verdict about a layout, where no whole check has said it. */
final class LayoutCautions {
    private LayoutCautions() {}

    /**
     * The cautions, a line each.
     *
     * @param layout the layout
     * @param warnings what deserves attention in it
     * @throws UnusableInput if it has errors
     */
    static List<String> of(Layout layout, List<Finding> warnings) throws UnusableInput {
        Findings findings = new Findings();
        Assembly assembly = Assembly.of(layout, findings);
        findings.throwIfErrors();
        List<Feasibility> feasibility =
                Feasibility.of(assembly, layout.beam(), layout.placementError(), new Findings());
        return HeadCautions.of(feasibility, warnings);
    }
}
