package darkrim.assembly;

import darkrim.layout.Layout;
import darkrim.layout.Part;
import darkrim.layout.TemperatureRule;
import darkrim.layout.WarmthSpec;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;

/** Gives every surface its temperature: that of the layout, then of its part, then of the last rule that selects it. */
final class Temperatures {
    private Temperatures() {}

    /**
     * Temperatures by surface, K; none where the layout says nothing of them.
     *
     * @param layout the layout
     * @param surfacesOf names of the surfaces of a part, by its name
     * @param selector finds the surfaces of rules
     */
    static Map<String, Double> of(Layout layout, Function<String, List<String>> surfacesOf, SurfaceSelector selector) {
        Map<String, Double> kelvinOf = new LinkedHashMap<>();
        if (layout.warmth().isEmpty()) {
            return kelvinOf;
        }
        WarmthSpec warmth = layout.warmth().get();
        for (Part part : layout.parts()) {
            double kelvin = warmth.parts().getOrDefault(part.name(), warmth.kelvin());
            surfacesOf.apply(part.name()).forEach(surface -> kelvinOf.put(surface, kelvin));
        }
        for (TemperatureRule rule : warmth.rules()) {
            selector.select("temperature rule", rule.surfaces(), rule.place())
                    .forEach(surface -> kelvinOf.replace(surface, rule.kelvin()));
        }
        return kelvinOf;
    }
}
