package darkrim.present.json;

import com.fasterxml.jackson.annotation.JsonProperty;
import darkrim.assembly.OpeningShift;
import darkrim.layout.Cooldown;
import darkrim.material.Material;
import darkrim.study.CooldownResult;
import darkrim.study.MarginUnit;
import darkrim.study.RequirementMargin;
import java.util.ArrayList;
import java.util.List;

/** What the cool-down does. */
record CooldownDocument(
        @JsonProperty("drawn_at_k") double drawnAt,
        @JsonProperty("works_at_k") double worksAt,
        String warmVerdict,
        List<PairDocument> requirements,
        List<ShiftDocument> openings,
        List<MaterialDocument> materials) {
    static CooldownDocument of(CooldownResult result) {
        List<PairDocument> pairs = new ArrayList<>();
        for (int i = 0; i < result.cold().size(); i++) {
            pairs.add(PairDocument.of(result.warm().get(i), result.cold().get(i)));
        }
        Cooldown cooldown = result.cooldown();
        return new CooldownDocument(
                cooldown.drawnAt(),
                cooldown.worksAt(),
                RequirementDocument.word(result.warmVerdict()),
                pairs,
                result.openings().stream().map(ShiftDocument::of).toList(),
                result.materials().stream()
                        .map(material -> MaterialDocument.of(material, cooldown))
                        .toList());
    }

    /** A requirement warm and cold; a margin that is not known is null. */
    record PairDocument(
            String name,
            String warmVerdict,
            String coldVerdict,
            Double warmMargin,
            Double coldMargin,
            String marginUnit) {
        private static PairDocument of(RequirementMargin warm, RequirementMargin cold) {
            return new PairDocument(
                    warm.requirement(),
                    warm.verdict().map(RequirementDocument::word).orElse(null),
                    cold.verdict().map(RequirementDocument::word).orElse(null),
                    EstimateDocument.finite(warm.margin()),
                    EstimateDocument.finite(cold.margin()),
                    cold.unit() == MarginUnit.MILLIMETRES ? "mm" : "1");
        }
    }

    /** How far the edges of an opening move against those of its die, outward positive. */
    record ShiftDocument(String opening, String die, List<SideDocument> sides) {
        private static ShiftDocument of(OpeningShift shift) {
            return new ShiftDocument(
                    shift.opening(),
                    shift.die(),
                    shift.sides().stream()
                            .map(side -> new SideDocument(
                                    side.name(), side.moved(), EstimateDocument.finite(side.uncertainty())))
                            .toList());
        }
    }

    /** One side; null where an accuracy is not stated. */
    record SideDocument(
            String side,
            @JsonProperty("moved_mm") double moved,
            @JsonProperty("uncertainty_mm") Double uncertainty) {}

    /** A material; null where its accuracy is not stated. */
    record MaterialDocument(String name, double contraction, Double accuracy, String source) {
        private static MaterialDocument of(Material material, Cooldown cooldown) {
            return new MaterialDocument(
                    material.name(),
                    material.contraction().between(cooldown.drawnAt(), cooldown.worksAt()),
                    EstimateDocument.finite(material.contraction().accuracy(cooldown.worksAt())),
                    material.source());
        }
    }
}
