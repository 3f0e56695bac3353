package darkrim.geom.mesh;

import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * What is wrong, or was mended, in a mesh; all places of one kind together.
 *
 * @param kind what it is
 * @param count in how many places
 * @param at the worst of them, mm
 * @param size its size there, mm: a length or a width, whichever the kind tells
 */
public record MeshFlaw(Kind kind, int count, Vector3D at, double size) {
    /** Kinds of flaws. */
    public enum Kind {
        /** Mended: points on open edges that were nearer than the tolerance became one; the size is the largest step. */
        POINTS_MERGED(true),
        /** Mended: facets without area were taken out; the size is the longest side of one. */
        WITHOUT_AREA(true),
        /** Mended: the same facet twice; the size is its longest side. */
        DUPLICATE(true),
        /** Mended: facets that faced the other way than their neighbours; the size is the longest side of one. */
        FLIPPED(true),
        /** Mended: closed shells that faced inward; the size is the longest side of a facet of one. */
        INSIDE_OUT(true),
        /** Edges with a facet on one side only, where light passes; the size is the length of the longest. */
        OPEN_EDGE(false),
        /** Edges with more than two facets; the size is the length of the longest. */
        NON_MANIFOLD(false),
        /** Two facets back to back, without anything between; the size is the longest side of one. */
        BACK_TO_BACK(false),
        /** Facets whose neighbours cannot all face the same way; the size is the longest side of one. */
        NOT_ORIENTABLE(false),
        /** Facets narrower than a ten-thousandth of their length; the size is the width of the narrowest. */
        SLIVER(false);

        private final boolean mended;

        Kind(boolean mended) {
            this.mended = mended;
        }

        /** Whether the mesh is free of it now. */
        public boolean mended() {
            return mended;
        }
    }
}
