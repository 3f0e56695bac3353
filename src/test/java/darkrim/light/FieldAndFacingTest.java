package darkrim.light;

import static darkrim.light.CornerScene.agree;
import static darkrim.light.CornerScene.at;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.diagnostic.Place;
import darkrim.geom.Frame;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.layout.Requirement.LightClass;
import darkrim.light.PlateSums.Element;
import darkrim.light.PlateSums.Plate;
import darkrim.reflection.Reflection;
import darkrim.scene.Beam;
import darkrim.scene.FieldLimit;
import darkrim.scene.Finish;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.SceneBuilder;
import darkrim.trace.FacetTree;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Which lines a field limit lets pass, which facets face which, and where light followed forward is sent. Five standard errors: 6e-7 of all seeds each. */
class FieldAndFacingTest {
    private static final double LIFT = 1e-12;
    private static final Pupil PUPIL = new Pupil(new Ring(20, 5), Frame.about(at(4, -3, 90), at(0.1, 0.05, -1)));

    private static FacetTree tree(Scene scene) {
        return FacetTree.build(scene.corners(), scene.copyPlanes(), scene.bound());
    }

    private static Scene plate(Plate plate, Beam beam) {
        return new SceneBuilder()
                .sheet("plate", new Finish("f", plate.reflection()), "plate/back", Finish.ABSORBER, Place.IN_CODE)
                .quad("plate", plate.at(0, 0), plate.at(1, 0), plate.at(1, 1), plate.at(0, 1))
                .build(beam);
    }

    /** A rectangle in the plane of the layout through which lines from the pupil must pass: those to a point above it are cut at x = 9. */
    @Test
    void aFieldLimitCutsOffALineThatCrossesItsPlaneOutside() {
        Beam beam = new Beam(
                PUPIL, Optional.of(new FieldLimit(Polygon.rectangle(18, 40), Frame.LAYOUT)), OptionalDouble.empty());
        Scene scene = plate(new Plate("plate", at(60, 0, 0), at(1, 0, 0), at(0, 1, 0), Reflection.NONE), beam);
        Vector3D point = at(8, 2, 20);
        Vector3D facing = at(-0.2, 0.1, 1).normalize();
        double expected = 0;
        double seen = 0;
        List<Element> all = PlateSums.pupil(PUPIL, 80);
        for (Element piece : all) {
            Vector3D way = piece.at().subtract(point);
            Vector3D crossing = point.subtract(way.multiply(point.getZ() / way.getZ()));
            if (Math.abs(crossing.getX()) < 9 && Math.abs(crossing.getY()) < 20) {
                Vector3D from = way.normalize();
                expected += from.dot(facing) * -from.dot(piece.normal()) * piece.area() / way.normSq();
                seen += 1.0 / all.size();
            }
        }
        assertThat(seen).isBetween(0.2, 0.8);
        Receiver.AtPoint at = new Receiver.AtPoint("point", point, facing);
        Tally found = Transport.of(scene, 3).batch(at, LightClass.DIRECT, 0, 20_000);
        agree("direct", found.irradiance(), expected / scene.referenceIrradiance(), 0.02);
        agree("seen", found.pupilSeen(), seen, 0.02);
        Obstruction lines = new ObstructionSampler(scene, tree(scene), 3).batch(at, 0, 4000);
        assertThat(lines.beyondField() / 4000.0).isCloseTo(1 - seen, within(5 * 0.5 / Math.sqrt(4000) + 0.01));
        assertThat(lines.seen() + lines.beyondField()).isEqualTo(4000);
        HemisphereTally looks =
                new HemisphereView(scene, tree(scene), Optional.empty(), 3).batch("point", point, facing, 0, 100);
        assertThat(looks.seen(looks.pupil()) / 1e4).isCloseTo(expected / Math.PI, within(0.01));
    }

    /** One corner of three in front of the receiver's plane is enough, and one corner of the receiver in front of the sender's. */
    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2})
    void aFacetOfWhichOneCornerIsInFrontFaces(int corner) {
        Vector3D[] sender = {at(8, 1, -2), at(9, -3, -1), at(10, 2, -3)};
        sender[corner] = sender[corner].add(at(0, 0, 5));
        for (Vector3D shift : List.of(Vector3D.ZERO, at(30, -40, 50))) {
            Scene scene = new SceneBuilder()
                    .sheet("low", Finish.ABSORBER, "low/back", Finish.ABSORBER, Place.IN_CODE)
                    .sheet("from", Finish.ABSORBER, "from/back", Finish.ABSORBER, Place.IN_CODE)
                    .triangle("low", shift, at(2, 0, 0).add(shift), at(0, 3, 0).add(shift))
                    .triangle("from", sender[0].add(shift), sender[1].add(shift), sender[2].add(shift))
                    .build(Beam.of(PUPIL));
            int facet = scene.surface("from").orElseThrow().firstFacet();
            Vector3D middle = at(0.7, 1, 0).add(shift);
            boolean front = middle.subtract(scene.corner(facet, 0)).dot(scene.normal(facet)) > 0;
            Facing above = new Facing(
                    scene, new Receiver.OnSurface(scene.surface("low").orElseThrow()), LIFT);
            Facing below = new Facing(
                    scene, new Receiver.OnSurface(scene.surface("low/back").orElseThrow()), LIFT);
            assertThat(above.mayGet(facet, !front)).isTrue();
            assertThat(above.mayGet(facet, front)).isFalse();
            assertThat(below.mayGet(facet, !front)).isTrue();
            Facing point = new Facing(scene, new Receiver.AtPoint("point", middle, Vector3D.Unit.PLUS_Z), LIFT);
            assertThat(point.mayGet(facet, !front)).isTrue();
            assertThat(point.mayGet(facet, front)).isFalse();
            Facing away = new Facing(
                    scene, new Receiver.AtPoint("away", middle.add(at(0, 0, 6)), Vector3D.Unit.PLUS_Z), LIFT);
            assertThat(away.mayGet(facet, true) || away.mayGet(facet, false)).isFalse();
            // Nothing faces itself, nor what lies in its own plane.
            assertThat(above.mayGet(scene.surface("low").orElseThrow().firstFacet(), false))
                    .isFalse();
        }
    }

    /** A small plate far to each side: packets are sent into a cone about it, and what arrives is the sum over the pupil. */
    @ParameterizedTest
    @CsvSource({"70, 0, 30", "0, -80, -40", "-90, 60, 10"})
    void lightIsFollowedForwardToAPlateFarAside(double x, double y, double z) {
        Vector3D middle = at(x, y, z);
        Vector3D toward = PUPIL.frame().origin().subtract(middle).normalize();
        Vector3D u = toward.orthogonal().multiply(6);
        Vector3D v = toward.add(at(0.2, -0.3, 0.1)).cross(u).normalize().multiply(5);
        Plate plate = new Plate("plate", middle, u, v, Reflection.NONE);
        Scene scene = plate(plate, Beam.of(PUPIL));
        ForwardTally found = new ForwardTracer(scene, tree(scene), 5).trace(20_000, 1);
        PlateSums sums = new PlateSums(PlateSums.pupil(PUPIL, 10), 1, false);
        double expected = 0;
        for (Element piece : plate.elements(4)) {
            expected += sums.irradiance(piece.at(), piece.normal()) / 16;
        }
        agree(
                "plate",
                found.irradiance(scene.surface("plate").orElseThrow(), 0),
                expected / scene.referenceIrradiance(),
                0.05);
        assertThat(found.absorbed() + found.escaped()).isCloseTo(found.emitted(), within(1e-9 * found.emitted()));
    }
}
