package darkrim.study.comparison;

import darkrim.layout.TemperatureRule;
import darkrim.layout.WarmthSpec;
import darkrim.layout.form.Wording;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.Function;

/** Finds what two layouts differ in that decides how much warm light there is, but for their finishes. */
final class WarmthDifferences {
    private WarmthDifferences() {}

    /**
     * @param found takes what differs
     * @param before the warmth of the first layout, where it states one
     * @param after that of the second
     */
    static void find(SettingDifferences found, Optional<WarmthSpec> before, Optional<WarmthSpec> after) {
        if (before.isEmpty() && after.isEmpty()) {
            return;
        }
        Function<Double, String> kelvin = value -> Wording.number(value) + " K";
        found.compareOptional(
                "temperature of all that states none",
                before.map(WarmthSpec::kelvin),
                after.map(WarmthSpec::kelvin),
                kelvin);
        found.compareOptional(
                "band of warm light",
                before.map(each -> List.of(each.from(), each.to())),
                after.map(each -> List.of(each.from(), each.to())),
                band -> Wording.number(band.get(0)) + " to " + Wording.number(band.get(1)) + " um");
        found.compareOptional(
                "quantum efficiency",
                before.map(WarmthSpec::quantumEfficiency),
                after.map(WarmthSpec::quantumEfficiency),
                Wording::number);
        found.compareOptional(
                "pixel pitch for warm light",
                before.flatMap(WarmthSpec::pixelPitch),
                after.flatMap(WarmthSpec::pixelPitch),
                value -> Wording.number(value) + " mm");
        found.compareOptional(
                "temperature of the surroundings",
                before.flatMap(WarmthSpec::surroundings),
                after.flatMap(WarmthSpec::surroundings),
                kelvin);
        found.compareOptional(
                "warmth of the pupil",
                before.flatMap(WarmthSpec::pupil),
                after.flatMap(WarmthSpec::pupil),
                pupil -> Wording.number(pupil.kelvin()) + " K, emissivity " + Wording.number(pupil.emissivity()));
        TreeSet<String> parts = new TreeSet<>();
        before.ifPresent(each -> parts.addAll(each.parts().keySet()));
        after.ifPresent(each -> parts.addAll(each.parts().keySet()));
        for (String part : parts) {
            found.compareOptional("temperature of " + part, ofPart(before, part), ofPart(after, part), kelvin);
        }
        List<TemperatureRule> one = before.map(WarmthSpec::rules).orElse(List.of());
        List<TemperatureRule> two = after.map(WarmthSpec::rules).orElse(List.of());
        for (int i = 0; i < Math.max(one.size(), two.size()); i++) {
            found.compareOptional("temperature rule " + (i + 1), rule(one, i), rule(two, i), words -> words);
        }
    }

    private static Optional<Double> ofPart(Optional<WarmthSpec> warmth, String part) {
        return warmth.map(each -> each.parts().get(part));
    }

    private static Optional<String> rule(List<TemperatureRule> rules, int index) {
        return index < rules.size()
                ? Optional.of(rules.get(index).surfaces() + " at "
                        + Wording.number(rules.get(index).kelvin()) + " K")
                : Optional.empty();
    }
}
