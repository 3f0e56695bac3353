package darkrim.scene;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Facets in one plane share its number whichever way they face and wherever they lie, and no others do. */
class FacetPlanesTest {
    private static final double BOUND = 300;

    /** Planes for which a bin border or a choice of sign is close: square, at 45 and 60 degrees, and at bin borders. */
    @ParameterizedTest
    @CsvSource({
        "0, 0, 1",
        "0, -1, 0",
        "1, -1, 0",
        "1, 1, 0",
        "1, 0, -1",
        "1, 1, 1",
        "1, -1, 1",
        "-1, 1, 1",
        "0.5, 0, 0.8660254037844386",
        "0.000000512, 0, 1",
        "0.0000005120001, 0.0000015359999, 1",
        "3, 4, 0",
        "1e-10, 0, 1",
        "0.57735, 0.577350001, -0.57735"
    })
    void facetsInOnePlaneShareItsNumber(double x, double y, double z) {
        SplittableRandom random = new SplittableRandom(3);
        Vector3D normal = Vector3D.of(x, y, z).normalize();
        Vector3D u = normal.orthogonal();
        Vector3D v = normal.cross(u);
        for (double offset : new double[] {0, 1, -17.3, 0.5 * 1024e-9 * BOUND, 150}) {
            int facets = 300;
            double[] corners = new double[9 * facets];
            for (int i = 0; i < 3 * facets; i++) {
                Vector3D p = normal.multiply(offset)
                        .add(u.multiply(200 * random.nextDouble() - 100))
                        .add(v.multiply(200 * random.nextDouble() - 100));
                set(corners, 3 * i, p);
            }
            FacetPlanes planes = FacetPlanes.of(corners, BOUND);
            // A needle's normal is known less well than to 1e-9: only facets of some width must agree.
            for (int f = 0; f < facets; f++) {
                if (planes.areas()[f] > 1 && planes.areas()[0] > 1) {
                    assertThat(planes.planeOf()[f])
                            .as("facet %d, offset %s", f, offset)
                            .isEqualTo(planes.planeOf()[0]);
                }
            }
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {1e-6, 1e-3, 2.5})
    void parallelPlanesApartDoNotShareANumber(double apart) {
        double[] corners = {0, 0, 5, 1, 0, 5, 0, 1, 5, 0, 0, 5 + apart, 1, 0, 5 + apart, 0, 1, 5 + apart};
        assertThat(FacetPlanes.of(corners, BOUND).count()).isEqualTo(2);
    }

    /** A slab about the plane of the largest facet, not a chain from each facet to the next: 2^-47 of the bound is 2.1e-12 mm here. */
    @Test
    void planesThatFollowEachOtherByLessThanTheSlabAreNotAllOne() {
        int facets = 100;
        double step = 1e-12;
        double[] corners = new double[9 * facets];
        for (int i = 0; i < facets; i++) {
            set(corners, 9 * i, Vector3D.of(0, 0, i * step));
            set(corners, 9 * i + 3, Vector3D.of(10, 0, i * step));
            set(corners, 9 * i + 6, Vector3D.of(0, 10, i * step));
        }
        int[] planes = FacetPlanes.of(corners, BOUND).planeOf();
        for (int i = 0; i < facets; i++) {
            for (int j = 0; j < i; j++) {
                if (planes[i] == planes[j]) {
                    assertThat((i - j) * step).isLessThanOrEqualTo(2 * 0x1p-47 * BOUND);
                }
            }
        }
        assertThat(planes[0]).isEqualTo(planes[2]);
    }

    /** A tiny facet of another slope lies near the plane of a large one, but its own normal tells it apart. */
    @Test
    void aSmallFacetThatIsTiltedBeyondItsOwnRoundingIsAnotherPlane() {
        double[] corners = {0, 0, 0, 100, 0, 0, 0, 100, 0, 1, 1, 0, 1.0001, 1, 2e-12, 1, 1.0001, 0};
        assertThat(FacetPlanes.of(corners, BOUND).count()).isEqualTo(2);
    }

    @Test
    void theFirstFacetHasTheFirstNumberAlsoWhereALaterOneIsLarger() {
        double[] corners = {
            0, 0, 7, 1, 0, 7, 0, 1, 7, 0, 0, 5, 1, 0, 5, 0, 1, 5, 5, 5, 7, 90, 5, 7, 5, 90, 7, 5, 5, 5, 90, 5, 5, 5, 90,
            5
        };
        assertThat(FacetPlanes.of(corners, BOUND).planeOf()).containsExactly(0, 1, 0, 1);
    }

    @Test
    void planesAtEqualDistanceOnTheTwoSidesOfTheOriginAreTwo() {
        double[] corners = {0, 0, 5, 1, 0, 5, 0, 1, 5, 0, 0, -5, 1, 0, -5, 0, 1, -5};
        assertThat(FacetPlanes.of(corners, BOUND).planeOf()).containsExactly(0, 1);
    }

    @Test
    void planesThatMirrorOneAnotherAreNotOne() {
        // The eight faces of an octahedron share their sizes of components and distance.
        double[] corners = new double[72];
        for (int i = 0; i < 8; i++) {
            set(corners, 9 * i, Vector3D.of((i & 1) == 0 ? 1 : -1, 0, 0));
            set(corners, 9 * i + 3, Vector3D.of(0, (i & 2) == 0 ? 1 : -1, 0));
            set(corners, 9 * i + 6, Vector3D.of(0, 0, (i & 4) == 0 ? 1 : -1));
        }
        FacetPlanes planes = FacetPlanes.of(corners, BOUND);
        assertThat(planes.planeOf()).containsExactly(0, 1, 2, 3, 4, 5, 6, 7);
        assertThat(planes.count()).isEqualTo(8);
    }

    @Test
    void aTiltOfASmallAngleMakesAnotherPlane() {
        double tilt = 1e-6;
        double[] corners = {0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, tilt, 0, 1, 0};
        assertThat(FacetPlanes.of(corners, BOUND).count()).isEqualTo(2);
    }

    @Test
    void areaAndNormalAreThoseOfTheRightHandRule() {
        double[] corners = {0, 0, 0, 3, 0, 0, 0, 4, 0, 1, 0, 0, 0, 0, 1, 0, 1, 0};
        FacetPlanes planes = FacetPlanes.of(corners, BOUND);
        assertThat(planes.areas()[0]).isEqualTo(6);
        assertThat(planes.normals()[2]).isEqualTo(1);
        assertThat(planes.areas()[1]).isCloseTo(Math.sqrt(3) / 2, within(1e-15));
        for (int k = 3; k < 6; k++) {
            assertThat(planes.normals()[k]).isCloseTo(-1 / Math.sqrt(3), within(1e-15));
        }
    }

    @Test
    void aFacetWithoutAreaIsRefused() {
        assertThatThrownBy(() -> FacetPlanes.of(new double[] {0, 0, 0, 1, 1, 1, 2, 2, 2}, BOUND))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("facet 0");
    }

    private static void set(double[] corners, int at, Vector3D p) {
        corners[at] = p.getX();
        corners[at + 1] = p.getY();
        corners[at + 2] = p.getZ();
    }
}
