package darkrim.assembly;

import darkrim.geom.mesh.MeshFlaw;
import darkrim.layout.form.Wording;

/** Says what is wrong with a mesh, where and how large. */
public final class MeshFlawWords {
    private MeshFlawWords() {}

    /** A flaw in words, with its worst place in the frame of the mesh. */
    public static String of(MeshFlaw flaw) {
        String size = Wording.number(flaw.size()) + " mm";
        String at = " at " + MeshFindings.place(flaw.at());
        int n = flaw.count();
        return switch (flaw.kind()) {
            case POINTS_MERGED -> count(n, "point") + " on open edges joined to a neighbour, by up to " + size + at;
            case WITHOUT_AREA -> count(n, "facet") + " without area taken out, the longest of " + size + at;
            case DUPLICATE -> count(n, "facet") + " that stood there twice taken out, the longest of " + size + at;
            case FLIPPED ->
                count(n, "facet") + " turned to face as " + (n == 1 ? "its" : "their") + " neighbours, the longest of "
                        + size + at;
            case INSIDE_OUT -> count(n, "closed shell") + " that faced inward turned" + at;
            case OPEN_EDGE -> count(n, "open edge") + ", the longest of " + size + at;
            case NON_MANIFOLD -> count(n, "edge") + " with more than two facets, the longest of " + size + at;
            case BACK_TO_BACK ->
                count(n, "pair") + " of facets back to back with nothing between, the longest of " + size + at;
            case NOT_ORIENTABLE ->
                count(n, "facet") + " whose neighbours face opposite ways, the longest of " + size + at;
            case SLIVER -> count(n, "sliver") + ", the narrowest " + size + " wide" + at;
        };
    }

    private static String count(int count, String what) {
        return count + " " + what + (count == 1 ? "" : "s");
    }
}
