package darkrim.shadow;

import darkrim.assembly.Die;
import darkrim.assembly.Opening;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.shadow.OpeningMargin.Extent;
import darkrim.shadow.OpeningMargin.Room;
import darkrim.trace.FacetTree;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * How far the sides and corners of an opening can be moved: outward until a surface that must stay dark gets light, by proofs on the
 * scene with the sides moved; inward until a detector below loses part of the pupil, in closed form ({@link PupilRoom}).
 *
 * <p>Only surfaces are proved again to which a line runs through what the sides sweep over: for the others, whatever blocked a line blocks it
 * still. docs/margins.md says what each number promises. Immutable; safe for use by many threads.
 */
public final class OpeningMargins {
    /** Sides are moved at most this far, mm. */
    private static final double FARTHEST = 4;

    private static final double NEAREST = 1e-3;
    /** Openings with more sides are looked at as a whole. */
    private static final int MOST_SIDES = 12;
    /** A guess is taken when the proof holds this much short of it and fails this much beyond, mm. */
    private static final double FINE = 2e-7;
    /** An interval is halved down to this where no guess is taken, mm. */
    private static final double TABLE = 1e-6;
    /** A limit counts as confirmed when a ray is found this much beyond it, mm. */
    private static final double PLAIN = 1e-3;

    private final Scene scene;
    private final Tolerance tolerance;
    private final ProofSettings settings;
    private final DarknessProof proofs;
    private final Map<Surface, Reach> reaches = new HashMap<>();
    private final List<Surface> dark;
    private final List<Surface> lit;
    private final List<Die> dies;
    private final BooleanSupplier stop;

    /**
     * @param scene the scene
     * @param tree the tree over its facets
     * @param dark surfaces that must be dark and are
     * @param lit surfaces that must be dark and are lit
     * @param dies the detectors
     * @param stop whether proofs give up, asked often and from any thread, and true for good once it is
     */
    public OpeningMargins(
            Scene scene, FacetTree tree, List<Surface> dark, List<Surface> lit, List<Die> dies, BooleanSupplier stop) {
        this.scene = scene;
        this.dark = List.copyOf(dark);
        this.lit = List.copyOf(lit);
        this.dies = List.copyOf(dies);
        settings = new ProofSettings(1e-5, 300, ProofSettings.DEFAULT.gapWidth());
        tolerance = Tolerance.of(scene.bound(), settings.gapWidth());
        proofs = new DarknessProof(scene, tree, settings, stop);
        this.stop = stop;
        Stream.concat(dark.stream(), lit.stream()).forEach(surface -> reaches.put(surface, reach(surface)));
    }

    /** The faces of a surface, and all lines from the pupil to it. */
    private record Reach(List<Face> faces, List<Shaft> shafts) {}

    private Reach reach(Surface surface) {
        List<FlatPiece> pupil = new PupilPieces(
                        scene.covering().pupil().outline(),
                        scene.covering().pupil().frame(),
                        tolerance)
                .all();
        List<Face> faces = proofs.faces(surface);
        List<Shaft> shafts = faces.stream()
                .flatMap(face -> pupil.stream().map(part -> new Pair(part, face.piece(), 0, tolerance).shaft()))
                .toList();
        return new Reach(faces, shafts);
    }

    /**
     * The margins of an opening: its sides, its corners, and all of it.
     *
     * @param opening the opening
     * @return empty if the opening is not convex or the search was stopped
     */
    public List<OpeningMargin> of(Opening opening) {
        MovedSides sides = new MovedSides(scene, opening);
        List<OpeningMargin> found = new ArrayList<>();
        if (!sides.isConvex()) {
            return found;
        }
        int n = sides.count();
        Optional<Room> least = Optional.empty();
        for (int i = 0; i < n && n <= MOST_SIDES && !stop.getAsBoolean(); i++) {
            found.add(margin(opening, sides, Extent.SIDE, Optional.empty(), i));
        }
        for (int i = 0; i < n && n <= MOST_SIDES && !stop.getAsBoolean(); i++) {
            int before = (i + n - 1) % n;
            least = less(found.get(before).outward(), found.get(i).outward());
            found.add(margin(opening, sides, Extent.CORNER, least, before, i));
        }
        for (OpeningMargin margin : found) {
            least = less(least, margin.outward());
        }
        if (!stop.getAsBoolean()) {
            int[] all = IntStream.range(0, n).toArray();
            found.add(margin(opening, sides, Extent.WHOLE, least, all));
        }
        return stop.getAsBoolean() ? List.of() : found;
    }

    private static Optional<Room> less(Optional<Room> one, Optional<Room> other) {
        return other.isEmpty()
                        || (one.isPresent()
                                && one.get().millimetres() <= other.get().millimetres())
                ? one
                : other;
    }

    private OpeningMargin margin(
            Opening opening, MovedSides sides, Extent extent, Optional<Room> atMost, int... which) {
        boolean[] moved = new boolean[sides.count()];
        List<String> names = new ArrayList<>();
        for (int side : which) {
            moved[side] = true;
            if (!opening.sides().get(side).isEmpty()) {
                names.add(opening.sides().get(side));
            }
        }
        return new OpeningMargin(opening.name(), extent, names, outward(sides, moved, atMost), inward(sides, which));
    }

    /** The least room of the sides over the detectors that look at the middle of the pupil through the opening. */
    private Optional<Room> inward(MovedSides sides, int... which) {
        PupilRoom rooms = new PupilRoom(scene.covering().pupil());
        Vector3D pupil = scene.covering().pupil().frame().origin();
        Room least = null;
        for (Die die : dies) {
            Vector3D.Sum sum = Vector3D.Sum.create();
            die.active().forEach(sum::add);
            if (PupilRoom.passes(sides, sum.get().multiply(1.0 / die.active().size()), pupil)) {
                for (int side : which) {
                    double room = rooms.of(sides, side, die.active());
                    if (least == null || room < least.millimetres()) {
                        least = new Room(room, false, die.name());
                    }
                }
            }
        }
        return Optional.ofNullable(least);
    }

    /**
     * @param atMost the least room of the sides alone, where there is one: together they have no more
     */
    private Optional<Room> outward(MovedSides sides, boolean[] moved, Optional<Room> atMost) {
        Optional<Room> cure = cure(sides, moved);
        if (cure.isPresent()) {
            return cure;
        }
        double most = farthest(sides, moved, 1);
        boolean isLimited = atMost.isPresent()
                && atMost.get().millimetres() >= 0
                && atMost.get().millimetres() < most;
        double end = isLimited ? atMost.get().millimetres() : most;
        List<Surface> near = near(dark, sides.swept(moved, end));
        if (near.isEmpty() || most == 0) {
            return isLimited ? atMost : Optional.empty();
        }
        if (isLimited && firstOpen(sides, moved, end, near).isEmpty()) {
            return atMost;
        }
        return Optional.of(room(sides, moved, near, 0, end));
    }

    /** How far inward sides must go until surfaces that are lit, and that this alone makes dark, are dark. */
    private Optional<Room> cure(MovedSides sides, boolean[] moved) {
        double most = lit.isEmpty() ? 0 : farthest(sides, moved, -1);
        if (most == 0) {
            return Optional.empty();
        }
        List<Surface> near = near(lit, sides.swept(moved, -most));
        DarknessProof there = near.isEmpty() ? proofs : proofs(sides, moved, -most);
        List<Surface> curable =
                near.stream().filter(surface -> isDark(there, surface)).toList();
        return curable.isEmpty() ? Optional.empty() : Optional.of(room(sides, moved, curable, -most, 0));
    }

    /** The farthest that sides can be moved without the plate running into itself, mm; 0 if hardly at all. */
    private static double farthest(MovedSides sides, boolean[] moved, double sign) {
        double by = FARTHEST;
        while (by > NEAREST && !sides.canMove(moved, sign * by)) {
            by /= 2;
        }
        return by > NEAREST ? by : 0;
    }

    /** Surfaces to which a line from the pupil may run through a box. */
    private List<Surface> near(List<Surface> surfaces, double[] box) {
        return surfaces.stream()
                .filter(surface -> reaches.get(surface).shafts.stream().anyMatch(shaft -> shaft.mayTouch(box, 0)))
                .toList();
    }

    private DarknessProof proofs(MovedSides sides, boolean[] moved, double by) {
        Scene changed = sides.scene(moved, by).orElseThrow();
        FacetTree tree = FacetTree.build(changed.corners(), changed.copyPlanes(), changed.bound());
        return new DarknessProof(changed, tree, settings, stop);
    }

    private static boolean isDark(DarknessProof proofs, Surface surface) {
        return proofs.of(surface) instanceof Darkness.Dark;
    }

    /** The first surface that is not proved dark with the sides moved; empty if all are. */
    private Optional<Surface> firstOpen(MovedSides sides, boolean[] moved, double by, List<Surface> surfaces) {
        DarknessProof there = proofs(sides, moved, by);
        return surfaces.stream().filter(surface -> !isDark(there, surface)).findFirst();
    }

    /** The limit between two distances: all surfaces are dark at the first, and are looked at up to the second. */
    private Room room(MovedSides sides, boolean[] moved, List<Surface> surfaces, double from, double to) {
        OpeningGuess guess = new OpeningGuess(scene.covering().pupil(), sides, moved);
        // Of an opening of many sides a guess costs more than the halvings that it saves.
        double[] guesses = (sides.count() > MOST_SIDES ? List.<Surface>of() : surfaces)
                .stream()
                        .flatMap(surface -> guess.of(reaches.get(surface).faces).stream())
                        .mapToDouble(Double::doubleValue)
                        .filter(value -> value > from + FINE && value < to - FINE)
                        .sorted()
                        .toArray();
        double low = from;
        for (int i = firstBeyond(guesses, 0, low); i < guesses.length; i = firstBeyond(guesses, i, low)) {
            double next = guesses[i];
            Optional<Surface> open = firstOpen(sides, moved, next + FINE, surfaces);
            if (open.isEmpty()) {
                low = next + FINE;
                continue;
            }
            boolean near = next - FINE > low
                    && firstOpen(sides, moved, next - FINE, surfaces).isEmpty();
            low = near ? next - FINE : halved(sides, moved, surfaces, low, next - FINE);
            // Light that only just arrives is hard to find: a micrometre farther it is plain.
            Darkness beyond = proofs(sides, moved, Math.min(to, low + PLAIN)).of(open.get());
            if (!(beyond instanceof Darkness.Dark)) {
                return new Room(
                        low, !(beyond instanceof Darkness.Lit), open.get().name());
            }
            if (firstOpen(sides, moved, Math.min(to, low + PLAIN), surfaces).isPresent()) {
                return new Room(low, true, open.get().name());
            }
            low = Math.min(to, low + PLAIN);
        }
        Optional<Surface> open = firstOpen(sides, moved, to, surfaces);
        if (open.isEmpty()) {
            return new Room(to, true, "");
        }
        low = halved(sides, moved, surfaces, low, to);
        open = firstOpen(sides, moved, Math.min(to, low + PLAIN), surfaces);
        boolean lit = open.isPresent()
                && proofs(sides, moved, Math.min(to, low + PLAIN)).of(open.get()) instanceof Darkness.Lit;
        return new Room(low, !lit, open.map(Surface::name).orElse(""));
    }

    /** The greatest distance at which all are proved dark, between one at which they are and one at which they are not. */
    private double halved(MovedSides sides, boolean[] moved, List<Surface> surfaces, double dark, double open) {
        double low = dark;
        double high = open;
        while (high - low > TABLE) {
            double middle = 0.5 * (low + high);
            if (firstOpen(sides, moved, middle, surfaces).isEmpty()) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private static int firstBeyond(double[] guesses, int from, double reached) {
        int i = from;
        while (i < guesses.length && guesses[i] <= reached) {
            i++;
        }
        return i;
    }
}
