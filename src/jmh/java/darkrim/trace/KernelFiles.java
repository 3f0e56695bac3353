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
 *   <li>{@code slivers}: 60 round struts across each other at all angles and two round walls cut like a cake, 7,200 long thin facets.
 * </ul>
 *
 * <p>Incoherent rays run between points strewn evenly about the scene, coherent ones from one point toward a grid of points, row by row. None of them
 * ends: the greatest distance is infinite.
 */
public final class KernelFiles {
    /** Coherent rays in a row, and rows. */
    private static final int ROW = 512;

    private double[] corners = new double[1 << 16];
    private int size;

    private KernelFiles() {}

    /** Writes four scenes and their rays into a folder. */
    public static void main(String[] arguments) throws IOException {
        Path folder = Path.of(arguments[0]);
        double[] wide = {100, 100, 40};
        save(
                folder,
                "small",
                boxes(),
                rays(false, new double[] {45, 45, 20}, 10),
                rays(true, new double[] {45, 45, 20}, 20));
        save(folder, "middle", ring(150, 70), rays(false, wide, 0), rays(true, wide, 150));
        save(folder, "large", ring(1000, 500), rays(false, wide, 0), rays(true, wide, 150));
        save(folder, "slivers", slivers(), rays(false, wide, 0), rays(true, wide, 150));
    }

    private static double[] boxes() {
        KernelFiles made = new KernelFiles();
        for (int i = 0; i < 4; i++) {
            for (int j = 0; j < 4; j++) {
                double x = -40 + 20 * i;
                double y = -40 + 20 * j;
                made.box(x, y, 0, x + 18, y + 18, 1);
                made.box(x - 2, y - 2, 4, x, y + 18, 5);
                made.box(x, y - 2, 4, x + 18, y, 5);
            }
        }
        made.box(-60, -60, -2, 60, 60, -1);
        made.box(-60, -60, 30, 60, 60, 31);
        return made.facets();
    }

    /**
     * The wavy ring.
     *
     * @return nine coordinates for each of 2 {@code around} {@code across} facets, none larger than 100 mm in size
     */
    public static double[] ring(int around, int across) {
        KernelFiles made = new KernelFiles();
        for (int i = 0; i < around; i++) {
            for (int j = 0; j < across; j++) {
                double[] a = onRing((double) i / around, (double) j / across);
                double[] b = onRing((i + 1.0) / around, (double) j / across);
                double[] c = onRing((i + 1.0) / around, (j + 1.0) / across);
                double[] d = onRing((double) i / around, (j + 1.0) / across);
                made.add(a, b, c, a, c, d);
            }
        }
        return made.facets();
    }

    /** Struts and walls as meshes from design programs have them: facets as long as the part, and a fraction of a millimetre wide. */
    private static double[] slivers() {
        KernelFiles made = new KernelFiles();
        SplittableRandom random = new SplittableRandom(9);
        int sides = 54;
        for (int strut = 0; strut < 60; strut++) {
            double[] from = strewn(random, new double[] {95, 95, 38}, 0);
            double[] to = strewn(random, new double[] {95, 95, 38}, 0);
            for (int side = 0; side < sides; side++) {
                double[] a = aside(from, from, to, (double) side / sides);
                double[] b = aside(from, from, to, (side + 1.0) / sides);
                double[] c = aside(to, from, to, (side + 1.0) / sides);
                double[] d = aside(to, from, to, (double) side / sides);
                made.add(a, b, c, a, c, d);
            }
        }
        int cuts = 360;
        for (double height : new double[] {-39, 39}) {
            for (int cut = 0; cut < cuts; cut++) {
                double u = 2 * Math.PI * cut / cuts;
                double w = 2 * Math.PI * (cut + 1) / cuts;
                made.add(
                        new double[] {-30, 0, height},
                        new double[] {99 * StrictMath.cos(u), 99 * StrictMath.sin(u), height},
                        new double[] {99 * StrictMath.cos(w), 99 * StrictMath.sin(w), height});
            }
        }
        return made.facets();
    }

    /** A point 1.5 mm beside the end of a strut, a part of a turn about it. */
    private static double[] aside(double[] end, double[] from, double[] to, double turn) {
        double[] way = {to[0] - from[0], to[1] - from[1], to[2] - from[2]};
        double flat = Math.hypot(way[0], way[1]);
        double length = Math.hypot(flat, way[2]);
        double right = 1.5 * StrictMath.cos(2 * Math.PI * turn);
        double up = 1.5 * StrictMath.sin(2 * Math.PI * turn);
        return new double[] {
            end[0] - right * way[1] / flat - up * way[0] * way[2] / (flat * length),
            end[1] + right * way[0] / flat - up * way[1] * way[2] / (flat * length),
            end[2] + up * flat / length
        };
    }

    private static double[] onRing(double around, double across) {
        double u = 2 * Math.PI * around;
        double w = 2 * Math.PI * across;
        double radius = 30 * (1 + 0.2 * StrictMath.sin(9 * u) * StrictMath.sin(7 * w));
        double out = 60 + radius * StrictMath.cos(w);
        return new double[] {out * StrictMath.cos(u), out * StrictMath.sin(u), radius * StrictMath.sin(w)};
    }

    private void box(double x0, double y0, double z0, double x1, double y1, double z1) {
        double[][] p = new double[8][];
        for (int k = 0; k < 8; k++) {
            p[k] = new double[] {(k & 1) == 0 ? x0 : x1, (k & 2) == 0 ? y0 : y1, (k & 4) == 0 ? z0 : z1};
        }
        int[][] faces = {{0, 2, 3, 1}, {4, 5, 7, 6}, {0, 1, 5, 4}, {2, 6, 7, 3}, {0, 4, 6, 2}, {1, 3, 7, 5}};
        for (int[] face : faces) {
            add(p[face[0]], p[face[1]], p[face[2]], p[face[0]], p[face[2]], p[face[3]]);
        }
    }

    private void add(double[]... points) {
        for (double[] point : points) {
            if (size + 3 > corners.length) {
                corners = Arrays.copyOf(corners, 2 * corners.length);
            }
            System.arraycopy(point, 0, corners, size, 3);
            size += 3;
        }
    }

    private double[] facets() {
        return Arrays.copyOf(corners, size);
    }

    /**
     * A quarter of a million rays.
     *
     * @param coherent from one point toward a grid of points, row by row; otherwise between strewn points
     * @param half half extents of where they run, mm
     * @param middle height of its middle; of the point, if coherent
     * @return eight numbers a ray: start, direction, where it begins and ends to count
     */
    public static double[] rays(boolean coherent, double[] half, double middle) {
        double[] rays = new double[8 * ROW * ROW];
        SplittableRandom random = new SplittableRandom(5);
        for (int i = 0; i < ROW * ROW; i++) {
            if (coherent) {
                double x = half[0] * (2 * (i % ROW + 0.5) / ROW - 1);
                double y = half[1] * (2 * (i / ROW + 0.5) / ROW - 1);
                way(rays, i, new double[] {5, 7, middle}, new double[] {x, y, 0});
            } else {
                way(rays, i, strewn(random, half, middle), strewn(random, half, middle));
            }
        }
        return rays;
    }

    private static void save(Path folder, String scene, double[] facets, double[] incoherent, double[] coherent)
            throws IOException {
        write(folder.resolve(scene + ".facets"), facets);
        write(folder.resolve(scene + "-incoherent.rays"), incoherent);
        write(folder.resolve(scene + "-coherent.rays"), coherent);
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

    private static void write(Path file, double[] values) throws IOException {
        ByteBuffer bytes = ByteBuffer.allocate(8 * values.length).order(ByteOrder.LITTLE_ENDIAN);
        bytes.asDoubleBuffer().put(values);
        Files.write(file, bytes.array());
    }
}
