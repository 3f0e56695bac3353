package darkrim.study;

import darkrim.layout.Layout;
import darkrim.layout.SamplingSpec;
import java.util.Optional;

/**
 * How to go about the work, where it differs from what the layout asks.
 *
 * @param threads number of threads, at least 1; it never changes a result
 * @param seed seed instead of the layout's
 * @param mostSamples budget instead of the layout's
 * @param margins which margins of direct light to look for
 * @param warm whether a layout that is cooled is looked at in its shape as drawn
 */
public record Effort(int threads, Optional<Long> seed, Optional<Long> mostSamples, MarginScope margins, boolean warm) {
    /** In the shape that the layout asks for. */
    public Effort(int threads, Optional<Long> seed, Optional<Long> mostSamples, MarginScope margins) {
        this(threads, seed, mostSamples, margins, false);
    }

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
        return new Effort(threads, seed, mostSamples, other, warm);
    }

    /** The same with another number of threads. */
    public Effort on(int otherThreads) {
        return new Effort(otherThreads, seed, mostSamples, margins, warm);
    }

    /** The same with another shape. */
    public Effort warm(boolean other) {
        return new Effort(threads, seed, mostSamples, margins, other);
    }

    /** A layout in the shape in which it is looked at. */
    public Layout shaped(Layout layout) {
        return warm ? layout.warm() : layout;
    }

    /** What the layout asks, with what differs put in. */
    public SamplingSpec over(SamplingSpec asked) {
        return new SamplingSpec(seed.orElse(asked.seed()), asked.confidence(), mostSamples.orElse(asked.mostSamples()));
    }
}
