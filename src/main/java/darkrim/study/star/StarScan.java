package darkrim.study.star;

import darkrim.diagnostic.Finding;
import darkrim.diagnostic.Findings;
import darkrim.layout.Layout;
import darkrim.layout.SamplingSpec;
import darkrim.layout.SourceSpec;
import darkrim.layout.form.Wording;
import darkrim.light.FacetAims;
import darkrim.light.StarLight;
import darkrim.light.StarReach;
import darkrim.light.StarTally;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.study.ChordDoubt;
import darkrim.study.Effort;
import darkrim.study.PlacedScene;
import darkrim.study.ReceivingSurfaces;
import darkrim.study.UnusableStudy;
import darkrim.study.star.StarGrid.Square;
import darkrim.verdict.Watch;
import darkrim.verdict.Workers;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.locationtech.jts.geom.Envelope;

/**
 * Maps the once-reflected light of a star over its position.
 *
 * <p>Three things see to it that no pattern is missed between positions. Squares that no light of a star can use are proved so by {@link StarReach}.
 * Every piece of every facet that could throw light has positions at which a star is aimed at it, all along its band where the band is so narrow that the
 * middles of squares could lie beside it. And squares are split where they differ from
 * their neighbours, or positions in one from each other, by more than their errors.
 */
public final class StarScan {
    /** Positions worked out between two looks whether to stop. */
    private static final int CHUNK = 128;
    /** How often positions near the level get as many samples again. */
    static final int SHARPENED = Integer.numberOfTrailingZeros(StarScanSettings.MOST_TIMES);

    private final PlacedScene placed;
    private final StarLight light;
    private final StarReach reach;
    private final StarScanSettings settings;
    private final StarBound bound;
    private final Workers workers;
    private final Watch watch;
    private final StarGrid grid;
    private final StarChange change;
    private final StarAim aim;

    private int looked;
    private boolean refined = true;

    private StarScan(
            PlacedScene placed,
            StarLight light,
            StarReach reach,
            StarScanSettings settings,
            StarBound bound,
            StarRegion region,
            Workers workers,
            Watch watch) {
        this.placed = placed;
        this.light = light;
        this.reach = reach;
        this.settings = settings;
        this.bound = bound;
        this.grid = new StarGrid(region, settings.finest());
        this.change = new StarChange(grid, settings.level());
        FacetAims aims = new FacetAims(
                placed.scene(),
                placed.tree(),
                settings.focusHeight(),
                new Envelope(region.fromX(), region.toX(), region.fromY(), region.toY()));
        this.aim = new StarAim(reach, aims, grid, region, change);
        this.workers = workers;
        this.watch = watch;
    }

    /**
     * Scans.
     *
     * @param placed the layout with its parts in place
     * @param settings what to look at
     * @param effort how hard to work; its number of samples is not used
     * @param warnings what is known to deserve attention
     * @param watch hears how far it is, and may stop it
     * @throws UnusableStudy if the scan makes no sense for the layout
     */
    public static StarScanResult of(
            PlacedScene placed, StarScanSettings settings, Effort effort, Findings warnings, Watch watch)
            throws UnusableStudy {
        Layout layout = placed.layout();
        Scene scene = placed.scene();
        SamplingSpec asked = effort.over(layout.sampling());
        List<Surface> receivers = ReceivingSurfaces.of(scene, settings.onto());
        double lowest = layout.beam().pupil().lowest();
        if (!(settings.focusHeight() < lowest)) {
            throw new UnusableStudy("the light would come together " + Wording.number(settings.focusHeight())
                    + " mm above the focal plane, expected a focus below the pupil, which reaches down to "
                    + Wording.number(lowest) + " mm");
        }
        StarRegion region = settings.within().isPresent()
                ? settings.within().get()
                : StarRegion.around(scene, receivers, layout.beam(), settings.focusHeight());
        InFrontOfPupil.require(scene, layout, region, settings.focusHeight());
        StarLight light = new StarLight(scene, placed.tree(), receivers, asked.seed());
        StarReach reach = new StarReach(scene, placed.tree(), receivers, settings.focusHeight());
        try (Workers workers = new Workers(effort.threads())) {
            Optional<ChordDoubt> doubt = ChordDoubt.of(layout, placed.assembly(), scene);
            doubt.ifPresent(one -> one.warnOfNoProofs(warnings));
            if (doubt.isPresent()) {
                reach.excludeNothing();
            }
            StarBound bound = new StarBound(asked.confidence());
            StarScan scan = new StarScan(placed, light, reach, settings, bound, region, workers, watch);
            scan.run();
            List<NamedStar> named = scan.named(doubt.isPresent());
            List<StarCell> cells = scan.cells();
            List<Finding> found = new ArrayList<>(warnings.sorted());
            return new StarScanResult(
                    layout,
                    scene,
                    settings,
                    asked.seed(),
                    receivers,
                    region,
                    cells,
                    bound,
                    AvoidanceZone.of(cells, settings.level(), bound, region),
                    named,
                    scan.refined,
                    settings.within().isEmpty() && region.isExceeded(reach, layout.beam(), settings.focusHeight()),
                    watch.stop(),
                    found);
        }
    }

    private void run() {
        for (Square square : grid.squares()) {
            prove(square);
        }
        int middles =
                grid.squares().stream().mapToInt(square -> square.due.size()).sum();
        refined = aim.atEverySide(room(middles));
        if (look("stars on a coarse grid and at every edge")) {
            refined &= aim.alongNarrowBands(room(looked));
        }
        String step = "stars along narrow bands";
        while (look(step) && split()) {
            step = "stars where light changes";
        }
        for (int time = 0; time < SHARPENED && !watch.stop(); time++) {
            sharpen(time);
        }
    }

    private int room(int taken) {
        return Math.max(0, settings.mostPositions() - taken);
    }

    private void prove(Square square) {
        double half = 0.5 * grid.width(square);
        double x = grid.x(square);
        double y = grid.y(square);
        square.proved = !reach.mayLight(x - half, y - half, x + half, y + half);
        if (square.proved) {
            // What was looked at there met nothing, and the proof says more.
            square.positions.clear();
        } else {
            square.due.add(new double[] {x, y});
        }
    }

    private record Task(Square square, double x, double y) {}

    /** Looks at all positions that are due; false if the work was stopped. */
    private boolean look(String step) {
        List<Task> tasks = new ArrayList<>();
        for (Square square : grid.squares()) {
            square.due.forEach(at -> tasks.add(new Task(square, at[0], at[1])));
            square.due.clear();
        }
        for (int from = 0; from < tasks.size(); from += CHUNK) {
            if (watch.stop()) {
                return false;
            }
            watch.progress(step, from, tasks.size());
            List<Task> chunk = tasks.subList(from, Math.min(tasks.size(), from + CHUNK));
            List<StarTally> found = workers.all(chunk.stream()
                    .map(task -> (Callable<StarTally>) () -> tally(task.x, task.y, settings.focusHeight(), 0)));
            for (int i = 0; i < chunk.size(); i++) {
                Task task = chunk.get(i);
                task.square.positions.add(
                        new StarPosition(task.x, task.y, found.get(i), reach.mostReflected(task.x, task.y)));
            }
            looked += chunk.size();
        }
        return !watch.stop();
    }

    private StarTally tally(double x, double y, double z, long batch) {
        return light.batch(Vector3D.of(x, y, z), batch, settings.across());
    }

    /** Splits squares in which, or beside which, the light changes; false if there are none. */
    private boolean split() {
        List<Square> changing = grid.squares().stream()
                .filter(square -> grid.canBeSplit(square) && !square.proved && change.in(square))
                .sorted(Comparator.comparingDouble(square -> -StarChange.brightest(square)))
                .toList();
        int most = room(looked) / 4;
        if (changing.size() > most) {
            refined = false;
            changing = changing.subList(0, most);
        }
        changing.forEach(square -> grid.split(square).forEach(this::prove));
        return !changing.isEmpty();
    }

    /** Doubles the samples of positions of which it is not clear on which side of the level they are. */
    private void sharpen(int time) {
        List<Square> unclear = grid.squares().stream()
                .filter(square -> square.positions.stream().anyMatch(this::isUnclear))
                .toList();
        long first = 1L << time;
        for (int from = 0; from < unclear.size() && !watch.stop(); from += CHUNK) {
            watch.progress("stars near the level, more samples", from, unclear.size());
            List<Square> chunk = unclear.subList(from, Math.min(unclear.size(), from + CHUNK));
            List<List<StarPosition>> found = workers.all(chunk.stream()
                    .map(square -> (Callable<List<StarPosition>>) () -> square.positions.stream()
                            .map(each -> isUnclear(each) ? more(each, first) : each)
                            .toList()));
            for (int i = 0; i < chunk.size(); i++) {
                chunk.get(i).positions.clear();
                chunk.get(i).positions.addAll(found.get(i));
            }
        }
    }

    private boolean isUnclear(StarPosition position) {
        return position.share() <= settings.level() && bound.upper(position) > settings.level();
    }

    private StarPosition more(StarPosition position, long first) {
        StarTally sum = position.tally();
        for (long batch = first; batch < 2 * first; batch++) {
            sum = sum.and(tally(position.x(), position.y(), settings.focusHeight(), batch));
        }
        return new StarPosition(position.x(), position.y(), sum, position.reflected());
    }

    private List<StarCell> cells() {
        return grid.squares().stream()
                .map(square -> new StarCell(
                        grid.x(square), grid.y(square), grid.width(square), square.proved, square.positions))
                .toList();
    }

    private List<NamedStar> named(boolean doubted) {
        List<NamedStar> named = new ArrayList<>();
        for (SourceSpec source : placed.layout().sources()) {
            if (source instanceof SourceSpec.Star star && !watch.stop()) {
                Vector3D at = star.focus();
                StarTally sum = StarTally.none(light.receivers().size());
                for (long batch = 0; batch < StarScanSettings.MOST_TIMES; batch++) {
                    sum = sum.and(tally(at.getX(), at.getY(), at.getZ(), batch));
                }
                named.add(new NamedStar(star, sum, reachAt(at.getZ(), doubted).mostReflected(at.getX(), at.getY())));
            }
        }
        return named;
    }

    /** The reach of stars whose light comes together in a plane that need not be that of the scan. */
    private StarReach reachAt(double height, boolean doubted) {
        if (height == settings.focusHeight()) {
            return reach;
        }
        StarReach other = new StarReach(placed.scene(), placed.tree(), light.receivers(), height);
        if (doubted) {
            other.excludeNothing();
        }
        return other;
    }
}
