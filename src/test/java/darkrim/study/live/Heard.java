package darkrim.study.live;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.Predicate;

/** Hears states, and waits for some. */
final class Heard implements Consumer<LiveState> {
    private final BlockingQueue<LiveState> coming = new LinkedBlockingQueue<>();
    private final List<LiveState> all = new ArrayList<>();

    @Override
    public void accept(LiveState state) {
        coming.add(state);
    }

    /** The next state of a kind; what comes before it is kept too. */
    LiveState until(Predicate<LiveState> wanted) throws InterruptedException {
        while (true) {
            LiveState next = coming.poll(120, TimeUnit.SECONDS);
            if (next == null) {
                throw new AssertionError("nothing more came after " + all.size() + " states");
            }
            all.add(next);
            if (wanted.test(next)) {
                return next;
            }
        }
    }

    /** All that is known of a move. */
    LiveState.Placed finished(long move) throws InterruptedException {
        return (LiveState.Placed) until(state -> state.move() == move
                && (!(state instanceof LiveState.Placed placed) || placed.detail() == LiveDetail.FINISHED));
    }

    /** What was heard so far. */
    List<LiveState> all() {
        coming.drainTo(all);
        return List.copyOf(all);
    }

    /** The states of a move. */
    List<LiveState.Placed> placed(long move) {
        return all().stream()
                .filter(state -> state.move() == move)
                .map(LiveState.Placed.class::cast)
                .toList();
    }
}
