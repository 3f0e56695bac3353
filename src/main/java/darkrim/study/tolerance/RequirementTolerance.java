package darkrim.study.tolerance;

import darkrim.layout.Requirement;
import darkrim.study.RequirementMargin;
import darkrim.verdict.Verdict;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What the tolerances do to one requirement.
 *
 * @param requirement the requirement
 * @param drawn its margin as drawn
 * @param slopes how the margin follows each contributor; empty if the study was stopped before
 * @param worst the worst that was found within the tolerances; absent if the study was stopped before
 * @param rootSumSquare what the slopes say of many builds; absent where a margin is not known
 * @param yield what share of builds meets it
 * @param worse a build within the tolerances of which less can be said than of the worst case; one that breaks it, if there is one
 * @param lesser the build within the tolerances with the least margin, where that is less than in the worst case; absent unless margins
 *     of builds are asked for
 * @param sampled the margins of the builds; absent unless asked for
 */
public record RequirementTolerance(
        Requirement requirement,
        RequirementMargin drawn,
        List<Slope> slopes,
        Optional<WorstCase> worst,
        Optional<RootSumSquare> rootSumSquare,
        YieldInterval yield,
        Optional<WorseBuild> worse,
        Optional<LesserBuild> lesser,
        Optional<SampledMargins> sampled) {
    /** Copies the list. */
    public RequirementTolerance {
        slopes = List.copyOf(slopes);
    }

    /**
     * A build of which less can be said than of the worst case that was found.
     *
     * @param number its number
     * @param verdict what can be said of it
     */
    public record WorseBuild(int number, Verdict verdict) {
        /**
         * The first that fails, or else the first of which less can be said at all.
         *
         * @param within builds within the tolerances
         * @param requirement name of the requirement
         * @param worst what can be said of it in the worst case
         */
        static Optional<WorseBuild> of(List<Build> within, String requirement, Verdict worst) {
            List<WorseBuild> worse = within.stream()
                    .map(build -> new WorseBuild(build.number(), build.verdict(requirement)))
                    .filter(build -> build.verdict.isWorseThan(worst))
                    .toList();
            return worse.stream()
                    .filter(build -> build.verdict == Verdict.FAIL)
                    .findFirst()
                    .or(() -> worse.stream().findFirst());
        }
    }

    /**
     * A build with less margin than the worst case that was found.
     *
     * @param number its number
     * @param margin its margin
     */
    public record LesserBuild(int number, RequirementMargin margin) {
        /**
         * That with the least margin, if it is known and less than in the worst case.
         *
         * @param within builds within the tolerances
         * @param requirement number of the requirement, from 0
         * @param worst the margin in the worst case
         */
        static Optional<LesserBuild> of(List<Build> within, int requirement, RequirementMargin worst) {
            return within.stream()
                    .filter(build -> !build.margins().isEmpty())
                    .map(build ->
                            new LesserBuild(build.number(), build.margins().get(requirement)))
                    .filter(build -> build.margin.isKnown() && !build.margin.isBound())
                    .min(Comparator.comparingDouble(build -> build.margin.margin()))
                    .filter(build -> Slope.isLess(build.margin.margin(), worst.margin()));
        }
    }

    /** What can be said of it in the worst case that was found, and in all builds within the tolerances. */
    public Verdict worstVerdict() {
        return worse.map(WorseBuild::verdict)
                .or(() -> worst.map(WorstCase::verdict))
                .orElse(Verdict.UNDECIDED);
    }

    /** Number of a build within the tolerances that breaks it although the worst case does not. */
    public OptionalInt brokenBy() {
        return worse.filter(build -> build.verdict == Verdict.FAIL)
                .map(build -> OptionalInt.of(build.number))
                .orElse(OptionalInt.empty());
    }
}
