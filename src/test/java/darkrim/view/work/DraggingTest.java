package darkrim.view.work;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.study.Effort;
import darkrim.study.irradiance.MapSampling;
import darkrim.study.irradiance.SurfaceCells;
import darkrim.study.irradiance.SurfaceMap;
import darkrim.verdict.Watch;
import darkrim.verdict.Workers;
import darkrim.view.parts.Stage;
import darkrim.view.window.PlateLayout;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.Condition;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import org.assertj.core.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DraggingTest {
    private final ReentrantLock lock = new ReentrantLock();
    private final Condition changed = lock.newCondition();
    private Content content = Content.NOTHING;

    private Dragging dragging(Path folder, String text) throws Exception {
        Path file = Files.writeString(folder.resolve("plate.yaml"), text);
        return new Dragging(file, new Effort(1, Optional.empty(), Optional.of(2_000L)), this::post);
    }

    private void post(UnaryOperator<Content> change) {
        lock.lock();
        try {
            content = change.apply(content);
            changed.signalAll();
        } finally {
            lock.unlock();
        }
    }

    private Content await(Predicate<Content> wanted) throws InterruptedException {
        long left = TimeUnit.SECONDS.toNanos(60);
        lock.lock();
        try {
            while (!wanted.test(content)) {
                left = changed.awaitNanos(left);
                assertThat(left).as("time to wait for more").isPositive();
            }
            return content;
        } finally {
            lock.unlock();
        }
    }

    private Content whole(Dragging dragging, double opening) throws InterruptedException {
        dragging.move("opening", opening);
        return await(now -> !now.moving());
    }

    private static double opening(Content content) {
        return content.stage()
                .orElseThrow()
                .layout()
                .dimensions()
                .get("opening")
                .value();
    }

    @Test
    void afterAResetTheFirstMoveShowsItsOwnParts(@TempDir Path folder) throws Exception {
        try (Dragging dragging = dragging(folder, PlateLayout.TEXT)) {
            for (double value : new double[] {10, 14, 12}) {
                Content shown = whole(dragging, value);
                assertThat(opening(shown)).isEqualTo(value);
                Facts facts = shown.facts().orElseThrow();
                assertThat(facts.isOutdated()).isFalse();
                assertThat(facts.words()).contains("not as in the file: opening = " + (int) value + " mm");
                dragging.reset();
            }
        }
    }

    @Test
    void fromAMoveToItsFirstStateWhatIsShownIsMarkedAsOfBefore(@TempDir Path folder) throws Exception {
        try (Dragging dragging = dragging(folder, PlateLayout.TEXT)) {
            whole(dragging, 12);
            lock.lock();
            try {
                // The worker cannot post while this thread holds the lock.
                dragging.move("opening", 14);
                assertThat(content.moving()).isTrue();
                assertThat(content.facts().orElseThrow().isOutdated()).isTrue();
                assertThat(content.facts().orElseThrow().words())
                        .startsWith("reckoning")
                        .contains("opening = 12 mm");
                assertThat(opening(content)).isEqualTo(12);
            } finally {
                lock.unlock();
            }
            Content shown = await(now -> !now.moving());
            assertThat(opening(shown)).isEqualTo(14);
            assertThat(shown.facts().orElseThrow().isOutdated()).isFalse();
        }
    }

    @Test
    void aValueThatCannotBeLeavesTheVerdictsMarkedAndSaysWhyInFull(@TempDir Path folder) throws Exception {
        try (Dragging dragging = dragging(folder, PlateLayout.TEXT)) {
            whole(dragging, 12);
            Content shown = whole(dragging, 60);
            assertThat(opening(shown)).isEqualTo(12);
            assertThat(shown.facts().orElseThrow().isOutdated()).isTrue();
            assertThat(shown.note()).contains("not possible").containsPattern("plate\\.yaml:\\d+:\\d+: ");
        }
    }

    @Test
    void aDragThatIsBrokenOffEndsWithTheFilesOwnParts(@TempDir Path folder) throws Exception {
        try (Dragging dragging = dragging(folder, PlateLayout.TEXT)) {
            dragging.move("opening", 14);
            assertThat(await(Content::moving).moving()).isTrue();
            dragging.reset();
            Stage stage = PlateStage.of(folder.resolve("plate.yaml"));
            post(now -> now.with(stage));
            assertThat(content.moving()).isFalse();
            assertThat(content.refused(List.of()).moving()).isFalse();
        }
    }

    @Test
    void mapsAndWaysOfAnotherPositionAreRefused(@TempDir Path folder) throws Exception {
        Path file = Files.writeString(folder.resolve("plate.yaml"), PlateLayout.TEXT);
        Stage before = PlateStage.of(file);
        Stage after = PlateStage.of(file);
        SurfaceMap map = map(before);
        assertThat(Content.NOTHING.with(before).mapped(List.of(map)).maps()).containsKey("sheet/front");
        assertThat(Content.NOTHING.with(after).mapped(List.of(map)).maps()).isEmpty();
        Content own = Content.NOTHING.with(after);
        assertThat(own.following(before, List.of())).isSameAs(own);
        MapSampling sampling = new MapSampling(after.scene(), after.tree(), 1, Map.of());
        try (Workers workers = new Workers(1)) {
            Assertions.assertThatIllegalArgumentException()
                    .isThrownBy(() -> sampling.refined(List.of(map), new MapSampling.Round(1, 0), workers, Watch.NONE));
        }
    }

    private static SurfaceMap map(Stage stage) {
        MapSampling sampling = new MapSampling(stage.scene(), stage.tree(), 1, Map.of());
        return sampling.unsampled(SurfaceCells.whole(
                stage.scene(), stage.scene().surface("sheet/front").orElseThrow()));
    }

    @Test
    void noVerdictStandsWithoutItsWarnings(@TempDir Path folder) throws Exception {
        // A block that runs into the lid.
        String crossing = PlateLayout.TEXT.replace(
                "requirements:",
                "  rod: {kind: block, width: 2, depth: 2, height: 10, at: [12, 0, 15], finish: black}\nrequirements:");
        Path file = Files.writeString(folder.resolve("plate.yaml"), crossing);
        Effort effort = new Effort(1, Optional.empty(), Optional.of(2_000L));
        try (Loader loader = new Loader(file, effort, this::post)) {
            loader.load(Optional.empty());
            Content shown =
                    await(now -> now.facts().isPresent() && now.activity().isEmpty());
            assertThat(shown.facts().orElseThrow().warnings())
                    .anyMatch(words -> words.contains("plate.yaml:") && words.contains("rod") && words.contains("lid"));
        }
    }

    @Test
    void theFileIsReadElsewhereAndWhatWasMovedMeanwhileCounts(@TempDir Path folder) throws Exception {
        try (Dragging dragging = dragging(folder, PlateLayout.TEXT)) {
            dragging.move("opening", 10);
            dragging.move("opening", 13);
            Content shown = await(now -> !now.moving() && now.facts().isPresent());
            assertThat(opening(shown)).isEqualTo(13);
            assertThat(dragging.isMoved()).isTrue();
        }
    }

    @Test
    void aFileThatCannotBeReadAnyMoreIsRefusedFromAnotherThread(@TempDir Path folder) throws Exception {
        Path file = Files.writeString(folder.resolve("plate.yaml"), "title: [");
        Thread here = Thread.currentThread();
        List<Thread> others = new CopyOnWriteArrayList<>();
        Effort effort = new Effort(1, Optional.empty(), Optional.of(2_000L));
        try (Dragging dragging = new Dragging(file, effort, change -> {
            if (Thread.currentThread() != here) {
                others.add(Thread.currentThread());
            }
            post(change);
        })) {
            dragging.move("opening", 10);
            Content shown = await(now -> !now.errors().isEmpty());
            assertThat(shown.moving()).isFalse();
            assertThat(others).isNotEmpty();
            assertThat(dragging.isMoved()).isFalse();
        }
    }

    @Test
    void aDimensionThatIsGoneFromTheFileIsNamed(@TempDir Path folder) throws Exception {
        try (Dragging dragging = dragging(folder, PlateLayout.TEXT)) {
            dragging.move("gone", 1);
            assertThat(await(now -> !now.note().isEmpty()).note()).contains("'gone'");
            assertThat(opening(whole(dragging, 12))).isEqualTo(12);
        }
    }
}
