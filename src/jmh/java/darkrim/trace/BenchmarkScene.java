package darkrim.trace;

import java.util.Arrays;
import java.util.Random;

/**
 * Facets for the benchmarks, the same on every machine: fixed seed, no files.
 *
 * <ul>
 *   <li>{@code BAFFLE}: 64 boxes on a grid under a plate of 64 openings, 2,304 facets: few and large, as a layout gives.
 *   <li>{@code CLOUD}: 100,000 small triangles strewn over a cube: no structure at all.
 *   <li>{@code BALL}: a sphere of 130,000 facets about the others' size: an imported mesh.
 * </ul>
 */
public enum BenchmarkScene {
    /** Boxes under a plate with openings. */
    BAFFLE,
    /** Strewn triangles. */
    CLOUD,
    /** A finely tessellated sphere. */
    BALL;

    /** No coordinate is larger, mm. */
    static final double BOUND = 128;

    /** Nine coordinates a facet, mm. */
    double[] corners() {
        Facets facets = new Facets();
        switch (this) {
            case BAFFLE -> baffle(facets);
            case CLOUD -> cloud(facets);
            case BALL -> ball(facets);
        }
        return facets.toArray();
    }

    private static void baffle(Facets facets) {
        for (int i = 0; i < 8; i++) {
            for (int j = 0; j < 8; j++) {
                double x = -80 + 20 * i;
                double y = -80 + 20 * j;
                box(facets, x, y, 0, x + 18, y + 18, 1);
                box(facets, x - 2, y - 2, 4, x, y + 18, 5);
                box(facets, x, y - 2, 4, x + 18, y, 5);
            }
        }
    }

    private static void cloud(Facets facets) {
        Random random = new Random(7);
        for (int f = 0; f < 100_000; f++) {
            double x = 200 * random.nextDouble() - 100;
            double y = 200 * random.nextDouble() - 100;
            double z = 200 * random.nextDouble() - 100;
            double[] p = new double[9];
            for (int k = 0; k < 9; k++) {
                p[k] = (k % 3 == 0 ? x : k % 3 == 1 ? y : z) + 4 * random.nextDouble() - 2;
            }
            facets.add(p);
        }
    }

    private static void ball(Facets facets) {
        int n = 256;
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                double[] a = onBall(i, j, n);
                double[] b = onBall(i + 1, j, n);
                double[] c = onBall(i + 1, j + 1, n);
                double[] d = onBall(i, j + 1, n);
                facets.add(a, b, c);
                facets.add(a, c, d);
            }
        }
    }

    private static double[] onBall(int i, int j, int n) {
        double polar = Math.PI * (i + 0.5) / (n + 1);
        double round = 2 * Math.PI * j / n;
        return new double[] {
            100 * Math.sin(polar) * Math.cos(round), 100 * Math.sin(polar) * Math.sin(round), 100 * Math.cos(polar)
        };
    }

    private static void box(Facets facets, double x0, double y0, double z0, double x1, double y1, double z1) {
        double[][] p = new double[8][];
        for (int k = 0; k < 8; k++) {
            p[k] = new double[] {(k & 1) == 0 ? x0 : x1, (k & 2) == 0 ? y0 : y1, (k & 4) == 0 ? z0 : z1};
        }
        int[][] faces = {{0, 2, 3, 1}, {4, 5, 7, 6}, {0, 1, 5, 4}, {2, 6, 7, 3}, {0, 4, 6, 2}, {1, 3, 7, 5}};
        for (int[] face : faces) {
            facets.add(p[face[0]], p[face[1]], p[face[2]]);
            facets.add(p[face[0]], p[face[2]], p[face[3]]);
        }
    }

    /** A growing array of facets. */
    private static final class Facets {
        private double[] values = new double[9 * 1024];
        private int size;

        void add(double[]... parts) {
            for (double[] part : parts) {
                if (size + part.length > values.length) {
                    values = Arrays.copyOf(values, 2 * values.length);
                }
                System.arraycopy(part, 0, values, size, part.length);
                size += part.length;
            }
        }

        double[] toArray() {
            return Arrays.copyOf(values, size);
        }
    }
}
