package darkrim.study.tolerance;

import darkrim.sampling.Streams;
import darkrim.study.PointResult;
import darkrim.study.RequirementMargin;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.IntStream;

/**
 * Sampled builds: each contributor of each build deviates by a random number of its own. A build is found from the seed, its number and the
 * names of the contributors, so that more builds begin with the same builds, and a further contributor leaves the others as they were.
 *
 * @param layout what is built
 * @param requirements names of the requirements
 * @param streams random numbers
 * @param withMargins whether margins are measured too
 */
record Builds(DeviatingLayout layout, List<String> requirements, Streams streams, boolean withMargins) {
    /** Half the step between random numbers, so that none is 0. */
    private static final double HALF_STEP = 0x1p-54;

    /** Deviations of a build. */
    List<Double> deviations(int number) {
        List<Double> deviations = new ArrayList<>();
        for (Contributor contributor : layout.contributors()) {
            double share =
                    streams.stream("tolerance of " + contributor.name(), number).nextDouble() + HALF_STEP;
            deviations.add(contributor.quantile(share));
        }
        return deviations;
    }

    /** Makes builds 1 to a number; after a stop those that are done. */
    List<Build> make(int count, Slices slices) {
        List<Callable<Build>> tasks = IntStream.rangeClosed(1, count)
                .mapToObj(number -> (Callable<Build>) () -> build(number))
                .toList();
        return slices.all("checking builds", tasks);
    }

    private Build build(int number) {
        List<Double> deviations = deviations(number);
        PointResult result = layout.check(deviations);
        List<RequirementMargin> margins = withMargins
                ? requirements.stream()
                        .map(name -> layout.margin(deviations, name))
                        .toList()
                : List.of();
        return new Build(number, deviations, result, margins);
    }
}
