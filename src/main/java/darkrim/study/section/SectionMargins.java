package darkrim.study.section;

import darkrim.shadow.OpeningMargin;
import darkrim.study.CheckResult;
import darkrim.verdict.LightMargin;
import darkrim.verdict.Outcome;
import darkrim.verdict.RequirementResult;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Takes from a check the margins that belong into a section: of surfaces that are cut, and of sides of openings. */
final class SectionMargins {
    private SectionMargins() {}

    static List<SectionMargin> of(CheckResult result, List<CutBody> bodies, List<LimitingEdge> edges) {
        List<SectionMargin> margins = new ArrayList<>();
        for (LimitingEdge edge : edges) {
            of(edge, result.margins().openings()).ifPresent(margins::add);
        }
        Set<String> cut = new HashSet<>();
        bodies.forEach(body -> cut.addAll(body.surfaces()));
        for (RequirementResult requirement : result.judgement().requirements()) {
            for (Outcome outcome : requirement.outcomes()) {
                Optional<LightMargin> margin = outcome.evidence().margin();
                if (margin.isPresent()
                        && !margin.get().atLeast()
                        && cut.contains(outcome.surface().name())) {
                    margins.add(new SectionMargin.OfSurface(
                            requirement.requirement().name(),
                            outcome.surface().name(),
                            margin.get().millimetres(),
                            margin.get().setBy(),
                            outcome.isDarknessInDoubt()));
                }
            }
        }
        return margins;
    }

    private static Optional<SectionMargin> of(LimitingEdge edge, List<OpeningMargin> openings) {
        return openings.stream()
                .filter(each -> each.opening().equals(edge.name())
                        && (edge.side().isEmpty()
                                ? each.extent() == OpeningMargin.Extent.WHOLE
                                : each.extent() == OpeningMargin.Extent.SIDE
                                        && each.sides().contains(edge.side())))
                .map(each -> (SectionMargin) new SectionMargin.OfEdge(edge, each.outward(), each.inward()))
                .findFirst();
    }
}
