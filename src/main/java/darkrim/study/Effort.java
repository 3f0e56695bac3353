package darkrim.study;

import darkrim.layout.SamplingSpec;
import java.util.Optional;

/**
 * How hard to work, where it differs from what the layout asks.
 *
 * @param threads number of threads, at least 1; it never changes a result
 * @param seed seed instead of the layout's
 * @param mostSamples budget instead of the layout's
 * @param margins which margins of direct light to look for
 */
public record Effort(int threads, Optional<Long> seed, Optional<Long> mostSamples, MarginScope margins) {
    /** With the least margins. */
    public Effort(int threads, Optional<Long> seed, Optional<Long> mostSamples) {
        this(threads, seed, mostSamples, MarginScope.LEAST);
    }

    /** As the layout asks, on every core of the machine. */
    public static Effort asAsked() {
        return new Effort(Runtime.getRuntime().availableProcessors(), Optional.empty(), Optional.empty());
    }

    /** The same with other margins. */
    public Effort with(MarginScope other) {
        return new Effort(threads, seed, mostSamples, other);
    }

    /** What the layout asks, with what differs put in. */
    public SamplingSpec over(SamplingSpec asked) {
        return new SamplingSpec(seed.orElse(asked.seed()), asked.confidence(), mostSamples.orElse(asked.mostSamples()));
    }
}
