package darkrim.study;

import darkrim.diagnostic.Findings;
import darkrim.layout.Requirement;
import darkrim.layout.Requirement.LightClass;
import darkrim.layout.form.Wording;
import darkrim.light.Estimate;
import darkrim.light.ManyReflections;
import darkrim.light.Receiver;
import darkrim.scene.Surface;
import darkrim.verdict.Judgement;
import darkrim.verdict.RequirementResult;
import darkrim.verdict.Verdict;
import darkrim.verdict.Watch;
import darkrim.verdict.Workers;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * Looks whether light that is reflected twice, which no requirement counts, is much beside a limit on light that is reflected once: where a
 * baffle keeps the first reflection off the pixels, the second is what is left. A look, not a verdict: few samples, and of many surfaces only
 * those on which most light falls after one reflection.
 */
final class ReflectedAgain {
    static final String CODE = "reflected-twice";

    /** The share of a limit from which on it is told. */
    private static final double TOLD = 0.1;

    private static final int SURFACES = 64;
    private static final int SAMPLES = 65_536;
    private static final int MOST_EACH = 8_192;

    private final ManyReflections light;
    private final Workers workers;
    private final Watch watch;

    ReflectedAgain(ManyReflections light, Workers workers, Watch watch) {
        this.light = light;
        this.workers = workers;
        this.watch = watch;
    }

    /** Warns of every limit on once-reflected light that does not fail and beside which twice-reflected light is much. */
    void look(Judgement judgement, Findings findings) {
        List<RequirementResult> limited = judgement.requirements().stream()
                .filter(result ->
                        result.verdict() != Verdict.FAIL && result.requirement().limits(LightClass.ONCE_REFLECTED))
                .toList();
        List<Surface> surfaces = limited.stream()
                .flatMap(result -> result.outcomes().stream())
                .map(outcome -> outcome.surface())
                .distinct()
                .sorted(Comparator.comparingDouble((Surface surface) -> -once(judgement, surface))
                        .thenComparing(Surface::index))
                .limit(SURFACES)
                .toList();
        if (surfaces.isEmpty()) {
            return;
        }
        Map<Surface, Estimate> twice = measured(surfaces);
        for (RequirementResult result : limited) {
            result.outcomes().stream()
                    .map(outcome -> outcome.surface())
                    .distinct()
                    .filter(twice::containsKey)
                    .max(Comparator.comparingDouble(
                                    (Surface surface) -> twice.get(surface).mean())
                            .thenComparing(Surface::index))
                    .ifPresent(worst -> tell(result.requirement(), worst, twice.get(worst), findings));
        }
    }

    private static double once(Judgement judgement, Surface surface) {
        return judgement
                .surfaces()
                .get(surface.index())
                .onceReflected()
                .irradiance()
                .mean();
    }

    private Map<Surface, Estimate> measured(List<Surface> surfaces) {
        int samples = Math.min(MOST_EACH, SAMPLES / surfaces.size());
        List<Estimate> found = workers.all(surfaces.stream()
                .map(surface -> () -> watch.stop()
                        ? Estimate.none(Double.POSITIVE_INFINITY)
                        : light.batch(new Receiver.OnSurface(surface), 2, 0, samples)
                                .orders()
                                .get(2)));
        return IntStream.range(0, surfaces.size())
                .boxed()
                .collect(Collectors.toMap(surfaces::get, found::get, (one, other) -> one));
    }

    private static void tell(Requirement requirement, Surface surface, Estimate twice, Findings findings) {
        double limit = ((Requirement.AtMost) requirement.condition()).limit();
        // Three standard errors away from what is told: 1 false word in 740 for a surface that lies just there.
        if (!(twice.samples() > 1 && twice.mean() - 3 * twice.standardError() > TOLD * limit)) {
            return;
        }
        findings.warning(
                CODE,
                requirement.place(),
                requirement.name() + " counts light that is reflected once only; light reflected twice is about "
                        + round(twice.mean()) + " on " + surface.name() + ", "
                        + (limit > 0 ? round(twice.mean() / limit) + " times its limit of " : "its limit is ")
                        + Wording.number(limit)
                        + ": 'darkrim paths --reflections 2' says which surfaces throw it");
    }

    /** Two digits: a look knows no more. */
    private static String round(double value) {
        double rounded = new BigDecimal(value).round(new MathContext(2)).doubleValue();
        return rounded < 1e-2
                ? String.format(Locale.ROOT, "%.1e", rounded).replace("e-0", "e-")
                : Wording.number(rounded);
    }
}
