package darkrim.view.work;

import darkrim.present.SightSummary;
import darkrim.present.picture.ColourScale;
import darkrim.present.picture.SeenPicture;
import darkrim.present.picture.Subject;
import darkrim.study.Effort;
import darkrim.study.NoSuchPoint;
import darkrim.study.PointName;
import darkrim.study.PointSight;
import darkrim.study.SurfacePoint;
import darkrim.study.irradiance.MapSampling;
import darkrim.verdict.Workers;
import darkrim.view.look.Light;
import darkrim.view.parts.Stage;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;

/** Draws what a point sees, in the background: coarse at once, then sharp, then with finer and finer light. */
public final class PointLook implements AutoCloseable {
    /** Everything in front of the surface. */
    private static final double HALF_ANGLE = 90;

    private static final int COARSE = 4;
    private static final int ROUNDS = 8;
    private static final MapSampling.Round ROUND = new MapSampling.Round(16, 128);
    private static final MapSampling.Round FIRST = new MapSampling.Round(8, 16);
    /** Lines to the pupil that tell what hides it. */
    private static final long LINES = 1 << 15;

    private final int threads;
    private final Errand errand;
    /** Only the worker's thread touches it. */
    private Optional<SeenMaps> kept = Optional.empty();

    /**
     * @param threads number of threads to work with
     * @param post takes changes of the contents to the window's thread
     */
    public PointLook(int threads, Consumer<UnaryOperator<Content>> post) {
        this.threads = threads;
        errand = new Errand("darkrim-view-seen", post);
    }

    /**
     * What is to be looked at.
     *
     * @param point where from
     * @param stage the layout
     * @param lighting the light, with what is known of it
     * @param light the class of light that is shown
     * @param scale its colours
     * @param size width and height of the picture, pixels
     * @param glance whether a first look is enough, as while a dimension is dragged
     */
    public record Asked(
            PointName point,
            Stage stage,
            Lighting lighting,
            Light light,
            ColourScale scale,
            int size,
            boolean glance) {}

    /** Looks, in the place of what was asked for before. */
    public void look(Asked asked) {
        errand.ask((stop, post) -> {
            try {
                Stage stage = asked.stage();
                PointName point = asked.point();
                SurfacePoint at = SurfacePoint.of(stage.scene(), stage.tree(), point.surface(), point.u(), point.v());
                run(asked, at, stop, post);
            } catch (NoSuchPoint none) {
                SeenFrom refused = SeenFrom.refused(
                        asked.point(), asked.stage(), asked.lighting(), asked.light(), none.getMessage());
                post.accept(content -> content.seeing(refused));
            }
        });
    }

    private void run(Asked asked, SurfacePoint at, BooleanSupplier stop, Consumer<UnaryOperator<Content>> post) {
        if (kept.filter(maps -> maps.isOf(asked.stage(), asked.lighting(), asked.light()))
                .isEmpty()) {
            kept = Optional.of(new SeenMaps(asked.stage(), asked.lighting(), asked.light(), kept));
        }
        SeenMaps maps = kept.get();
        SeenFrom empty = new SeenFrom(
                asked.point(),
                asked.stage(),
                asked.lighting(),
                asked.light(),
                Optional.empty(),
                Map.of(),
                "",
                List.of(),
                "",
                false);
        Drawer drawer = new Drawer(asked, at, maps);
        SeenPicture coarse = drawer.draw(Math.max(1, asked.size() / COARSE), 1);
        post(post, empty.with(coarse, maps.cells(), false));
        SeenFrom found = sight(empty, at, stop);
        post(post, found.with(coarse, maps.cells(), false));
        if (stop.getAsBoolean()) {
            return;
        }
        SeenPicture sharp = drawer.draw(asked.size(), asked.glance() ? 1 : 2);
        boolean lit = asked.light() != Light.NONE && !asked.glance();
        post(post, found.with(sharp, maps.cells(), !lit));
        if (!lit) {
            return;
        }
        try (Workers workers = new Workers(threads)) {
            for (int round = 1; round <= ROUNDS && !stop.getAsBoolean(); round++) {
                maps.refine(sharp.surfaces(), round, round == 1 ? FIRST : ROUND, workers, new Listening(stop));
                boolean last = round == ROUNDS;
                if (!stop.getAsBoolean() && (last || Integer.bitCount(round) == 1)) {
                    post(post, found.with(drawer.draw(asked.size(), 2), maps.cells(), last));
                }
            }
        }
    }

    private static void post(Consumer<UnaryOperator<Content>> post, SeenFrom found) {
        post.accept(content -> content.seeing(found));
    }

    /** How much of the pupil is seen, and what hides the rest. */
    private SeenFrom sight(SeenFrom found, SurfacePoint at, BooleanSupplier stop) {
        Effort effort = new Effort(
                threads, Optional.of(found.stage().layout().sampling().seed()), Optional.of(LINES));
        PointSight sight = PointSight.of(
                found.stage().layout(),
                found.stage().scene(),
                found.stage().tree(),
                at,
                List.of(),
                effort,
                new Listening(stop));
        return found.with(SightSummary.share(sight), SightSummary.hidden(sight));
    }

    private final class Drawer {
        private final Asked asked;
        private final SurfacePoint at;
        private final SeenMaps maps;

        Drawer(Asked asked, SurfacePoint at, SeenMaps maps) {
            this.asked = asked;
            this.at = at;
            this.maps = maps;
        }

        SeenPicture draw(int size, int perPixel) {
            BitSet shown = new BitSet();
            shown.set(0, asked.lighting().scene().surfaces().size());
            Subject subject = new Subject(
                    asked.lighting().scene(),
                    shown,
                    asked.light() == Light.NONE
                            ? Optional.empty()
                            : Optional.of(asked.light().kind()),
                    maps.all(),
                    asked.scale(),
                    1,
                    Map.of(),
                    Optional.empty(),
                    List.of());
            return SeenPicture.of(subject, asked.lighting().tree(), at, HALF_ANGLE, size, perPixel, threads);
        }
    }

    @Override
    public void close() {
        errand.close();
    }
}
