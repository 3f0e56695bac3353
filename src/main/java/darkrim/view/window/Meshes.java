package darkrim.view.window;

import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.view.parts.Pieces;
import java.util.function.IntUnaryOperator;
import javafx.scene.shape.CullFace;
import javafx.scene.shape.DrawMode;
import javafx.scene.shape.MeshView;
import javafx.scene.shape.TriangleMesh;

/** Makes meshes for the screen from arrays of coordinates. */
final class Meshes {
    /** A lamp above, in front and to the right, which stands still: where it falls full on, a face is brightest. */
    private static final double[] LAMP = {0.36, -0.48, 0.8};

    private Meshes() {}

    /** All facets of a surface, seen from its side. */
    static TriangleMesh whole(Scene scene, Surface surface) {
        double[] corners = new double[9 * surface.facetCount()];
        for (int i = 0; i < surface.facetCount(); i++) {
            for (int k = 0; k < 9; k++) {
                corners[9 * i + k] = scene.corner(surface.firstFacet() + i, k / 3, k % 3);
            }
        }
        return mesh(
                corners, surface.back(), Palette.SHADES, i -> shade(scene, surface.firstFacet() + i, surface.back()));
    }

    /** Pieces of the facets of a surface. */
    static TriangleMesh pieces(Scene scene, Surface surface, Pieces pieces) {
        return mesh(pieces.corners(), surface.back(), Palette.SHADES, i -> shade(scene, pieces.tag(i), surface.back()));
    }

    /**
     * Triangles.
     *
     * @param corners nine coordinates each, mm
     * @param turned whether they are seen from their back
     * @param colours how many colours the material has
     * @param colourOf the colour of each triangle, by number
     */
    static TriangleMesh mesh(double[] corners, boolean turned, int colours, IntUnaryOperator colourOf) {
        TriangleMesh mesh = new TriangleMesh();
        mesh.getPoints().setAll(floats(corners));
        mesh.getTexCoords().setAll(places(colours));
        int[] faces = new int[6 * (corners.length / 9)];
        for (int i = 0; i < corners.length / 9; i++) {
            int colour = colourOf.applyAsInt(i);
            for (int k = 0; k < 3; k++) {
                faces[6 * i + 2 * k] = 3 * i + (turned ? 2 - k : k);
                faces[6 * i + 2 * k + 1] = colour;
            }
        }
        mesh.getFaces().setAll(faces);
        return mesh;
    }

    /** Lines: six coordinates each, mm. Each is a triangle without area, drawn by its sides. */
    static TriangleMesh lines(double[] ends) {
        TriangleMesh mesh = new TriangleMesh();
        mesh.getPoints().setAll(floats(ends));
        mesh.getTexCoords().setAll(places(1));
        int[] faces = new int[ends.length];
        for (int i = 0; i < ends.length / 6; i++) {
            faces[6 * i] = 2 * i;
            faces[6 * i + 2] = 2 * i + 1;
            faces[6 * i + 4] = 2 * i + 1;
        }
        mesh.getFaces().setAll(faces);
        return mesh;
    }

    /** A view of faces; the mouse passes through, since picking asks the tree over the facets. */
    static MeshView faces(TriangleMesh mesh) {
        MeshView view = new MeshView(mesh);
        view.setCullFace(CullFace.BACK);
        view.setMouseTransparent(true);
        return view;
    }

    /** A view of lines. */
    static MeshView lineView(TriangleMesh mesh) {
        MeshView view = new MeshView(mesh);
        view.setDrawMode(DrawMode.LINE);
        view.setCullFace(CullFace.NONE);
        view.setMouseTransparent(true);
        return view;
    }

    private static float[] floats(double[] values) {
        float[] floats = new float[values.length];
        for (int i = 0; i < values.length; i++) {
            floats[i] = (float) values[i];
        }
        return floats;
    }

    private static float[] places(int colours) {
        float[] places = new float[2 * colours];
        for (int i = 0; i < colours; i++) {
            places[2 * i] = (i + 0.5f) / colours;
            places[2 * i + 1] = 0.5f;
        }
        return places;
    }

    private static int shade(Scene scene, int facet, boolean back) {
        double facing = 0;
        for (int axis = 0; axis < 3; axis++) {
            facing += LAMP[axis] * scene.normal(facet, axis);
        }
        double share = (1 + (back ? -facing : facing)) / 2;
        return Math.max(0, Math.min(Palette.SHADES - 1, (int) (share * Palette.SHADES)));
    }
}
