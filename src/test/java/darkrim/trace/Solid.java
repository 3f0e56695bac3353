package darkrim.trace;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.UnaryOperator;

/**
 * A closed convex solid for tests: corners, facets counter-clockwise as seen from outside, and a point inside. Facets share corners, so
 * that what is moved stays closed to the last bit.
 */
final class Solid {
    private final String name;
    private final double[][] corners;
    private final int[][] facets;
    private final double[] inside;

    private Solid(String name, double[][] corners, int[][] facets, double[] inside) {
        this.name = name;
        this.corners = corners;
        this.facets = facets;
        this.inside = inside;
    }

    int[][] facets() {
        return facets;
    }

    double[] inside() {
        return inside;
    }

    /** A box about the origin. */
    static Solid box(double x, double y, double z) {
        double[][] p = new double[8][];
        for (int i = 0; i < 8; i++) {
            p[i] = new double[] {(i & 1) == 0 ? -x : x, (i & 2) == 0 ? -y : y, (i & 4) == 0 ? -z : z};
        }
        int[][] quads = {{0, 2, 3, 1}, {4, 5, 7, 6}, {0, 1, 5, 4}, {2, 6, 7, 3}, {0, 4, 6, 2}, {1, 3, 7, 5}};
        List<int[]> facets = new ArrayList<>();
        for (int[] quad : quads) {
            facets.add(new int[] {quad[0], quad[1], quad[2]});
            facets.add(new int[] {quad[0], quad[2], quad[3]});
        }
        return new Solid("box", p, facets.toArray(int[][]::new), new double[3]);
    }

    /** A regular tetrahedron about the origin. */
    static Solid tetrahedron(double size) {
        double[][] p = {{size, size, size}, {size, -size, -size}, {-size, size, -size}, {-size, -size, size}};
        int[][] facets = {{0, 1, 2}, {0, 3, 1}, {0, 2, 3}, {1, 3, 2}};
        return new Solid("tetrahedron", p, facets, new double[3]);
    }

    /** A sphere of rings of facets with a fan at either pole. */
    static Solid sphere(double radius, int rings, int steps) {
        List<double[]> p = new ArrayList<>();
        for (int i = 1; i < rings; i++) {
            double polar = Math.PI * i / rings;
            for (int j = 0; j < steps; j++) {
                double round = 2 * Math.PI * j / steps;
                p.add(new double[] {
                    radius * Math.sin(polar) * Math.cos(round),
                    radius * Math.sin(polar) * Math.sin(round),
                    radius * Math.cos(polar)
                });
            }
        }
        int top = p.size();
        p.add(new double[] {0, 0, radius});
        int bottom = p.size();
        p.add(new double[] {0, 0, -radius});
        List<int[]> facets = new ArrayList<>();
        for (int j = 0; j < steps; j++) {
            int next = (j + 1) % steps;
            facets.add(new int[] {top, j, next});
            int last = (rings - 2) * steps;
            facets.add(new int[] {bottom, last + next, last + j});
            for (int i = 0; i + 2 < rings; i++) {
                int a = i * steps + j;
                int b = i * steps + next;
                facets.add(new int[] {a, a + steps, b + steps});
                facets.add(new int[] {a, b + steps, b});
            }
        }
        return new Solid("sphere", p.toArray(double[][]::new), facets.toArray(int[][]::new), new double[3]);
    }

    /**
     * A prism along z, 100 long, over a triangle with an angle of two degrees; its long faces are cut into slivers a ten-thousandth as
     * wide as they are long.
     */
    static Solid sliverPrism() {
        double[][] base = {{-20, 0}, {20, -0.7}, {20, 0.7}};
        int cuts = 40;
        List<double[]> p = new ArrayList<>();
        List<int[]> facets = new ArrayList<>();
        for (int side = 0; side < 3; side++) {
            double[] a = base[side];
            double[] b = base[(side + 1) % 3];
            for (int i = 0; i < cuts; i++) {
                double t = i < cuts - 1 ? 1e-3 * i / cuts : 0.5;
                double x = a[0] + t * (b[0] - a[0]);
                double y = a[1] + t * (b[1] - a[1]);
                p.add(new double[] {x, y, -50});
                p.add(new double[] {x, y, 50});
            }
        }
        int low = p.size();
        p.add(new double[] {10, 0, -50});
        p.add(new double[] {10, 0, 50});
        int all = 3 * cuts;
        for (int i = 0; i < all; i++) {
            int next = (i + 1) % all;
            facets.add(new int[] {2 * i, 2 * next, 2 * next + 1});
            facets.add(new int[] {2 * i, 2 * next + 1, 2 * i + 1});
            facets.add(new int[] {low, 2 * next, 2 * i});
            facets.add(new int[] {low + 1, 2 * i + 1, 2 * next + 1});
        }
        return new Solid(
                "sliver prism", p.toArray(double[][]::new), facets.toArray(int[][]::new), new double[] {10, 0, 0});
    }

    /** The four solids where they were made, and the same turned and moved 300 mm away. */
    static List<Solid> all() {
        List<Solid> here = List.of(box(3, 5, 0.5), tetrahedron(7), sphere(10, 12, 24), sliverPrism());
        List<Solid> all = new ArrayList<>(here);
        SplittableRandom random = new SplittableRandom(3);
        for (Solid solid : here) {
            double[][] turn = Turn.random(random);
            all.add(solid.moved("turned " + solid.name, p -> {
                double[] q = Turn.apply(turn, p);
                return new double[] {q[0] + 300, q[1] - 300, q[2] + 300};
            }));
        }
        return all;
    }

    Solid moved(String newName, UnaryOperator<double[]> move) {
        double[][] p = new double[corners.length][];
        for (int i = 0; i < p.length; i++) {
            p[i] = move.apply(corners[i]);
        }
        return new Solid(newName, p, facets, move.apply(inside));
    }

    /** Nine coordinates a facet. */
    double[] flat() {
        double[] flat = new double[9 * facets.length];
        for (int f = 0; f < facets.length; f++) {
            for (int k = 0; k < 3; k++) {
                System.arraycopy(corners[facets[f][k]], 0, flat, 9 * f + 3 * k, 3);
            }
        }
        return flat;
    }

    /** A tree in which every facet is a plane of its own, for rays that start within 1000 mm. */
    FacetTree tree() {
        int[] planes = new int[facets.length];
        for (int f = 0; f < planes.length; f++) {
            planes[f] = f;
        }
        return FacetTree.build(flat(), planes, 1000);
    }

    /** A point on an edge, rounded; every third a corner, every third a middle. */
    double[] onEdge(SplittableRandom random) {
        int[] facet = facets[random.nextInt(facets.length)];
        int k = random.nextInt(3);
        double[] a = corners[facet[k]];
        double[] b = corners[facet[(k + 1) % 3]];
        double t = switch (random.nextInt(3)) {
            case 0 -> 0;
            case 1 -> 0.5;
            default -> random.nextDouble();
        };
        return Turn.between(a, b, t);
    }

    /** A point inside, not near the surface. */
    double[] within(SplittableRandom random) {
        int[] facet = facets[random.nextInt(facets.length)];
        double s = random.nextDouble();
        double t = random.nextDouble();
        double[] on = Turn.between(Turn.between(corners[facet[0]], corners[facet[1]], s), corners[facet[2]], t);
        return Turn.between(inside, on, 0.9 * random.nextDouble());
    }

    /** How far a point lies outside the plane of a facet, mm; negative inside. */
    double height(int facet, double[] point) {
        double[] a = corners[facets[facet][0]];
        double[] n = normal(facet);
        return n[0] * (point[0] - a[0]) + n[1] * (point[1] - a[1]) + n[2] * (point[2] - a[2]);
    }

    /** Least height of a facet, mm. */
    double height(int facet) {
        double[] a = corners[facets[facet][0]];
        double[] b = corners[facets[facet][1]];
        double[] c = corners[facets[facet][2]];
        double[] n = Turn.cross(Turn.minus(b, a), Turn.minus(c, a));
        double longest = Math.max(
                Turn.length(Turn.minus(b, a)), Math.max(Turn.length(Turn.minus(c, b)), Turn.length(Turn.minus(a, c))));
        return Turn.length(n) / longest;
    }

    /** The unit normal of a facet, outward. */
    double[] normal(int facet) {
        double[] a = corners[facets[facet][0]];
        double[] b = corners[facets[facet][1]];
        double[] c = corners[facets[facet][2]];
        return Turn.unit(Turn.cross(Turn.minus(b, a), Turn.minus(c, a)));
    }

    @Override
    public String toString() {
        return name;
    }
}
