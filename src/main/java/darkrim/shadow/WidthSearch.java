package darkrim.shadow;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/**
 * Looks for the limit to which faces can be made wider in their plane, or must be cut back, for something to hold of them: by halving an
 * interval. One use, one thread.
 */
final class WidthSearch {
    /** An interval is halved down to this, mm. */
    static final double FINENESS = 2e-8;

    /** Once the interval is this narrow, as a share of the margin, the direction in which the limit lies is known. */
    private static final double NEAR = 0.05;

    /** How far beyond a limit a line is looked for that shows what sets it, mm. */
    private static final double BEYOND = 1e-6;
    /** Corners of the polygon that are cut off at one width. */
    private static final int MOST_CORNERS = 4;

    private final List<Face> faces;
    private final Function<List<Face>, Trial> test;
    private final LimitingEdge limiting;
    private final double farthest;

    /**
     * @param faces the faces
     * @param test says of changed faces whether it holds
     * @param limiting names what sets a limit
     * @param farthest limits are looked for up to this, mm
     */
    WidthSearch(List<Face> faces, Function<List<Face>, Trial> test, LimitingEdge limiting, double farthest) {
        this.faces = faces;
        this.test = test;
        this.limiting = limiting;
        this.farthest = farthest;
    }

    /** What was found for faces of one size: whether it holds, and a line for which it does not. */
    record Trial(boolean holds, Optional<WitnessRay> line) {}

    /** The signed margin: the room where it holds, otherwise what must be cut, negative. */
    Margin margin(boolean allSides, OptionalDouble guess) {
        Trial asItIs = test.apply(faces);
        return asItIs.holds ? room(guess) : excess(asItIs, allSides, guess);
    }

    /**
     * By how much the faces, for which it holds, can be widened.
     *
     * @param guess where to begin, mm
     */
    private Margin room(OptionalDouble guess) {
        Growth growth = new Growth();
        LimitBracket limit = guess.isPresent()
                ? LimitBracket.around(guess.getAsDouble(), by -> holdsNear(growth, by), farthest)
                : LimitBracket.fromZero(by -> test.apply(growth.grown(faces, by)).holds, farthest);
        if (limit.isCapped()) {
            return new Margin(farthest, true, Optional.empty(), "");
        }
        double low = limit.low();
        double high = limit.high();
        Trial failed = test.apply(growth.grown(faces, high));
        while (high - low > FINENESS) {
            double middle = 0.5 * (low + high);
            Trial trial = test.apply(growth.grown(faces, middle));
            if (trial.holds) {
                low = middle;
                continue;
            }
            double before = high;
            high = middle;
            if (trial.line.isPresent()) {
                failed = trial;
                // Beyond a corner the polygon reaches farther than the disc that it stands for: the true distance may
                // be more.
                NearestFace off = NearestFace.of(faces, trial.line.get().to());
                double distance = Math.hypot(off.alongU(), off.alongV());
                if (distance > middle + FINENESS && distance < before - FINENESS && before - low < NEAR * before) {
                    growth.sharpen(off.alongU(), off.alongV());
                    high = distance;
                }
            }
        }
        // A little beyond the limit a line is found easily, and it is as good as the one that sets the limit.
        Trial beyond = test.apply(growth.grown(faces, low + BEYOND));
        Trial last = beyond.line.isPresent() ? beyond : failed;
        return new Margin(low, false, last.line, setBy(last));
    }

    /** Whether it holds for the faces widened, where a line that ends beyond the disc in a corner of its polygon does not count. */
    private boolean holdsNear(Growth growth, double by) {
        Trial trial = test.apply(growth.grown(faces, by));
        for (int i = 0; i < MOST_CORNERS && !trial.holds && trial.line.isPresent(); i++) {
            NearestFace off = NearestFace.of(faces, trial.line.get().to());
            if (Math.hypot(off.alongU(), off.alongV()) <= by + FINENESS) {
                break;
            }
            growth.sharpen(off.alongU(), off.alongV());
            trial = test.apply(growth.grown(faces, by));
        }
        return trial.holds;
    }

    /**
     * How much must be cut from the faces for the rest to hold: from one side, the best of all, or from all sides alike.
     *
     * @param asItIs what was found for the faces as they are
     * @param guess where to begin: a margin, mm
     */
    private Margin excess(Trial asItIs, boolean allSides, OptionalDouble guess) {
        List<Side> sides = Growth.sides(faces);
        Margin best = null;
        for (List<Side> cut :
                allSides ? List.of(sides) : sides.stream().map(List::of).toList()) {
            double most = most(faces, cut);
            double end = best == null ? most : Math.min(most, -best.millimetres() - FINENESS);
            Cut trials = new Cut(faces, cut, asItIs, test);
            // A side that is no better than the best so far needs no more than one look.
            if (best != null && (end <= 0 || trials.fails(end))) {
                continue;
            }
            LimitBracket limit = guess.isPresent() && -guess.getAsDouble() < end
                    ? LimitBracket.around(-guess.getAsDouble(), trials::fails, end)
                    : new LimitBracket(0, end);
            double depth = limit.isCapped()
                    ? end
                    : limit.narrowed(trials::fails, FINENESS, 0, 0.5).high();
            best = new Margin(-depth, depth > most - 2 * FINENESS, trials.failed.line, setBy(trials.failed));
        }
        return best;
    }

    /** Faces cut from some sides, deeper and deeper; remembers the last line for which what is left did not hold. */
    private static final class Cut {
        private final List<Face> faces;
        private final List<Side> sides;
        private final Function<List<Face>, Trial> test;
        private Trial failed;

        private Cut(List<Face> faces, List<Side> sides, Trial asItIs, Function<List<Face>, Trial> test) {
            this.faces = faces;
            this.sides = sides;
            this.test = test;
            failed = asItIs;
        }

        private boolean fails(double depth) {
            List<Face> left = Growth.cutBack(faces, sides, depth);
            Trial trial = left.isEmpty() ? new Trial(true, Optional.empty()) : test.apply(left);
            failed = trial.line.isPresent() ? trial : failed;
            return !trial.holds;
        }
    }

    /** By how much faces can be cut from some sides before nothing is left: at most the width along the first. */
    private static double most(List<Face> faces, List<Side> sides) {
        Side first = sides.get(0);
        return Growth.farthest(faces, first)
                + Growth.farthest(faces, new Side(first.direction().negate()));
    }

    private String setBy(Trial failed) {
        return failed.line
                .map(line -> limiting.of(
                        line,
                        NearestFace.of(faces, line.to()).face().piece().frame().normal()))
                .orElse("");
    }
}
