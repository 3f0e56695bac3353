package darkrim.present.json;

import com.fasterxml.jackson.annotation.JsonProperty;
import darkrim.verdict.LightMargin;
import java.util.List;

/** A margin of direct light. */
record MarginDocument(
        @JsonProperty("mm") double millimetres,
        boolean atLeast,
        String setBy,
        @JsonProperty("at_mm") List<Double> at) {
    static MarginDocument of(LightMargin margin) {
        return new MarginDocument(
                margin.millimetres(),
                margin.atLeast() || margin.isUnexplained(),
                margin.setBy().isEmpty() ? null : margin.setBy(),
                margin.at().map(EvidenceDocument::point).orElse(null));
    }
}
