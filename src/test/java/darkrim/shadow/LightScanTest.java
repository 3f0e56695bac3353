package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.geom.Frame;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.scene.Beam;
import darkrim.scene.FieldLimit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

class LightScanTest {
    private static final Frame GROUND = Frame.about(Vector3D.ZERO, Vector3D.Unit.PLUS_Z);

    /** Notes what it is asked; finds nothing, or what a number of questions has passed. */
    private static final class Notes implements Question {
        private final List<double[]> starts = new ArrayList<>();
        private final List<Face> faces = new ArrayList<>();
        private final List<Vector3D> ends = new ArrayList<>();
        private int findAt = Integer.MAX_VALUE;

        @Override
        public boolean holds(Shaft shaft, Pair pair, int[] facets) {
            return false;
        }

        @Override
        public boolean holdsAfterAll(Shaft shaft, Pair pair, int[] facets) {
            return false;
        }

        @Override
        public int openCount() {
            return 0;
        }

        @Override
        public int open(int number) {
            return 0;
        }

        @Override
        public Optional<WitnessRay> counterexample(double[] pupilPoint, Face face, Vector3D end) {
            starts.add(pupilPoint.clone());
            faces.add(face);
            ends.add(end);
            return starts.size() >= findAt ? Optional.of(new WitnessRay(end, end, "")) : Optional.empty();
        }

        @Override
        public Optional<Aim> aim(Pair pair) {
            return Optional.empty();
        }
    }

    private static Face face(double... corners) {
        return new Face(FlatPiece.of(GROUND, corners), 0);
    }

    /** A pentagon and a triangle: areas 11 and 2. */
    private static final List<Face> FACES =
            List.of(face(7, 3, 11, 3, 11, 5, 9, 6.5, 7, 5), face(20, -6, 22, -6, 20, -4));

    private static boolean isIn(Face face, double u, double v) {
        FlatPiece piece = face.piece();
        for (int i = 0, j = piece.size() - 1; i < piece.size(); j = i++) {
            if ((piece.u(i) - piece.u(j)) * (v - piece.v(j)) - (piece.v(i) - piece.v(j)) * (u - piece.u(j)) < -1e-12) {
                return false;
            }
        }
        return true;
    }

    @Test
    void pointsAreSpreadEvenlyOverFacesAndPupil() {
        Notes notes = new Notes();
        Beam beam = Beam.of(TestParts.pupilAt(50, Ring.disc(10)));
        LightScan scan = new LightScan(beam, notes, FACES);
        int n = 4000;
        assertThat(scan.look(n)).isEmpty();
        assertThat(notes.ends).hasSize(n);
        double[] middle = new double[2];
        double[] seen = new double[4];
        int second = 0;
        for (int i = 0; i < n; i++) {
            Face face = notes.faces.get(i);
            double u = GROUND.inU(notes.ends.get(i));
            double v = GROUND.inV(notes.ends.get(i));
            assertThat(isIn(face, u, v)).isTrue();
            if (face.equals(FACES.get(0))) {
                middle[0] += u;
                middle[1] += v;
                // Shares of the rectangle's quarters; the roof is left out.
                if (v < 5) {
                    seen[(u < 9 ? 0 : 1) + (v < 4 ? 0 : 2)]++;
                }
            } else {
                second++;
            }
            assertThat(Math.hypot(notes.starts.get(i)[0], notes.starts.get(i)[1]))
                    .isLessThanOrEqualTo(10 + 1e-9);
        }
        // Even sets lie within a few in a thousand of the areas.
        assertThat(second / (double) n).isCloseTo(2 / 13.0, within(0.005));
        int first = n - second;
        assertThat(middle[0] / first).isCloseTo(9, within(0.03));
        // Rectangle of 8 about 4 and roof of 3 about 5.5.
        assertThat(middle[1] / first).isCloseTo((8 * 4 + 3 * 5.5) / 11, within(0.03));
        for (double quarter : seen) {
            assertThat(quarter / first).isCloseTo(2 / 11.0, within(0.02));
        }
        double inner =
                notes.starts.stream().filter(s -> Math.hypot(s[0], s[1]) < 5).count();
        assertThat(inner / n).isCloseTo(0.25, within(0.01));
        double right = notes.starts.stream().filter(s -> s[0] > 0).count();
        assertThat(right / n).isCloseTo(0.5, within(0.01));
    }

    @Test
    void itGoesOnWhereItEndedAndStopsAtWhatIsFound() {
        Notes notes = new Notes();
        LightScan scan = new LightScan(Beam.of(TestParts.pupilAt(50, Ring.disc(10))), notes, FACES);
        scan.look(10);
        scan.look(10);
        assertThat(notes.ends.stream().distinct().count()).isEqualTo(20);
        notes.findAt = 25;
        assertThat(scan.look(100)).isPresent();
        assertThat(notes.ends).hasSize(25);
        assertThat(new LightScan(Beam.of(TestParts.pupilAt(50, Ring.disc(10))), notes, List.of()).look(5))
                .isEmpty();
        assertThat(notes.ends).hasSize(25);
    }

    /** Every other line runs through the limit, wherever it lies. */
    @Test
    void halfOfTheLinesPassTheFieldLimit() {
        for (double z : new double[] {20, -20, 70}) {
            Frame frame = Frame.of(Vector3D.of(1, 2, z), Vector3D.Unit.PLUS_X, Vector3D.Unit.PLUS_Y);
            FieldLimit limit = new FieldLimit(Polygon.rectangle(0.2, 0.1), frame);
            Beam beam = new Beam(
                    TestParts.pupilAt(50, Polygon.rectangle(40, 40)), Optional.of(limit), OptionalDouble.empty());
            Notes notes = new Notes();
            new LightScan(beam, notes, FACES).look(200);
            int through = 0;
            for (int i = 0; i < notes.ends.size(); i++) {
                Vector3D from = beam.pupil()
                        .frame()
                        .at(notes.starts.get(i)[0], notes.starts.get(i)[1]);
                Vector3D to = notes.ends.get(i);
                Vector3D crossing = to.lerp(from, z / 50);
                through += Math.abs(crossing.getX() - 1) < 0.1 + 1e-9 && Math.abs(crossing.getY() - 2) < 0.05 + 1e-9
                        ? 1
                        : 0;
            }
            assertThat(notes.ends).hasSize(200);
            assertThat(through).isBetween(100, 103);
        }
        // A limit in the plane of the faces: no line is drawn from there.
        FieldLimit flat = new FieldLimit(Ring.disc(1), GROUND);
        Beam beam = new Beam(TestParts.pupilAt(50, Ring.disc(10)), Optional.of(flat), OptionalDouble.empty());
        Notes notes = new Notes();
        new LightScan(beam, notes, FACES).look(200);
        assertThat(notes.starts).allMatch(start -> Double.isFinite(start[0]) && Double.isFinite(start[1]));
    }
}
