package darkrim.study;

import darkrim.assembly.Assembly;
import darkrim.assembly.OpeningShift;
import darkrim.diagnostic.Finding;
import darkrim.diagnostic.Findings;
import darkrim.layout.Layout;
import darkrim.layout.Mounting;
import darkrim.layout.Part;
import darkrim.material.Material;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Puts what was found of the two shapes of a layout side by side. */
final class ShapeComparison {
    private ShapeComparison() {}

    /**
     * The cold result with the warm one beside it.
     *
     * @param cold of the shape that is judged
     * @param warm of the shape as drawn
     * @param scope which margins were looked for
     * @param seconds how long both took
     */
    static CheckResult of(CheckResult cold, CheckResult warm, MarginScope scope, double seconds) {
        Layout layout = cold.layout();
        Assembly drawn = Assembly.of(layout.warm().partsOnly(), new Findings());
        List<Material> materials = layout.parts().stream()
                .map(Part::mounting)
                .flatMap(Optional::stream)
                .map(Mounting::material)
                .distinct()
                .toList();
        CooldownResult cooldown = new CooldownResult(
                layout.cooldown().orElseThrow(),
                margins(warm, scope),
                margins(cold, scope),
                warm.judgement().verdict(),
                warm.margins().openings(),
                OpeningShift.of(layout, drawn),
                materials);
        CheckResult.Timing timing = new CheckResult.Timing(
                cold.timing().proofs() + warm.timing().proofs(),
                cold.timing().margins() + warm.timing().margins(),
                seconds);
        return cold.with(cooldown, warnings(cold, warm), timing);
    }

    private static List<RequirementMargin> margins(CheckResult result, MarginScope scope) {
        return new FigureReading(result, result.judgement().stopped() ? MarginScope.NONE : scope).margins();
    }

    /** What only the shape as drawn shows stands beside the rest, and says so. */
    private static List<Finding> warnings(CheckResult cold, CheckResult warm) {
        List<Finding> all = new ArrayList<>(cold.warnings());
        for (Finding finding : warm.warnings()) {
            boolean known = cold.warnings().stream()
                    .anyMatch(each ->
                            each.code().equals(finding.code()) && each.place().equals(finding.place()));
            if (!known) {
                all.add(Finding.warning(
                        finding.code(), finding.place(), "in the shape as drawn: " + finding.message()));
            }
        }
        return all;
    }
}
