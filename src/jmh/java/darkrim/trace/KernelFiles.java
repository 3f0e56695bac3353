package darkrim.trace;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.SplittableRandom;

/**
 * Writes the files that {@code bench-trace} and src/jmh/native/trace.cpp read, the same at every run: fixed seeds. Run by {@code java KernelFiles.java DIR}.
 *
 * <ul>
 *   <li>{@code small}: 16 boxes with bars between two plates, 600 facets, as a layout gives.
 *   <li>{@code middle}: a wavy ring of 21,000 facets.
 *   <li>{@code large}: the same ring of 1,000,000 facets.
 * </ul>
 *
 * <p>Incoherent rays run between points strewn evenly about the scene, coherent ones from one point toward a grid of points, row by row. None of them
 * ends: the greatest distance is infinite.
 */
public final class KernelFiles {
    /** Coherent rays in a row, and rows. */
    private static final int ROW = 512;

    private static double[] corners = new double[1 << 16];
    private static int size;

    private KernelFiles() {}

    /** Writes three scenes and their rays into a folder. */
    public static void main(String[] arguments) throws IOException {
        Path folder = Path.of(arguments[0]);
        size = 0;
        for (int i = 0; i < 4; i++) {
            for (int j = 0; j < 4; j++) {
                double x = -40 + 20 * i;
                double y = -40 + 20 * j;
                box(x, y, 0, x + 18, y + 18, 1);
                box(x - 2, y - 2, 4, x, y + 18, 5);
                box(x, y - 2, 4, x + 18, y, 5);
            }
        }
        box(-60, -60, -2, 60, 60, -1);
        box(-60, -60, 30, 60, 60, 31);
        save(folder, "small", new double[] {45, 45, 20}, 10, 20);
        ring(150, 70);
        save(folder, "middle", new double[] {100, 100, 40}, 0, 150);
        ring(1000, 500);
        save(folder, "large", new double[] {100, 100, 40}, 0, 150);
    }

    private static void ring(int around, int across) {
        size = 0;
        for (int i = 0; i < around; i++) {
            for (int j = 0; j < across; j++) {
                double[] a = onRing((double) i / around, (double) j / across);
                double[] b = onRing((i + 1.0) / around, (double) j / across);
                double[] c = onRing((i + 1.0) / around, (j + 1.0) / across);
                double[] d = onRing((double) i / around, (j + 1.0) / across);
                add(a, b, c, a, c, d);
            }
        }
    }

    private static double[] onRing(double around, double across) {
        double u = 2 * Math.PI * around;
        double w = 2 * Math.PI * across;
        double radius = 30 * (1 + 0.2 * StrictMath.sin(9 * u) * StrictMath.sin(7 * w));
        double out = 60 + radius * StrictMath.cos(w);
        return new double[] {out * StrictMath.cos(u), out * StrictMath.sin(u), radius * StrictMath.sin(w)};
    }

    private static void box(double x0, double y0, double z0, double x1, double y1, double z1) {
        double[][] p = new double[8][];
        for (int k = 0; k < 8; k++) {
            p[k] = new double[] {(k & 1) == 0 ? x0 : x1, (k & 2) == 0 ? y0 : y1, (k & 4) == 0 ? z0 : z1};
        }
        int[][] faces = {{0, 2, 3, 1}, {4, 5, 7, 6}, {0, 1, 5, 4}, {2, 6, 7, 3}, {0, 4, 6, 2}, {1, 3, 7, 5}};
        for (int[] face : faces) {
            add(p[face[0]], p[face[1]], p[face[2]], p[face[0]], p[face[2]], p[face[3]]);
        }
    }

    private static void add(double[]... points) {
        for (double[] point : points) {
            if (size + 3 > corners.length) {
                corners = Arrays.copyOf(corners, 2 * corners.length);
            }
            System.arraycopy(point, 0, corners, size, 3);
            size += 3;
        }
    }

    private static void save(Path folder, String scene, double[] half, double middle, double eye) throws IOException {
        write(folder.resolve(scene + ".facets"), corners, size);
        double[] rays = new double[8 * ROW * ROW];
        SplittableRandom random = new SplittableRandom(5);
        for (int i = 0; i < ROW * ROW; i++) {
            way(rays, i, strewn(random, half, middle), strewn(random, half, middle));
        }
        write(folder.resolve(scene + "-incoherent.rays"), rays, rays.length);
        for (int i = 0; i < ROW * ROW; i++) {
            double x = half[0] * (2 * (i % ROW + 0.5) / ROW - 1);
            double y = half[1] * (2 * (i / ROW + 0.5) / ROW - 1);
            way(rays, i, new double[] {5, 7, eye}, new double[] {x, y, 0});
        }
        write(folder.resolve(scene + "-coherent.rays"), rays, rays.length);
    }

    private static double[] strewn(SplittableRandom random, double[] half, double middle) {
        double[] point = new double[3];
        for (int k = 0; k < 3; k++) {
            point[k] = half[k] * (2 * random.nextDouble() - 1) + (k == 2 ? middle : 0);
        }
        return point;
    }

    private static void way(double[] rays, int i, double[] from, double[] to) {
        for (int k = 0; k < 3; k++) {
            rays[8 * i + k] = from[k];
            rays[8 * i + 3 + k] = to[k] - from[k];
        }
        rays[8 * i + 7] = Double.POSITIVE_INFINITY;
    }

    private static void write(Path file, double[] values, int count) throws IOException {
        ByteBuffer bytes = ByteBuffer.allocate(8 * count).order(ByteOrder.LITTLE_ENDIAN);
        bytes.asDoubleBuffer().put(values, 0, count);
        Files.write(file, bytes.array());
    }
}
