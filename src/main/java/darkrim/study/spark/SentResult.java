package darkrim.study.spark;

import darkrim.study.PointResult;
import darkrim.study.RequirementFigure;
import darkrim.verdict.Verdict;
import java.io.Serializable;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What comes back from an executor for a point: its result, or how the program broke there. A task that threw would end the whole study. */
record SentResult(
        Map<String, Double> chosen,
        Verdict verdict,
        List<RequirementFigure> figures,
        String impossible,
        RuntimeException broken)
        implements Serializable {
    /** Packs a result. */
    static SentResult of(PointResult result) {
        return new SentResult(
                result.chosen(), result.verdict().orElse(null), result.figures(), result.impossible(), null);
    }

    /** Packs a mistake of the program. */
    static SentResult broken(Map<String, Double> chosen, RuntimeException broken) {
        return new SentResult(chosen, null, List.of(), "", broken);
    }

    /** The result; a mistake of the program is thrown on, as if it had happened here. */
    PointResult unpacked() {
        if (broken != null) {
            throw broken;
        }
        return new PointResult(chosen, Optional.ofNullable(verdict), figures, impossible);
    }
}
