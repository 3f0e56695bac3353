package darkrim.present.picture;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.light.Estimate;
import darkrim.scene.Scene;
import darkrim.study.irradiance.DarkProof;
import darkrim.study.irradiance.LightKind;
import darkrim.study.irradiance.SurfaceCells;
import darkrim.study.irradiance.SurfaceMap;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/** Pixels against closed forms: 120 x 80 of them, half of 80 pixels are 20 mm, so a pixel is half a millimetre. */
class RayImageTest {
    private static final int WIDTH = 120;
    private static final int HEIGHT = 80;
    private static final int PER_PIXEL = 3;
    private static final Camera TOP = new Camera(
            Vector3D.ZERO,
            ViewDirection.TOP.right(),
            ViewDirection.TOP.up(),
            ViewDirection.TOP.away(),
            20,
            Double.POSITIVE_INFINITY);

    private static RayImage look(Subject subject, Sight sight) {
        return RayImage.of(subject, sight, WIDTH, HEIGHT, PER_PIXEL, 2);
    }

    @Test
    void aRectangleCoversExactlyItsPixels() {
        RayImage image =
                look(PictureScenes.subject(PictureScenes.floor(), surface -> 1, Map.of(), Optional.empty()), TOP);
        for (int row = 0; row < HEIGHT * PER_PIXEL; row++) {
            for (int column = 0; column < WIDTH * PER_PIXEL; column++) {
                double x = ((column + 0.5) / PER_PIXEL - 60) / 2;
                double y = (40 - (row + 0.5) / PER_PIXEL) / 2;
                boolean covered = Math.abs(x) < 10 && Math.abs(y) < 5;
                assertThat(image.surface(column, row)).as("%s, %s", x, y).isEqualTo(covered ? 0 : Glance.NOTHING);
            }
        }
    }

    @Test
    void aFaceHasExactlyTheColourOfItsValue() {
        for (double value : new double[] {0, 1e-4, 2e-3, 0.7, 20}) {
            RayImage image = look(
                    PictureScenes.subject(PictureScenes.floor(), surface -> value, Map.of(), Optional.empty()), TOP);
            for (int column = 41; column < 79; column++) {
                assertThat(image.argb(column, 40)).isEqualTo(PictureScenes.SCALE.argb(value));
            }
        }
    }

    @Test
    void aCellHasExactlyTheColourOfItsValue() {
        Scene scene = PictureScenes.floor();
        SurfaceCells cells = SurfaceCells.of(scene, scene.surfaces().get(0), 4);
        SurfaceMap map = PictureScenes.known(cells, cell -> 0.002 * (cell + 1));
        Subject subject = new Subject(
                scene,
                all(scene),
                Optional.of(LightKind.DIRECT),
                List.of(map),
                PictureScenes.SCALE,
                1,
                Map.of(),
                Optional.empty(),
                List.of());
        RayImage image = look(subject, TOP);
        // Cells of 5 mm, 10 pixels; numbered from -x, -y, which is the lower left.
        for (int cell = 0; cell < 8; cell++) {
            int column = 40 + 10 * (cell % 4) + 5;
            int row = 49 - 10 * (cell / 4) - 4;
            assertThat(image.argb(column, row))
                    .as("cell %d", cell)
                    .isEqualTo(PictureScenes.SCALE.argb(0.002 * (cell + 1)));
        }
    }

    @Test
    void anUnknownValueIsNoColourOfTheScale() {
        Scene scene = PictureScenes.floor();
        SurfaceCells cells = SurfaceCells.whole(scene, scene.surfaces().get(0));
        Estimate none = Estimate.none(1);
        Subject subject = new Subject(
                scene,
                all(scene),
                Optional.of(LightKind.TOTAL),
                List.of(new SurfaceMap(cells, DarkProof.NONE, List.of(none), List.of(none), 0)),
                PictureScenes.SCALE,
                1,
                Map.of(),
                Optional.empty(),
                List.of());
        assertThat(look(subject, TOP).argb(60, 40)).isEqualTo(ColourScale.UNKNOWN);
    }

    @Test
    void aSectionFillsTheCutFaceAndTakesAwayWhatIsNearer() {
        Scene scene = PictureScenes.block();
        Section section = Section.towards(0, 2, ViewDirection.TOP);
        assertThat(section).isEqualTo(new Section(0, 2, true));
        RayImage half = look(PictureScenes.subject(scene, surface -> 1, Map.of(), Optional.of(section)), TOP);
        int top = scene.surface("block/+z").orElseThrow().index();
        // Cut at x = 2 mm, that is at column 64; the plane is seen edge-on.
        assertThat(half.surface(63 * PER_PIXEL, 120)).isEqualTo(top);
        assertThat(half.surface(65 * PER_PIXEL, 120)).isEqualTo(Glance.NOTHING);
        Section lower = Section.towards(2, 3, ViewDirection.TOP);
        RayImage cut = look(PictureScenes.subject(scene, surface -> 1, Map.of(), Optional.of(lower)), TOP);
        assertThat(cut.surface(60 * PER_PIXEL, 120)).isEqualTo(Glance.CUT);
        assertThat(cut.surface(40 * PER_PIXEL - 1, 120)).isEqualTo(Glance.NOTHING);
        assertThat(cut.surface(40 * PER_PIXEL, 120)).isEqualTo(Glance.CUT);
        Section above = Section.towards(2, 5, ViewDirection.TOP);
        RayImage whole = look(PictureScenes.subject(scene, surface -> 1, Map.of(), Optional.of(above)), TOP);
        assertThat(whole.surface(60 * PER_PIXEL, 120)).isEqualTo(top);
    }

    @Test
    void whatIsHiddenIsSeenThrough() {
        Scene scene = PictureScenes.block();
        BitSet shown = all(scene);
        shown.clear(scene.surface("block/+z").orElseThrow().index());
        Subject all = PictureScenes.subject(scene, surface -> 1, Map.of(), Optional.empty());
        Subject open = new Subject(
                scene, shown, all.light(), all.maps(), all.scale(), 1, Map.of(), Optional.empty(), List.of());
        assertThat(look(open, TOP).surface(60 * PER_PIXEL, 120))
                .isEqualTo(scene.surface("block/-z").orElseThrow().index());
    }

    @Test
    void edgesAreDrawnWhereFacesMeet() {
        Scene scene = PictureScenes.block();
        View view = new View(
                ViewDirection.CORNER,
                false,
                PictureScenes.subject(scene, s -> 1, Map.of(), Optional.empty()).corners(),
                1);
        RayImage image = look(PictureScenes.subject(scene, surface -> 1, Map.of(), Optional.empty()), view.camera(1.5));
        int face = PictureScenes.SCALE.argb(1);
        int[] counts = new int[2];
        for (int row = 0; row < HEIGHT; row++) {
            for (int column = 0; column < WIDTH; column++) {
                int middle = image.surface(column * PER_PIXEL + 1, row * PER_PIXEL + 1);
                if (middle >= 0) {
                    counts[image.argb(column, row) == face ? 0 : 1]++;
                }
            }
        }
        assertThat(counts[0]).isGreaterThan(5 * counts[1]);
        assertThat(counts[1]).isGreaterThan(100);
    }

    @Test
    void anyNumberOfThreadsPaintsTheSame() {
        Subject subject = PictureScenes.subject(
                PictureScenes.block(), surface -> 0.01 * (surface + 1), Map.of(), Optional.empty());
        View view = new View(ViewDirection.CORNER, true, subject.corners(), 1);
        RayImage one = RayImage.of(subject, view.camera(1.5), WIDTH, HEIGHT, PER_PIXEL, 1);
        RayImage four = RayImage.of(subject, view.camera(1.5), WIDTH, HEIGHT, PER_PIXEL, 4);
        for (int row = 0; row < HEIGHT; row++) {
            for (int column = 0; column < WIDTH; column++) {
                assertThat(four.argb(column, row)).isEqualTo(one.argb(column, row));
            }
        }
    }

    private static BitSet all(Scene scene) {
        BitSet all = new BitSet();
        all.set(0, scene.surfaces().size());
        return all;
    }
}
