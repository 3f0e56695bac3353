package darkrim.geom.mesh;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** Meshes with known areas and volumes, for tests. */
final class Meshes {
    private final List<Vector3D> points = new ArrayList<>();
    private final List<int[]> facets = new ArrayList<>();

    static Meshes box(double x0, double y0, double z0, double x1, double y1, double z1) {
        Meshes mesh = new Meshes();
        for (int i = 0; i < 8; i++) {
            mesh.points.add(Vector3D.of((i & 1) == 0 ? x0 : x1, (i & 2) == 0 ? y0 : y1, (i & 4) == 0 ? z0 : z1));
        }
        int[][] quads = {{0, 2, 3, 1}, {4, 5, 7, 6}, {0, 1, 5, 4}, {2, 6, 7, 3}, {0, 4, 6, 2}, {1, 3, 7, 5}};
        for (int[] q : quads) {
            mesh.facets.add(new int[] {q[0], q[1], q[2]});
            mesh.facets.add(new int[] {q[0], q[2], q[3]});
        }
        return mesh;
    }

    /** An upright prism over a regular polygon. */
    static Meshes prism(int sides, double radius, double z0, double z1) {
        Meshes mesh = new Meshes();
        for (int i = 0; i < sides; i++) {
            double t = 2 * Math.PI * i / sides;
            mesh.points.add(Vector3D.of(radius * StrictMath.cos(t), radius * StrictMath.sin(t), z0));
            mesh.points.add(Vector3D.of(radius * StrictMath.cos(t), radius * StrictMath.sin(t), z1));
        }
        mesh.points.add(Vector3D.of(0, 0, z0));
        mesh.points.add(Vector3D.of(0, 0, z1));
        for (int i = 0; i < sides; i++) {
            int a = 2 * i;
            int b = 2 * ((i + 1) % sides);
            mesh.facets.add(new int[] {a, b, b + 1});
            mesh.facets.add(new int[] {a, b + 1, a + 1});
            mesh.facets.add(new int[] {2 * sides, b, a});
            mesh.facets.add(new int[] {2 * sides + 1, a + 1, b + 1});
        }
        return mesh;
    }

    Meshes and(Meshes other) {
        int shift = points.size();
        points.addAll(other.points);
        other.facets.forEach(f -> facets.add(new int[] {f[0] + shift, f[1] + shift, f[2] + shift}));
        return this;
    }

    Meshes without(int facet) {
        facets.remove(facet);
        return this;
    }

    Meshes turned(int facet) {
        int[] f = facets.get(facet);
        facets.set(facet, new int[] {f[0], f[2], f[1]});
        return this;
    }

    Meshes insideOut() {
        for (int f = 0; f < facets.size(); f++) {
            turned(f);
        }
        return this;
    }

    Meshes twice(int facet) {
        facets.add(facets.get(facet).clone());
        return this;
    }

    /** Gives one facet corners of its own, moved by a step. */
    Meshes cracked(int facet, Vector3D step) {
        int[] f = facets.get(facet);
        for (int k = 0; k < 3; k++) {
            points.add(points.get(f[k]).add(step));
            f[k] = points.size() - 1;
        }
        return this;
    }

    /** Splits a side of a facet at its middle, leaving a facet without area along it for the neighbour. */
    Meshes seamed(int facet) {
        int[] f = facets.get(facet);
        points.add(points.get(f[0]).lerp(points.get(f[1]), 0.5));
        int middle = points.size() - 1;
        facets.set(facet, new int[] {f[0], middle, f[2]});
        facets.add(new int[] {middle, f[1], f[2]});
        facets.add(new int[] {f[0], f[1], middle});
        return this;
    }

    /** The same facets in another order, each beginning at another corner. */
    Meshes shuffled(long seed) {
        Random random = new Random(seed);
        Collections.shuffle(facets, random);
        facets.replaceAll(f -> {
            int k = random.nextInt(3);
            return new int[] {f[k], f[(k + 1) % 3], f[(k + 2) % 3]};
        });
        return this;
    }

    FacetMesh mesh() {
        double[] xyz =
                points.stream().flatMapToDouble(p -> Arrays.stream(p.toArray())).toArray();
        int[] corners = facets.stream().flatMapToInt(Arrays::stream).toArray();
        return FacetMesh.of(xyz, corners, new int[facets.size()], List.of(FacetMesh.Group.NAMELESS));
    }
}
