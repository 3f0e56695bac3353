package darkrim.present.json;

import darkrim.layout.Requirement;
import darkrim.verdict.Outcome;
import darkrim.verdict.RequirementResult;
import darkrim.verdict.Verdict;
import java.util.List;
import java.util.Locale;

/** A requirement with what was found. */
record RequirementDocument(
        String name,
        String surfaces,
        PlaceDocument place,
        Condition condition,
        String verdict,
        OutcomeDocument worst,
        List<OutcomeDocument> outcomes) {

    static RequirementDocument of(RequirementResult result) {
        Requirement requirement = result.requirement();
        return new RequirementDocument(
                requirement.name(),
                requirement.surfaces(),
                PlaceDocument.of(requirement.place()),
                Condition.of(requirement.condition()),
                word(result.verdict()),
                result.outcomes().isEmpty() ? null : OutcomeDocument.of(result.worst()),
                result.outcomes().stream().map(OutcomeDocument::of).toList());
    }

    /** A verdict in lower case. */
    static String word(Verdict verdict) {
        return verdict.name().toLowerCase(Locale.ROOT);
    }

    /** What is asked: which light, the limit (0 for none at all), on which side of it, over what the mean is taken; of a clearance the other side. */
    record Condition(String light, double limit, String side, String per, String other) {
        private Condition(String light, double limit, String side, String per) {
            this(light, limit, side, per, null);
        }

        static Condition of(Requirement.Condition condition) {
            if (condition instanceof Requirement.AtMost most) {
                return new Condition(
                        most.light().name().toLowerCase(Locale.ROOT),
                        most.limit(),
                        "at_most",
                        most.per().name().toLowerCase(Locale.ROOT));
            }
            if (condition instanceof Requirement.PupilSeen seen) {
                return new Condition("pupil_seen", seen.share(), "at_least", "point");
            }
            if (condition instanceof Requirement.Clearance clearance) {
                return new Condition("clearance", clearance.atLeast(), "at_least", "point", clearance.other());
            }
            return new Condition("direct", 0, "at_most", "point");
        }
    }

    /** What was found for a surface or a cell (column and row from 1). */
    record OutcomeDocument(
            String surface, List<Integer> cell, String verdict, Double value, EvidenceDocument evidence) {
        static OutcomeDocument of(Outcome outcome) {
            return new OutcomeDocument(
                    outcome.surface().name(),
                    outcome.cell() == Outcome.WHOLE ? null : cell(outcome),
                    word(outcome.verdict()),
                    EstimateDocument.finite(outcome.value()),
                    EvidenceDocument.of(outcome.evidence()));
        }

        private static List<Integer> cell(Outcome outcome) {
            int columns = outcome.surface().grid().orElseThrow().columns();
            return List.of(outcome.cell() % columns + 1, outcome.cell() / columns + 1);
        }
    }
}
