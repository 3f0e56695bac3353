package darkrim.present.json;

import com.fasterxml.jackson.annotation.JsonProperty;
import darkrim.assembly.Feasibility;
import darkrim.assembly.SideFeasibility;
import java.util.List;

/** What geometry says of an opening before any ray. */
record FeasibilityDocument(
        String opening,
        String die,
        boolean holds,
        @JsonProperty("placement_error_mm") double placementError,
        boolean placementErrorStated,
        @JsonProperty("vignetting_margin_mm") Double vignettingMargin,
        List<Side> sides,
        String text) {

    static FeasibilityDocument of(Feasibility line) {
        return new FeasibilityDocument(
                line.opening(),
                line.die(),
                line.holds(),
                line.placementError(),
                line.placementStated(),
                line.vignettingMargin().orElse(null),
                line.sides().stream().map(Side::of).toList(),
                line.text());
    }

    /** One side of the die. */
    record Side(
            String side,
            boolean holds,
            @JsonProperty("overspill_mm") double overspill,
            @JsonProperty("room_mm") double room,
            String edge,
            @JsonProperty("edge_height_mm") double edgeHeight,
            double fNumber,
            @JsonProperty("rule_limit_mm") double ruleLimit,
            boolean ruleHolds) {
        private static Side of(SideFeasibility side) {
            return new Side(
                    side.side().label(),
                    side.holds(),
                    side.overspill(),
                    side.room(),
                    side.edge().words(),
                    side.edgeHeight(),
                    side.fNumber(),
                    side.ruleLimit(),
                    side.ruleHolds());
        }
    }
}
