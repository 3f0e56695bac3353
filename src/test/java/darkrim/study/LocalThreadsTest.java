package darkrim.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Points worked out by threads of this program. */
class LocalThreadsTest {
    private static final List<Point> POINTS = IntStream.range(0, 6)
            .mapToObj(i -> Point.of(Map.of("wall_tilt", 6.0 + i)))
            .toList();

    private static PointCheck check() throws Exception {
        return new PointCheck(LayoutFamily.of(Path.of("geometries/part-box.yaml")), Optional.empty(), 1);
    }

    @Test
    void resultsComeInTheOrderOfThePointsHoweverManyThreadsThereAre() throws Exception {
        List<PointResult> alone = POINTS.stream().map(check()::at).toList();
        for (int count : List.of(1, 3)) {
            try (PointWorkers threads = new LocalThreads(count)) {
                List<PointResult> results = new ArrayList<>();
                assertThat(threads.work(check(), POINTS, results::add, () -> false))
                        .isEqualTo(POINTS.size());
                assertThat(results).isEqualTo(alone);
            }
        }
    }

    @Test
    void onceStoppedNoMoreResultsComeAndMorePointsCanBeGiven() throws Exception {
        try (PointWorkers threads = new LocalThreads(2)) {
            List<PointResult> results = new ArrayList<>();
            assertThat(threads.work(check(), POINTS, results::add, () -> results.size() == 2))
                    .isEqualTo(2);
            assertThat(results).hasSize(2);
            assertThat(threads.work(check(), POINTS.subList(2, 4), results::add, () -> false))
                    .isEqualTo(2);
            assertThat(results.stream().map(PointResult::chosen))
                    .isEqualTo(POINTS.subList(0, 4).stream().map(Point::chosen).toList());
        }
    }

    @Test
    void noPointsGiveNoResults() throws Exception {
        try (PointWorkers threads = new LocalThreads(1)) {
            assertThat(threads.work(check(), List.of(), result -> {}, () -> false))
                    .isZero();
        }
    }

    @Test
    void anUnknownDimensionIsAMistakeOfTheCaller() throws Exception {
        try (PointWorkers threads = new LocalThreads(1)) {
            PointCheck check = check();
            assertThatThrownBy(() ->
                            threads.work(check, List.of(Point.of(Map.of("no_such", 1.0))), result -> {}, () -> false))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining("no_such");
        }
    }
}
