package darkrim.study.tolerance;

import darkrim.sampling.Streams;
import darkrim.study.PointResult;
import darkrim.study.WorkersLost;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Sampled builds: each contributor of each build deviates by a random number of its own. A build is found from the seed, its number and the
 * names of the contributors, so that more builds begin with the same builds, and a further contributor leaves the others as they were.
 *
 * @param contributors what deviates
 * @param streams random numbers
 */
record Builds(List<Contributor> contributors, Streams streams) {
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
        List<Look> wanted = IntStream.rangeClosed(1, count)
                .mapToObj(number -> Look.all(deviations(number)))
                .toList();
        List<PointResult> found = looks.all("checking builds", wanted);
        List<Build> builds = new ArrayList<>();
        for (int i = 0; i < found.size(); i++) {
            builds.add(new Build(
                    i + 1,
                    wanted.get(i).deviations(),
                    found.get(i),
                    found.get(i).margins()));
        }
        return builds;
    }
}
