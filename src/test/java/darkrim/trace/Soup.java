package darkrim.trace;

import java.util.Arrays;
import java.util.SplittableRandom;

/** Facets without order, of the kinds that trip a tree or a facet test; nine coordinates each, all within {@link #BOUND}. */
enum Soup {
    /** Triangles of every size strewn over the whole space. */
    STREWN {
        @Override
        double[] facet(SplittableRandom random) {
            double size = Math.pow(10, 4 * random.nextDouble() - 2);
            return about(random, spot(random, 100), size);
        }
    },
    /** Dense clusters far apart. */
    CLUSTERS {
        @Override
        double[] facet(SplittableRandom random) {
            int cluster = random.nextInt(4);
            double[] centre = {cluster * 80 - 150.0, cluster % 2 * 200 - 100.0, cluster * cluster * 20 - 90.0};
            double[] spot = spot(random, 1);
            return about(random, new double[] {centre[0] + spot[0], centre[1] + spot[1], centre[2] + spot[2]}, 0.3);
        }
    },
    /** Needles, a millionth as wide as they are long. */
    SLIVERS {
        @Override
        double[] facet(SplittableRandom random) {
            double[] a = spot(random, 100);
            double[] b = spot(random, 100);
            double[] middle = Turn.between(a, b, random.nextDouble());
            double[] aside = Turn.direction(random);
            double width = 1e-4;
            return new double[] {
                a[0],
                a[1],
                a[2],
                b[0],
                b[1],
                b[2],
                middle[0] + width * aside[0],
                middle[1] + width * aside[1],
                middle[2] + width * aside[2]
            };
        }
    },
    /** Overlapping facets in a few planes, square to the axes, with corners on whole numbers. */
    COPLANAR {
        @Override
        double[] facet(SplittableRandom random) {
            int axis = random.nextInt(3);
            double height = 20 * random.nextInt(-2, 3);
            double[] p = new double[9];
            do {
                for (int k = 0; k < 9; k++) {
                    p[k] = k % 3 == axis ? height : random.nextInt(-50, 51);
                }
            } while (Turn.length(normal(p)) == 0);
            return p;
        }
    },
    /** A handful of huge facets and many small ones. */
    FAR_APART {
        @Override
        double[] facet(SplittableRandom random) {
            return random.nextInt(50) == 0
                    ? about(random, spot(random, 50), 120)
                    : about(random, spot(random, 180), 0.05);
        }
    };

    /** No coordinate is larger, mm. */
    static final double BOUND = 300;

    abstract double[] facet(SplittableRandom random);

    double[] facets(int count, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double[] all = new double[9 * count];
        for (int f = 0; f < count; f++) {
            System.arraycopy(facet(random), 0, all, 9 * f, 9);
        }
        return all;
    }

    /** One plane for all, which no ray skips. */
    static FacetTree tree(double[] corners) {
        return FacetTree.build(corners, new int[corners.length / 9], BOUND);
    }

    /** A point within a cube about the origin. */
    static double[] spot(SplittableRandom random, double half) {
        return new double[] {
            half * (2 * random.nextDouble() - 1),
            half * (2 * random.nextDouble() - 1),
            half * (2 * random.nextDouble() - 1)
        };
    }

    /** Start and direction of a ray: even, along axes with either zero, or aimed at corners and edges. */
    static double[] ray(double[] corners, SplittableRandom random) {
        double[] from = spot(random, 120);
        int facet = 9 * random.nextInt(corners.length / 9);
        double[] to = Arrays.copyOfRange(corners, facet, facet + 3);
        double[] b = Arrays.copyOfRange(corners, facet + 3, facet + 6);
        double[] c = Arrays.copyOfRange(corners, facet + 6, facet + 9);
        switch (random.nextInt(5)) {
            case 0 -> {
                double[] way = {0, -0.0, 0};
                way[random.nextInt(3)] = random.nextBoolean() ? 1 : -1;
                // From the middle of the numbers, so that rays also run along the borders of boxes.
                double[] whole = {Math.rint(from[0]), Math.rint(from[1]), Math.rint(from[2])};
                return join(whole, way);
            }
            case 1 -> to = Turn.between(to, b, random.nextDouble());
            case 2 -> from[random.nextInt(3)] = to[random.nextInt(3)];
            case 3 -> to = Turn.between(Turn.between(to, b, random.nextDouble()), c, random.nextDouble());
            default -> to = spot(random, 120);
        }
        return join(from, Turn.minus(to, from));
    }

    private static double[] join(double[] from, double[] way) {
        return new double[] {from[0], from[1], from[2], way[0], way[1], way[2]};
    }

    private static double[] about(SplittableRandom random, double[] centre, double size) {
        double[] p = new double[9];
        for (int k = 0; k < 9; k++) {
            p[k] = centre[k % 3] + size * (random.nextDouble() - 0.5);
        }
        return p;
    }

    static double[] normal(double[] p) {
        return Turn.cross(
                new double[] {p[3] - p[0], p[4] - p[1], p[5] - p[2]},
                new double[] {p[6] - p[0], p[7] - p[1], p[8] - p[2]});
    }
}
