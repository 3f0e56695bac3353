package darkrim.study.tolerance;

import darkrim.sampling.Streams;
import darkrim.study.PointResult;
import darkrim.study.RequirementMargin;
import darkrim.study.WorkersLost;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * Sampled builds: each contributor of each build deviates by a random number of its own. A build is found from the seed, its number and the
 * names of the contributors, so that more builds begin with the same builds, and a further contributor leaves the others as they were.
 *
 * @param contributors what deviates
 * @param requirements names of the requirements
 * @param streams random numbers
 * @param withMargins whether margins are measured too
 */
record Builds(List<Contributor> contributors, List<String> requirements, Streams streams, boolean withMargins) {
    /** Half the step between random numbers, so that none is 0. */
    private static final double HALF_STEP = 0x1p-54;

    /** Deviations of a build. */
    List<Double> deviations(int number) {
        List<Double> deviations = new ArrayList<>();
        for (Contributor contributor : contributors) {
            double share =
                    streams.stream("tolerance of " + contributor.name(), number).nextDouble() + HALF_STEP;
            deviations.add(contributor.quantile(share) + 0.0);
        }
        return deviations;
    }

    /** Makes builds 1 to a number; after a stop those that are done. */
    List<Build> make(int count, Looks looks) throws WorkersLost, IOException {
        List<Look> wanted = new ArrayList<>();
        for (int number = 1; number <= count; number++) {
            List<Double> deviations = deviations(number);
            wanted.add(Look.all(deviations));
            if (withMargins) {
                requirements.forEach(name -> wanted.add(new Look(deviations, name)));
            }
        }
        List<PointResult> found = looks.all("checking builds", wanted);
        int each = withMargins ? 1 + requirements.size() : 1;
        List<Build> builds = new ArrayList<>();
        for (int from = 0; from + each <= found.size(); from += each) {
            List<RequirementMargin> margins = found.subList(from + 1, from + each).stream()
                    .map(result -> result.margin().orElseThrow())
                    .toList();
            builds.add(new Build(builds.size() + 1, wanted.get(from).deviations(), found.get(from), margins));
        }
        return builds;
    }
}
