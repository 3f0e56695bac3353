package darkrim.study.review;

import darkrim.diagnostic.Findings;
import darkrim.diagnostic.UnusableInput;
import darkrim.layout.Requirement;
import darkrim.scene.Surface;
import darkrim.study.Check;
import darkrim.study.CheckResult;
import darkrim.study.Effort;
import darkrim.study.LayoutFamily;
import darkrim.study.LocalThreads;
import darkrim.study.MarginScope;
import darkrim.study.RequirementMargin;
import darkrim.study.WorkersLost;
import darkrim.study.comparison.Comparison;
import darkrim.study.comparison.ComparisonStudy;
import darkrim.study.irradiance.CheckedLight;
import darkrim.study.irradiance.LitLayout;
import darkrim.study.irradiance.MapSampling;
import darkrim.study.irradiance.SurfaceCells;
import darkrim.study.journal.StudyRecord;
import darkrim.study.tolerance.ToleranceResult;
import darkrim.study.tolerance.ToleranceSettings;
import darkrim.study.tolerance.ToleranceStudy;
import darkrim.verdict.Watch;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Does everything that the review of a layout tells of. */
public final class ReviewStudy {
    /** Surfaces that are mapped, at most. */
    private static final int MAPS = 8;

    private static final int ALONG = 20;
    private static final MapSampling.Round ROUND = new MapSampling.Round(256, 1024);

    private final Settings settings;
    private final Watch watch;

    private ReviewStudy(Settings settings, Watch watch) {
        this.settings = settings;
        this.watch = watch;
    }

    /**
     * What is asked of a review.
     *
     * @param effort how hard to work
     * @param builds how many builds are sampled within the tolerances; empty where tolerances are not looked at
     */
    public record Settings(Effort effort, Optional<Integer> builds) {}

    /**
     * Looks at a layout.
     *
     * @param file the layout
     * @param before the layout that it is compared with, if there is one
     * @param settings what is asked for
     * @param watch hears how far it is, and may stop it
     * @throws UnusableInput with everything that is wrong with either file
     */
    public static Review of(Path file, Optional<Path> before, Settings settings, Watch watch) throws UnusableInput {
        Findings wrong = new Findings();
        Optional<LayoutFamily> layout = read(file, wrong);
        Optional<LayoutFamily> other = before.flatMap(path -> read(path, wrong));
        wrong.throwIfErrors();
        return new ReviewStudy(settings, watch).of(layout.orElseThrow(), other);
    }

    private static Optional<LayoutFamily> read(Path file, Findings wrong) {
        try {
            return Optional.of(LayoutFamily.of(file));
        } catch (UnusableInput unusable) {
            wrong.addAll(unusable.findings());
            return Optional.empty();
        }
    }

    private Review of(LayoutFamily family, Optional<LayoutFamily> before) throws UnusableInput {
        Effort effort = settings.effort();
        LayoutFamily shaped = family.shaped(effort);
        Findings findings = new Findings();
        CheckResult result =
                Check.coldAndWarm(shaped.with(Map.of(), findings), findings, effort.with(MarginScope.LEAST), watch);
        Optional<Comparison> comparison = before.isEmpty()
                ? Optional.empty()
                : Optional.of(ComparisonStudy.of(before.get().shaped(effort), result, effort, watch));
        Optional<ToleranceResult> tolerance = settings.builds().isEmpty()
                ? Optional.empty()
                : Optional.of(tolerance(shaped, settings.builds().get()));
        List<Surface> flat = flat(result);
        List<Surface> mapped = flat.subList(0, Math.min(MAPS, flat.size()));
        Set<String> names =
                new LinkedHashSet<>(mapped.stream().map(Surface::name).toList());
        LitLayout lit = LitLayout.of(
                CheckedLight.of(result),
                new LitLayout.Fineness(names::contains, ALONG, ROUND),
                effort.threads(),
                watch);
        List<InputHash> inputs = new ArrayList<>(InputHash.of(family));
        before.ifPresent(other -> inputs.addAll(InputHash.of(other)));
        return new Review(
                result,
                margins(result),
                lit,
                mapped,
                flat.size() - mapped.size(),
                new PathChoice(result, watch).paths(),
                watch.stop() ? List.of() : SectionChoice.of(result),
                comparison,
                tolerance,
                inputs.stream().distinct().toList(),
                watch.stop() || result.judgement().stopped());
    }

    private List<RequirementMargin> margins(CheckResult result) {
        if (result.cooldown().isPresent()) {
            return result.cooldown().get().cold();
        }
        return watch.stop()
                ? result.judgement().requirements().stream()
                        .map(RequirementMargin::unmeasured)
                        .toList()
                : RequirementMargin.of(result);
    }

    private ToleranceResult tolerance(LayoutFamily family, int builds) throws UnusableInput {
        ToleranceSettings asked = new ToleranceSettings(
                builds, Optional.empty(), false, settings.effort().seed(), ToleranceSettings.BATCHES);
        try (LocalThreads workers = new LocalThreads(settings.effort().threads())) {
            return ToleranceStudy.of(family, asked, workers, StudyRecord.none(), watch);
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        } catch (WorkersLost impossible) {
            throw new IllegalStateException("threads of this program do not get lost", impossible);
        }
    }

    /** The flat surfaces onto which a requirement limits light, or of which one asks that they see the pupil. */
    private static List<Surface> flat(CheckResult result) {
        Set<Surface> named = new LinkedHashSet<>();
        result.judgement().requirements().stream()
                .filter(each -> each.requirement().condition() instanceof Requirement.AtMost
                        || each.requirement().condition() instanceof Requirement.PupilSeen)
                .flatMap(each -> each.outcomes().stream())
                .forEach(outcome -> named.add(outcome.surface()));
        return result.scene().surfaces().stream()
                .filter(named::contains)
                .filter(surface -> SurfaceCells.isFlat(result.scene(), surface))
                .toList();
    }
}
