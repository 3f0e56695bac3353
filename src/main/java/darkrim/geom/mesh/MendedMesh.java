package darkrim.geom.mesh;

import java.util.List;

/** A mesh after what can be mended safely was mended; every facet has area. Immutable. */
public final class MendedMesh {
    private final FacetMesh mesh;
    private final int[] shellOf;
    private final boolean[] closed;
    private final List<MeshFlaw> flaws;

    /** Takes the arrays over. */
    MendedMesh(FacetMesh mesh, int[] shellOf, boolean[] closed, List<MeshFlaw> flaws) {
        this.mesh = mesh;
        this.shellOf = shellOf;
        this.closed = closed;
        this.flaws = List.copyOf(flaws);
    }

    /** The mesh. */
    public FacetMesh mesh() {
        return mesh;
    }

    /** The shell of a facet: facets that hang together by edges. */
    public int shellOf(int facet) {
        return shellOf[facet];
    }

    /** Number of shells. */
    public int shellCount() {
        return closed.length;
    }

    /** Whether a shell has no open edge, so that it encloses material. */
    public boolean isClosed(int shell) {
        return closed[shell];
    }

    /** Number of shells with an open edge. */
    public int openShells() {
        int open = 0;
        for (boolean each : closed) {
            open += each ? 0 : 1;
        }
        return open;
    }

    /** What was mended and what is still wrong, each kind once. */
    public List<MeshFlaw> flaws() {
        return flaws;
    }
}
