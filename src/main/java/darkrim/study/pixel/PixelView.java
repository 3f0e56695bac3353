package darkrim.study.pixel;

import darkrim.assembly.Assembly;
import darkrim.diagnostic.Finding;
import darkrim.diagnostic.Findings;
import darkrim.diagnostic.UnusableInput;
import darkrim.layout.Layout;
import darkrim.scene.Scene;
import darkrim.scene.Warmth;
import darkrim.scene.WarmthFactory;
import darkrim.study.Check;
import darkrim.study.Effort;
import darkrim.study.NoSuchPoint;
import darkrim.study.NoWindow;
import darkrim.study.PlacedScene;
import darkrim.study.PointName;
import darkrim.study.SurfacePoint;
import darkrim.verdict.Watch;
import darkrim.verdict.Workers;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What pixels of a layout see.
 *
 * @param layout what the designer wrote
 * @param seed seed of all sampled numbers
 * @param warmth what is warm, where the layout says it
 * @param sights what each point sees, in the order asked; the worst found last
 * @param search how the worst was looked for, where it was
 * @param stopped whether the work was stopped before its end
 * @param warnings what deserves attention in the layout
 */
public record PixelView(
        Layout layout,
        long seed,
        Optional<Warmth> warmth,
        List<PixelSight> sights,
        Optional<Search> search,
        boolean stopped,
        List<Finding> warnings) {
    /** Rays from each point where no number is asked for. */
    public static final long RAYS = 200_000;

    /** So many squared are still counted in an int; 16 bundles of them are 2e10 rays from a point. */
    private static final int MOST_SIDE = 40_000;

    /** Copies the lists. */
    public PixelView {
        sights = List.copyOf(sights);
        warnings = List.copyOf(warnings);
    }

    /**
     * How the worst pixel was looked for.
     *
     * @param byWarmth whether by most warm light; otherwise by the largest projected solid angle of surfaces that the beam strikes
     * @param areas active areas that were searched
     * @param grid places along each side of an area
     * @param halvings how often the step was halved around the worst places
     * @param tried how many places were looked at
     * @param raysEach rays at each of them
     */
    public record Search(boolean byWarmth, int areas, int grid, int halvings, int tried, long raysEach) {}

    /**
     * Looks from points of a layout file.
     *
     * @param file the file
     * @param points where from; none: the middle and the corner pixels of all active areas, and the worst pixel found
     * @param effort how hard to work; {@link #RAYS} from each point where it states no number
     * @param watch hears how far it is
     * @throws UnusableInput with everything that is wrong with the file
     * @throws NoSuchPoint if the layout has no such point, or none is named and it has no active area
     */
    public static PixelView of(Path file, List<PointName> points, Effort effort, Watch watch)
            throws UnusableInput, NoSuchPoint {
        Findings findings = new Findings();
        return of(effort.shaped(Check.readable(file, findings)), findings, points, effort, watch);
    }

    /**
     * Looks from points of a layout.
     *
     * @param layout the layout
     * @param findings what is known to be wrong with it; what its parts show is added
     * @param points where from; none: the middle and the corner pixels of all active areas, and the worst pixel found
     * @param effort how hard to work
     * @param watch hears how far it is
     * @throws UnusableInput with everything that is wrong with the layout
     * @throws NoSuchPoint if the layout has no such point, or none is named and it has no active area
     */
    public static PixelView of(Layout layout, Findings findings, List<PointName> points, Effort effort, Watch watch)
            throws UnusableInput, NoSuchPoint {
        NoWindow.require(layout, "pixel-view");
        PlacedScene placed = PlacedScene.of(layout, findings, watch);
        Scene scene = placed.scene();
        Optional<Warmth> warmth = WarmthFactory.of(layout, placed.assembly(), scene);
        long seed = effort.over(layout.sampling()).seed();
        try (Workers workers = new Workers(effort.threads())) {
            PixelLook look = new PixelLook(layout, scene, placed.tree(), warmth, seed, workers);
            Map<PixelPlace, SurfacePoint> places = new LinkedHashMap<>();
            for (PixelPlace place : places(layout, placed.assembly(), points)) {
                places.put(place, look.point(place));
            }
            Optional<WorstSearch.Outcome> worst = points.isEmpty()
                    ? Optional.of(new WorstSearch(look, warmth.isPresent(), workers, watch)
                            .over(areas(layout, placed.assembly())))
                    : Optional.empty();
            if (worst.isPresent()) {
                places.put(worst.get().place(), look.point(worst.get().place()));
            }
            int side = side(effort.mostSamples().orElse(RAYS));
            List<PixelSight> sights = new ArrayList<>();
            for (Map.Entry<PixelPlace, SurfacePoint> place : places.entrySet()) {
                watch.progress("looking", sights.size(), places.size());
                Optional<PixelSight> sight = look.sight(place.getKey(), place.getValue(), side, watch);
                if (sight.isEmpty()) {
                    break;
                }
                sights.add(sight.get());
            }
            return new PixelView(
                    layout,
                    seed,
                    warmth,
                    sights,
                    worst.map(found -> new Search(
                            warmth.isPresent(),
                            areas(layout, placed.assembly()).size(),
                            WorstSearch.GRID,
                            WorstSearch.HALVINGS,
                            found.tried(),
                            found.raysEach())),
                    sights.size() < places.size(),
                    findings.sorted());
        }
    }

    /** Rays along each side of a bundle, for so many rays from a point. */
    private static int side(long rays) {
        return (int) Math.min(MOST_SIDE, Math.ceil(Math.sqrt(rays / (double) PixelLook.BUNDLES)));
    }

    private static List<PixelPlace> places(Layout layout, Assembly assembly, List<PointName> points)
            throws NoSuchPoint {
        if (!points.isEmpty()) {
            return points.stream()
                    .map(point -> new PixelPlace(point, PixelPlace.Why.ASKED))
                    .toList();
        }
        List<String> areas = PixelPlace.activeAreas(assembly);
        if (areas.isEmpty()) {
            throw new NoSuchPoint("the layout has no detectors, so the point to look from must be named");
        }
        return areas.stream()
                .flatMap(area -> PixelPlace.standard(layout, area).stream())
                .toList();
    }

    private static Map<String, Double> areas(Layout layout, Assembly assembly) {
        Map<String, Double> areas = new LinkedHashMap<>();
        PixelPlace.activeAreas(assembly).forEach(area -> areas.put(area, PixelPlace.halfPixel(layout, area)));
        return areas;
    }
}
