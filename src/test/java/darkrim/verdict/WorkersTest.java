package darkrim.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class WorkersTest {
    @Test
    void resultsComeInTheOrderOfTheTasksWhoeverDidThem() {
        try (Workers workers = new Workers(5)) {
            List<Integer> found = workers.all(IntStream.range(0, 300).mapToObj(i -> () -> {
                Thread.sleep(i % 7 == 0 ? 1 : 0);
                return i;
            }));
            assertThat(found)
                    .containsExactlyElementsOf(IntStream.range(0, 300).boxed().toList());
        }
    }

    @Test
    void whatIsBegunBesideWaitsForWhatSomebodyWaitsForAndKeepsItsOrder() throws InterruptedException {
        List<String> done = Collections.synchronizedList(new ArrayList<>());
        CountDownLatch handedIn = new CountDownLatch(1);
        try (Workers workers = new Workers(1)) {
            Future<Boolean> first = workers.begin(() -> {
                handedIn.await();
                return done.add("first");
            });
            Future<Boolean> one = workers.beside(() -> done.add("beside 1"));
            Future<Boolean> two = workers.beside(() -> done.add("beside 2"));
            Future<Boolean> awaited = workers.begin(() -> done.add("awaited"));
            handedIn.countDown();
            Stream.of(first, one, two, awaited).forEach(Workers::result);
        }
        assertThat(done).containsExactly("first", "awaited", "beside 1", "beside 2");
    }

    @Test
    void whatATaskThrowsComesOutWhereItsResultIsAskedFor() {
        try (Workers workers = new Workers(2)) {
            Callable<Integer> broken = () -> {
                throw new IllegalArgumentException("no such number");
            };
            Future<Integer> beside = workers.beside(broken);
            assertThat(workers.all(Stream.of(() -> 1, () -> 2))).containsExactly(1, 2);
            assertThatThrownBy(() -> Workers.result(beside))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessage("no such number");
        }
    }

    @Test
    void anErrorComesOutAsItIsAndWhatMustBeDeclaredAsTheCause() {
        try (Workers workers = new Workers(1)) {
            StackOverflowError error = new StackOverflowError("too deep");
            Future<Integer> deep = workers.begin(() -> {
                throw error;
            });
            assertThatThrownBy(() -> Workers.result(deep)).isSameAs(error);
            Exception declared = new Exception("no such place");
            Future<Integer> lost = workers.begin(() -> {
                throw declared;
            });
            assertThatThrownBy(() -> Workers.result(lost))
                    .isInstanceOf(IllegalStateException.class)
                    .hasCause(declared);
        }
    }

    @Test
    void whoeverIsInterruptedWhileWaitingStaysInterrupted() {
        CountDownLatch never = new CountDownLatch(1);
        try (Workers workers = new Workers(1)) {
            Future<Boolean> waiting = workers.begin(() -> {
                never.await();
                return true;
            });
            Thread.currentThread().interrupt();
            assertThatThrownBy(() -> Workers.result(waiting))
                    .isInstanceOf(IllegalStateException.class)
                    .hasMessage("interrupted while working");
            assertThat(Thread.interrupted()).isTrue();
        }
    }

    @Test
    void threadsDoNotKeepTheProgramAliveAndEndWhenTheyAreClosed() throws InterruptedException {
        Thread worker;
        try (Workers workers = new Workers(1)) {
            worker = Workers.result(workers.begin(Thread::currentThread));
            assertThat(worker.isDaemon()).isTrue();
            assertThat(workers.count()).isEqualTo(1);
        }
        worker.join(10_000);
        assertThat(worker.isAlive()).isFalse();
    }
}
