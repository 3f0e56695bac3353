package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.geom.Ring;
import darkrim.scene.Beam;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import darkrim.trace.Ray;
import darkrim.trace.StartPoints;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Sheets and solids a hair above a face: rays leave the face past all that lies in its plane, and a proof must take the same for cover. */
class ThinGapTest {
    private static final int RAYS = 3000;
    /** What is lower lies in the plane of the face, to rounding, and what is higher than the second is plainly above it, mm. */
    private static final double IN_PLANE = 5e-14;

    private static final double ABOVE = 5e-8;
    private static final double[] PUPILS = {20, 300, 3000, 1e6};

    /** Heights from less than rounding to what a drawing shows, for near and far pupils. */
    static Stream<Arguments> gaps() {
        List<Arguments> gaps = new ArrayList<>();
        for (double pupil : PUPILS) {
            for (double height = 1e-15; height < 2e-2; height *= 4.7) {
                gaps.add(Arguments.of(pupil, height));
            }
        }
        return gaps.stream();
    }

    private static Beam beam(double distance) {
        return Beam.of(TestParts.pupilAt(distance, Ring.disc(0.2 * distance)));
    }

    /** Proves every surface and shoots rays at those that are proved dark; returns how many are. */
    private static int darkAndUncontradicted(Scene scene, String what) {
        FacetTree tree = TestParts.tree(scene);
        DarknessProof proof = new DarknessProof(scene, tree, new ProofSettings(0.01, 300, 1e-6));
        int dark = 0;
        for (Surface surface : scene.surfaces()) {
            if (proof.of(surface) instanceof Darkness.Dark) {
                int clear = clearRays(scene, tree, surface);
                assertThat(clear).as("%s, %s", what, surface.name()).isZero();
                dark++;
            }
        }
        return dark;
    }

    /** Rays that start as those of sampled light do: lifted off their facet, past all that shares its plane. */
    private static int clearRays(Scene scene, FacetTree tree, Surface surface) {
        SplittableRandom random = new SplittableRandom(11);
        StartPoints starts = new StartPoints(scene.copyCorners(), tree);
        double[] from = new double[3];
        double[] at = new double[2];
        Ray ray = new Ray();
        int clear = 0;
        for (int i = 0; i < RAYS; i++) {
            int f = surface.firstFacet() + random.nextInt(surface.facetCount());
            double root = Math.sqrt(random.nextDouble());
            double share = random.nextDouble();
            starts.place(f, 1 - root, root * (1 - share), !surface.back(), from);
            scene.beam().pupil().outline().place(random.nextDouble(), random.nextDouble(), at);
            Vector3D way = scene.beam().pupil().frame().at(at[0], at[1]).subtract(Vector3D.of(from));
            if (way.dot(scene.normal(f)) * (surface.back() ? -1 : 1) > 0) {
                ray.set(from[0], from[1], from[2], way.getX(), way.getY(), way.getZ(), 1, scene.plane(f));
                clear += tree.blocked(ray) ? 0 : 1;
            }
        }
        return clear;
    }

    @Tag("chance")
    @ParameterizedTest
    @MethodSource("gaps")
    void noRayPassesASheetOrASolidThatCoversAFaceFromAnyHeight(double pupil, double height) {
        Scene sheets = new TestParts()
                .block("block", -5, 5, -5, 5, -2, 0)
                .sheet("mask", -6, 6, -6, 6, height)
                .sheet("second", 20, 24, 0, 4, 0.3)
                .sheet("above", 19, 25, -1, 5, 0.3 + height)
                .build(beam(pupil));
        assertThat(darkAndUncontradicted(sheets, "sheet " + height + " above, pupil at " + pupil))
                .isGreaterThanOrEqualTo(8);
        Scene solids = new TestParts()
                .block("block", -5, 5, -5, 5, -2, 0)
                .block("cover", -6, 6, -6, 6, height, 2 * height)
                .block("thin", -6, 6, 8, 12, 0, Math.max(1e-9, height))
                .build(beam(pupil));
        assertThat(darkAndUncontradicted(solids, "solid " + height + " above, pupil at " + pupil))
                .isGreaterThanOrEqualTo(7);
    }

    @Tag("chance")
    @ParameterizedTest
    @MethodSource("gaps")
    void noRayPassesASheetThatIsTiltedOffAFaceByAHair(double pupil, double height) {
        Scene scene = new TestParts()
                .block("block", -5, 5, -5, 5, -2, 0)
                .sheet(
                        "tilted",
                        Vector3D.of(-6, -6, 0),
                        Vector3D.of(6, -6, height),
                        Vector3D.of(6, 6, height),
                        Vector3D.of(-6, 6, 0))
                .sheet(
                        "crossing",
                        Vector3D.of(20, -6, -height),
                        Vector3D.of(30, -6, height),
                        Vector3D.of(30, 6, height),
                        Vector3D.of(20, 6, -height))
                .block("other", 21, 29, -5, 5, -2, 0)
                .build(beam(pupil));
        assertThat(darkAndUncontradicted(scene, "tilted by " + height + " over 12, pupil at " + pupil))
                .isGreaterThanOrEqualTo(9);
    }

    /** Sheets one above the other, each in reach of the next: the lowest must not share a plane with the highest. */
    @Tag("chance")
    @ParameterizedTest
    @CsvSource({"300, 1e-12", "300, 1e-10", "300, 2e-8", "300, 2e-7", "1e6, 1e-8", "1e6, 1e-7", "1e6, 5e-4"})
    void noRayPassesAChainOfSheets(double pupil, double step) {
        TestParts parts = new TestParts();
        for (int i = 0; i < 40; i++) {
            parts.sheet("sheet[" + i + "]", -5 - 0.1 * i, 5 + 0.1 * i, -5, 5, i * step);
        }
        Scene scene = parts.build(beam(pupil));
        // The backs at least.
        assertThat(darkAndUncontradicted(scene, "chain of steps of " + step)).isGreaterThanOrEqualTo(40);
        int low = scene.surface("sheet[0]").orElseThrow().firstFacet();
        int high = scene.surface("sheet[39]").orElseThrow().firstFacet();
        assertThat(scene.plane(high)).isNotEqualTo(scene.plane(low));
    }

    /** A fan of sheets about one line, each tilted by less than 1e-9 from the one before. */
    @Tag("chance")
    @Test
    void noRayPassesAFanOfAlmostParallelSheets() {
        for (double step : new double[] {1e-13, 1e-11, 1e-10, 5e-10, 1e-9, 1e-8}) {
            TestParts parts = new TestParts().block("block", -5, 5, -5, 5, -2, 0);
            for (int i = 1; i <= 20; i++) {
                double up = 40 * i * step;
                parts.sheet(
                        "sheet[" + i + "]",
                        Vector3D.of(-40, -6, -up),
                        Vector3D.of(40, -6, up),
                        Vector3D.of(40, 6, up),
                        Vector3D.of(-40, 6, -up));
            }
            // The backs, and the block but for what stands out of the fan.
            assertThat(darkAndUncontradicted(parts.build(beam(300)), "fan of steps of " + step))
                    .isGreaterThanOrEqualTo(22);
        }
    }

    /** The two examples that a newcomer met: each sheet is proved dark, and rays agree. */
    @ParameterizedTest
    @CsvSource({"1e6, 5e-4", "300, 3e-7"})
    void aFaceBelowASheetAHairAboveItIsProvedDark(double pupil, double height) {
        Scene scene = new TestParts()
                .sheet("face", -5, 5, -5, 5, 0)
                .sheet("mask", -6, 6, -6, 6, height)
                .build(beam(pupil));
        assertThat(TestParts.prove(scene, "face")).isInstanceOf(Darkness.Dark.class);
        assertThat(darkAndUncontradicted(scene, "sheet")).isGreaterThanOrEqualTo(1);
    }

    /** What sees the whole pupil by proof must see it by the exact view, too; and what is dark by proof must see none of it. */
    @Tag("chance")
    @ParameterizedTest
    @MethodSource("gaps")
    void theExactViewAgreesWithBothProofs(double pupil, double height) {
        Scene scene = new TestParts()
                .sheet("face", -5, 5, -5, 5, 0)
                .sheet("mask", -6, 6, -6, 6, height)
                .build(beam(pupil));
        FacetTree tree = TestParts.tree(scene);
        Surface face = scene.surface("face").orElseThrow();
        double seen = new VisiblePupil(scene, tree)
                .from(Vector3D.of(1.5, 0.5, 0), Vector3D.Unit.PLUS_Z)
                .areaFraction();
        boolean lit =
                new FullyLitProof(scene, tree, ProofSettings.DEFAULT).of(face).proved();
        boolean dark = new DarknessProof(scene, tree).of(face) instanceof Darkness.Dark;
        assertThat(lit && seen < 1).as("lit, sees %s", seen).isFalse();
        assertThat(dark && seen > 0).as("dark, sees %s", seen).isFalse();
        assertThat(lit && dark).isFalse();
        // In between neither need be proved.
        if (height < IN_PLANE || height > ABOVE) {
            assertThat(lit || dark).isTrue();
        }
    }
}
