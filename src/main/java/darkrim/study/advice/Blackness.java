package darkrim.study.advice;

import darkrim.layout.Requirement;
import darkrim.layout.Requirement.LightClass;
import darkrim.light.Estimate;
import darkrim.light.Reflector;
import darkrim.scene.Finish;
import darkrim.scene.Scene;
import darkrim.study.CheckResult;
import darkrim.verdict.RequirementResult;
import darkrim.verdict.SurfaceResult;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * How black a finish must be: the reflectance at which a limit on once-reflected light is met exactly on the surface that it meets first, all else as
 * it is. Once-reflected light is linear in the reflectance of each finish: with E the irradiance, S what comes by the finish and L the limit,
 * the reflectance may be multiplied by 1 + (L - E) / S; diffuse and mirror part grow alike.
 *
 * @param requirement the requirement
 * @param finish name of the finish
 * @param reflectance its reflectance as written, diffuse and mirror part together
 * @param most the reflectance at which the requirement would begin to fail; 0 where it fails even without this finish's light
 * @param low that reflectance when the light is taken to be more than found, by three standard errors
 * @param high likewise less
 * @param share share of the once-reflected light of the surface that comes by the finish
 * @param where the surface that decides
 */
public record Blackness(
        String requirement,
        String finish,
        double reflectance,
        double most,
        double low,
        double high,
        double share,
        String where) {
    private static final double ERRORS = 3;

    /** For each limit on the mean of once-reflected light and each finish that brings some. */
    static List<Blackness> of(CheckResult result) {
        List<Blackness> all = new ArrayList<>();
        for (RequirementResult each : result.judgement().requirements()) {
            if (each.requirement().condition() instanceof Requirement.AtMost most
                    && most.light() == LightClass.ONCE_REFLECTED
                    && most.per() == Requirement.Per.SURFACE) {
                Map<String, Blackness> worst = new LinkedHashMap<>();
                each.outcomes()
                        .forEach(outcome -> ofSurface(
                                        each,
                                        most.limit(),
                                        result.judgement()
                                                .surfaces()
                                                .get(outcome.surface().index()),
                                        result.scene())
                                .forEach(one -> worst.merge(one.finish, one, (a, b) -> a.most <= b.most ? a : b)));
                all.addAll(worst.values());
            }
        }
        return all;
    }

    private static List<Blackness> ofSurface(
            RequirementResult requirement, double limit, SurfaceResult receiver, Scene scene) {
        Estimate whole = receiver.onceReflected().irradiance();
        Map<Finish, Double> light = new LinkedHashMap<>();
        Map<Finish, Double> variance = new LinkedHashMap<>();
        for (Map.Entry<Reflector, Estimate> by : receiver.onceReflected().by().entrySet()) {
            Finish finish = scene.surfaces().get(by.getKey().surface()).finish();
            light.merge(finish, by.getValue().mean(), Double::sum);
            double error = by.getValue().standardError();
            variance.merge(finish, error * error, Double::sum);
        }
        List<Blackness> found = new ArrayList<>();
        light.forEach((finish, sum) -> {
            double error = Math.sqrt(Objects.requireNonNull(variance.get(finish)));
            double rest = Math.max(0, whole.mean() - sum);
            double restError = Math.sqrt(Math.max(0, whole.standardError() * whole.standardError() - error * error));
            if (sum > 0 && finish.reflectance() > 0) {
                found.add(new Blackness(
                        requirement.requirement().name(),
                        finish.name(),
                        finish.reflectance(),
                        at(finish, limit - rest, sum),
                        at(finish, limit - rest - ERRORS * restError, sum + ERRORS * error),
                        at(finish, limit - rest + ERRORS * restError, Math.max(0, sum - ERRORS * error)),
                        sum / whole.mean(),
                        receiver.surface().name()));
            }
        });
        return found;
    }

    private static double at(Finish finish, double room, double light) {
        return room <= 0 ? 0 : finish.reflectance() * room / light;
    }

    /** Whether the limit would be met even if the finish reflected all light. */
    public boolean anyWillDo() {
        return low > 1;
    }

    /** Whether the requirement fails because of other finishes, whatever this one is. */
    public boolean noneWillDo() {
        return high == 0;
    }
}
