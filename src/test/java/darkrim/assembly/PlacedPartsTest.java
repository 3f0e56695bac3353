package darkrim.assembly;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.diagnostic.Findings;
import darkrim.geom.Outline;
import darkrim.geom.Placement;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.layout.Layout;
import darkrim.layout.Part;
import darkrim.layout.Shape;
import darkrim.layout.Shape.KnifeEdge;
import darkrim.layout.Shape.Openings;
import darkrim.layout.Shape.Plate;
import darkrim.layout.Shape.Toward;
import darkrim.scene.Scene;
import darkrim.scene.SceneFactory;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;

class PlacedPartsTest {
    @Test
    void aMirroredPartKeepsItsVolumeAndItsNormalsPointOut() {
        Placement mirrored = Placement.NONE.thenMirrored(Vector3D.Unit.PLUS_X).thenMoved(Vector3D.of(3, 0, 0));
        List<Body> plain = Layouts.bodies(Layouts.mosaic());
        List<Body> placed = Layouts.assemble(Layouts.layout(Layouts.part("part", Layouts.mosaic(), mirrored)))
                .bodies();
        for (int i = 0; i < plain.size(); i++) {
            MeshLaws.hold(placed.get(i));
            assertThat(placed.get(i).volume()).isCloseTo(plain.get(i).volume(), within(1e-8));
        }
    }

    @Test
    void aPlateTurnedUpsideDownShowsItsOtherFaceToThePupil() {
        Plate plate = new Plate(
                Polygon.rectangle(60, 60),
                3,
                1,
                List.of(new Openings(
                        "opening",
                        Polygon.rectangle(20, 20),
                        1,
                        1,
                        0,
                        0,
                        Vector2D.of(5, 0),
                        Optional.of(new KnifeEdge(0.1, 30, Toward.PUPIL)))));
        Placement over = Placement.NONE.thenTurned(Vector3D.Unit.PLUS_X, 180);
        Assembly assembly = Layouts.assemble(Layouts.layout(Layouts.part("lid", plate, over)));
        assembly.bodies().forEach(MeshLaws::hold);
        Opening opening = assembly.openings().get(0);
        // Drawn from z = 3 to 4 with the land at 3.9 to 4; turned over, the land is at -4 to -3.9, the side of the
        // detector.
        assertThat(opening.landNearPupil().get(0).getZ()).isCloseTo(-3.9, within(1e-12));
        assertThat(opening.landNearDetector().get(0).getZ()).isCloseTo(-4, within(1e-12));
        assertThat(opening.pupilFace().get(0).getZ()).isEqualTo(-3);
        assertThat(opening.centre().getX()).isCloseTo(5, within(1e-12));
    }

    /** 64 layouts of random parts, turned, mirrored, moved and repeated; fixed seed. */
    @Test
    void randomPartsAnywhereAreWatertightAndKeepTheirVolume() {
        UniformRandomProvider random = RandomSource.XO_SHI_RO_256_PP.create(4711L);
        for (int round = 0; round < 64; round++) {
            Shape shape = randomShape(random, round % 8);
            Placement placement = randomPlacement(random);
            Optional<Part.Repeat> repeat = random.nextInt(4) == 0
                    ? Optional.of(new Part.Repeat(1 + random.nextInt(2), 2, 200, 300))
                    : Optional.empty();
            Layout layout = Layouts.layout(
                    new Part("part", shape, placement, repeat, Optional.empty(), darkrim.diagnostic.Place.IN_CODE));
            Findings findings = new Findings();
            Assembly assembly = Assembly.of(layout, findings);
            // Turned at random, detectors may face anywhere.
            assertThat(findings.sorted())
                    .allSatisfy(finding -> assertThat(finding.code()).isEqualTo("detector-faces-away"));
            List<Body> drawn = Layouts.bodies(shape);
            for (int i = 0; i < assembly.bodies().size(); i++) {
                Body body = assembly.bodies().get(i);
                Body original = drawn.get(i % drawn.size());
                MeshLaws.hold(body);
                if (body.solid()) {
                    // Rounding of the divergence sum grows with the distance from the origin, here up to 500 mm.
                    assertThat(body.volume())
                            .as(shape.toString())
                            .isCloseTo(original.volume(), within(1e-8 * Math.max(1, original.volume())));
                }
                for (int f = 0; f < body.faces().size(); f++) {
                    double area = original.faces().get(f).area();
                    assertThat(body.faces().get(f).area()).isCloseTo(area, within(1e-9 * Math.max(1, area)));
                }
            }
            Scene scene = SceneFactory.of(layout, assembly);
            assertThat(scene.surfaces()).hasSize(assembly.surfaces().size());
        }
    }

    private static Placement randomPlacement(UniformRandomProvider random) {
        Placement placement = Placement.NONE;
        if (random.nextBoolean()) {
            placement = placement.thenMirrored(axis(random));
        }
        if (random.nextBoolean()) {
            double degrees = random.nextBoolean() ? 90 * random.nextInt(4) : 360 * random.nextDouble();
            placement = placement.thenTurned(axis(random), degrees);
        }
        return placement.thenMoved(Vector3D.of(
                50 * random.nextDouble() - 25, 50 * random.nextDouble() - 25, 50 * random.nextDouble() - 25));
    }

    private static Vector3D axis(UniformRandomProvider random) {
        return switch (random.nextInt(4)) {
            case 0 -> Vector3D.Unit.PLUS_X;
            case 1 -> Vector3D.Unit.PLUS_Y;
            case 2 -> Vector3D.Unit.PLUS_Z;
            default -> Vector3D.of(random.nextDouble() + 0.1, random.nextDouble(), random.nextDouble());
        };
    }

    private static Shape randomShape(UniformRandomProvider random, int kind) {
        double a = 1 + 40 * random.nextDouble();
        double b = 1 + 40 * random.nextDouble();
        double c = 0.5 + 10 * random.nextDouble();
        return switch (kind) {
            case 0 -> new Shape.Block(a, b, c);
            case 1 -> new Shape.Box(a + 10, b + 10, c, 5, 40 * random.nextDouble() - 20, 1);
            case 2 -> new Shape.Tube(a, a + c, b, 10);
            case 3 -> new Shape.Disc(a + 1, random.nextBoolean() ? 0 : a * 0.9);
            case 4 -> new Shape.Rectangle(a, b);
            case 5 -> new Shape.SphereCap(c, 1 + 179 * random.nextDouble());
            case 6 -> Layouts.mosaic();
            default -> randomPlate(random);
        };
    }

    private static Plate randomPlate(UniformRandomProvider random) {
        Outline outer = random.nextBoolean() ? Polygon.rectangle(160, 150) : Ring.disc(90);
        double thickness = 0.5 + 2 * random.nextDouble();
        List<Openings> groups = new ArrayList<>();
        for (int i = 0; i < 1 + random.nextInt(2); i++) {
            Outline outline = switch (random.nextInt(3)) {
                case 0 -> Ring.disc(5 + 5 * random.nextDouble());
                case 1 -> Polygon.rectangle(5 + 15 * random.nextDouble(), 5 + 15 * random.nextDouble());
                default -> randomPolygon(random);
            };
            Optional<KnifeEdge> edge = random.nextBoolean()
                    ? Optional.empty()
                    : Optional.of(new KnifeEdge(
                            random.nextBoolean() ? 0 : 0.3 * thickness,
                            45 * random.nextDouble(),
                            random.nextBoolean() ? Toward.PUPIL : Toward.DETECTOR));
            groups.add(new Openings("hole-" + i, outline, 2, 1, 40, 0, Vector2D.of(0, 40 * i), edge));
        }
        return new Plate(outer, 3, thickness, groups);
    }

    /** A convex polygon: points in order on an ellipse. */
    private static Polygon randomPolygon(UniformRandomProvider random) {
        int corners = 3 + random.nextInt(6);
        List<Vector2D> loop = new ArrayList<>();
        for (int i = 0; i < corners; i++) {
            double angle = 2 * Math.PI * (i + 0.4 * random.nextDouble()) / corners;
            loop.add(Vector2D.of(9 * Math.cos(angle), 7 * Math.sin(angle)));
        }
        return Polygon.of(loop);
    }
}
