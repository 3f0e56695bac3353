package darkrim.present.picture;

import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** Where in a picture each surface can be seen. Immutable. */
final class SeenSurfaces {
    private final RayImage image;
    private final int across;
    private final int down;
    private final long[] count;
    private final double[] sumX;
    private final double[] sumY;

    SeenSurfaces(RayImage image, int surfaces) {
        this.image = image;
        across = image.width() * image.perPixel();
        down = image.height() * image.perPixel();
        count = new long[surfaces];
        sumX = new double[surfaces];
        sumY = new double[surfaces];
        for (int j = 0; j < down; j++) {
            for (int i = 0; i < across; i++) {
                int surface = image.surface(i, j);
                if (surface >= 0) {
                    count[surface]++;
                    sumX[surface] += i + 0.5;
                    sumY[surface] += j + 0.5;
                }
            }
        }
    }

    /** How much of the picture a surface takes up, pixels. */
    double area(int surface) {
        return (double) count[surface] / (image.perPixel() * image.perPixel());
    }

    /** The place nearest to the middle of what is seen of a surface where the surface itself is seen, pixels. */
    Optional<double[]> middle(int surface) {
        if (count[surface] == 0) {
            return Optional.empty();
        }
        double x = sumX[surface] / count[surface];
        double y = sumY[surface] / count[surface];
        double least = Double.POSITIVE_INFINITY;
        double[] place = new double[2];
        for (int j = 0; j < down; j++) {
            double dy = j + 0.5 - y;
            for (int i = 0; i < across && dy * dy < least; i++) {
                double dx = i + 0.5 - x;
                if (image.surface(i, j) == surface && dx * dx + dy * dy < least) {
                    least = dx * dx + dy * dy;
                    place[0] = (i + 0.5) / image.perPixel();
                    place[1] = (j + 0.5) / image.perPixel();
                }
            }
        }
        return Optional.of(place);
    }

    /** Whether a surface is seen within a pixel of a place. */
    boolean isSeenNear(double x, double y, int surface) {
        int n = image.perPixel();
        int i = (int) Math.floor(x * n);
        int j = (int) Math.floor(y * n);
        for (int row = Math.max(0, j - n); row <= Math.min(down - 1, j + n); row++) {
            for (int column = Math.max(0, i - n); column <= Math.min(across - 1, i + n); column++) {
                if (image.surface(column, row) == surface) {
                    return true;
                }
            }
        }
        return false;
    }

    /** Where a point appears, pixels from the top left. */
    boolean place(Sight sight, Vector3D point, double[] into) {
        if (!sight.place(point, into)) {
            return false;
        }
        double half = image.height() / 2.0;
        into[0] = image.width() / 2.0 + into[0] * half;
        into[1] = half - into[1] * half;
        return true;
    }
}
