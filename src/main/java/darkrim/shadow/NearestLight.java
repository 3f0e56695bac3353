package darkrim.shadow;

import darkrim.geom.Outline;
import darkrim.scene.Scene;
import darkrim.trace.FacetTree;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Names what keeps light as far from a surface as its clearance says.
 *
 * <p>Lines of light that end near the surface are looked for evenly and moved toward it, downhill along what stops them, until none comes nearer.
 * There the direction toward the surface is a sum of the directions in which the stops push, with weights that are not negative (Karush-Kuhn-Tucker):
 * the weight of a stop is by how much the distance changes for each mm that the stop is moved. The stop of greatest weight sets the clearance.
 * A line counts only if it ends as near as the clearance, so that it is the one that sets it. Safe for use by many threads.
 */
final class NearestLight {
    private static final int TRIALS = 3000;
    /** Lines that are moved, the nearest first. */
    private static final int STARTS = 5;

    private static final int STEPS = 200;
    private static final int HALVINGS = 40;
    /** A line that ends no farther than this share of the clearance, or as many mm, beyond it is the one that sets it. */
    private static final double ALIKE = 2e-5;
    /** Left of the direction, of length 1, when no step helps. */
    private static final double AT_REST = 1e-3;
    /** A line that moves by no more has come to rest, mm. */
    private static final double SHORTEST = 1e-9;
    /** Steps lead away from what they run along by this share of what is left of the direction, so that they can follow a round rim. */
    private static final double AWAY = 0.1;

    /** A step must bring this share of what the slope promises. */
    private static final double LEAST_GAIN = 0.1;

    private final Scene scene;
    private final FacetTree tree;
    private final FacetEdges edges;
    private final Tolerance tolerance;
    private final BooleanSupplier stop;

    NearestLight(Scene scene, FacetTree tree, FacetEdges edges, Tolerance tolerance, BooleanSupplier stop) {
        this.scene = scene;
        this.tree = tree;
        this.edges = edges;
        this.tolerance = tolerance;
        this.stop = stop;
    }

    /** A line of light that ends near a face. */
    private static final class Near {
        private final double[] line;
        private final Face face;
        private final double distance;

        private Near(double[] line, Face face) {
            this.line = line;
            this.face = face;
            distance = distance(face, line);
        }
    }

    private static double distance(Face face, double[] line) {
        return NearestFace.of(List.of(face), LineOfSight.end(line)).distance();
    }

    /**
     * What sets a clearance: the surfaces that meet at an edge, a surface that light lies on, {@code field limit} or {@code pupil rim}; empty
     * where no line of light was found that ends as near as the clearance.
     *
     * @param faces faces of the surface
     * @param clearance its clearance, mm; more than 0
     */
    Optional<String> setBy(List<Face> faces, double clearance) {
        // A window bends what is straight here.
        if (scene.beam().window().isPresent() || !(clearance > 0)) {
            return Optional.empty();
        }
        LineOfSight lines = new LineOfSight(scene, tree, edges, tolerance);
        double enough = clearance + ALIKE * Math.max(1, clearance);
        for (Near start : starts(lines, faces, clearance)) {
            if (stop.getAsBoolean()) {
                return Optional.empty();
            }
            Optional<String> found = new Descent(lines, start, enough).setBy();
            if (found.isPresent()) {
                return found;
            }
        }
        return Optional.empty();
    }

    private List<Near> starts(LineOfSight lines, List<Face> faces, double clearance) {
        EvenShares shares = new EvenShares();
        Outline pupil = scene.covering().pupil().outline();
        List<Near> found = new ArrayList<>();
        double[] onPupil = new double[2];
        for (int i = 0; i < TRIALS && !stop.getAsBoolean(); i++) {
            shares.advance();
            Face face = faces.get(shares.next(faces.size()));
            double beyond = shares.next();
            double distance = clearance * (1 + beyond * beyond) + beyond * beyond * beyond;
            Vector3D end = onBorder(face.piece(), shares).add(direction(shares).multiply(distance));
            pupil.place(shares.next(), shares.next(), onPupil);
            double[] line = {
                end.getX(), end.getY(), end.getZ(), onPupil[0] / LineOfSight.SCALE, onPupil[1] / LineOfSight.SCALE
            };
            if (lines.isClear(line, face.piece().frame().normal())) {
                found.add(new Near(line, face));
            }
        }
        found.sort(Comparator.comparingDouble(near -> near.distance));
        return found.subList(0, Math.min(STARTS, found.size()));
    }

    private static Vector3D onBorder(FlatPiece piece, EvenShares shares) {
        int corner = shares.next(piece.size());
        int next = (corner + 1) % piece.size();
        double share = shares.next();
        return piece.frame()
                .at(
                        piece.u(corner) + share * (piece.u(next) - piece.u(corner)),
                        piece.v(corner) + share * (piece.v(next) - piece.v(corner)));
    }

    /** Even on the sphere: heights are, by Archimedes' theorem of the cylinder. */
    private static Vector3D direction(EvenShares shares) {
        double height = 2 * shares.next() - 1;
        double angle = 2 * Math.PI * shares.next();
        double radius = Math.sqrt(Math.max(0, 1 - height * height));
        return Vector3D.of(radius * StrictMath.cos(angle), radius * StrictMath.sin(angle), height);
    }

    /** Moves one line downhill. */
    private static final class Descent {
        private final LineOfSight lines;
        private final Face face;
        private final Vector3D facing;
        private final double enough;
        private final List<LineOfSight.Stop> stops = new ArrayList<>();
        private double[] line;
        private double distance;
        private double step = 0.25;

        private Descent(LineOfSight lines, Near start, double enough) {
            this.lines = lines;
            this.face = start.face;
            this.enough = enough;
            facing = face.piece().frame().normal();
            stops.addAll(lines.roundRim());
            line = start.line;
            distance = start.distance;
        }

        private Optional<String> setBy() {
            for (int i = 0; i < STEPS; i++) {
                Balance balance = balance();
                if (distance <= enough && balance.rest() < 0.05) {
                    return balance.heaviest();
                }
                if (step < SHORTEST) {
                    return Optional.empty();
                }
                if (balance.rest() < AT_REST) {
                    // What counted as touched may still be some way off.
                    step *= 0.1;
                } else {
                    advance(balance.downhill(AWAY * balance.rest()), balance.rest());
                }
            }
            return Optional.empty();
        }

        private Balance balance() {
            double near = Math.max(1e-8, 0.1 * step);
            List<LineOfSight.Stop> touched =
                    stops.stream().filter(each -> each.room(line) < near).toList();
            return Balance.of(gradient(), touched, line);
        }

        /** In which direction the distance grows: it does not depend on where the line leaves the pupil. */
        private double[] gradient() {
            Vector3D end = LineOfSight.end(line);
            Vector3D away = end.subtract(NearestFace.of(List.of(face), end).point());
            double length = away.norm();
            return new double[] {away.getX() / length, away.getY() / length, away.getZ() / length, 0, 0};
        }

        private void advance(double[] way, double slope) {
            double low = 0;
            double high = step;
            double[] far = along(way, high);
            if (lines.isClear(far, facing)) {
                low = high;
                step *= 2;
            } else {
                for (int i = 0; i < HALVINGS && high - low > 1e-10; i++) {
                    double middle = 0.5 * (low + high);
                    if (lines.isClear(along(way, middle), facing)) {
                        low = middle;
                    } else {
                        high = middle;
                    }
                }
                lines.between(along(way, low), along(way, high), facing).ifPresent(this::remember);
                step = Math.max(4 * low, 0.25 * step);
            }
            // Beyond its least the distance grows again.
            for (int i = 0; i < HALVINGS; i++) {
                double[] moved = along(way, low);
                double there = distance(face, moved);
                if (there < distance - LEAST_GAIN * slope * low && lines.isClear(moved, facing)) {
                    line = moved;
                    distance = there;
                    return;
                }
                low *= 0.5;
                step = Math.min(step, Math.max(4 * low, 1e-13));
            }
        }

        private void remember(LineOfSight.Stop found) {
            stops.removeIf(
                    each -> each.name().equals(found.name()) && Math.abs(each.room(line) - found.room(line)) < 1e-12);
            stops.add(found);
        }

        private double[] along(double[] way, double by) {
            double[] moved = line.clone();
            for (int i = 0; i < moved.length; i++) {
                moved[i] += by * way[i];
            }
            return lines.drawnIn(moved);
        }
    }
}
