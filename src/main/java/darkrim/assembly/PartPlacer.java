package darkrim.assembly;

import darkrim.diagnostic.Findings;
import darkrim.geom.Placement;
import darkrim.layout.Part;
import darkrim.layout.Shape;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** Builds parts and puts them, and their copies, in place. */
final class PartPlacer {
    /** More facets than this do not fit the memory of an ordinary computer together with their tree. */
    private static final int MOST_FACETS = 4_000_000;

    private final AssemblyMemory memory;
    private final Cooling cooling;
    private final Findings findings;
    private final List<Body> bodies = new ArrayList<>();
    private final List<Opening> openings = new ArrayList<>();
    private final List<Die> dies = new ArrayList<>();
    private final Map<String, List<String>> surfacesOf = new LinkedHashMap<>();
    private final Map<String, Double> chordErrors = new HashMap<>();
    private long facets;
    private boolean complete = true;
    /** Parts that are alike share their mesh. */
    private final Map<Shape.Mesh, MeshShape> shapes = new HashMap<>();

    private final Map<String, MeshShape> meshes = new HashMap<>();
    /** Finish by name of the surface, without the number of a copy. */
    private final Map<String, String> materials = new HashMap<>();

    PartPlacer(AssemblyMemory memory, Cooling cooling, Findings findings) {
        this.memory = memory;
        this.cooling = cooling;
        this.findings = findings;
    }

    /** Adds a part; one that cannot be built becomes a finding. */
    void place(Part part) {
        int first = bodies.size();
        try {
            Pieces pieces = pieces(part);
            Part.Repeat repeat = part.repeat().orElse(new Part.Repeat(1, 1, 0, 0));
            List<GridSteps.Step> steps = GridSteps.of(repeat.columns(), repeat.rows(), repeat.stepX(), repeat.stepY());
            long with = facets + (long) steps.size() * pieces.facets();
            if (with > MOST_FACETS) {
                throw new IllegalArgumentException(
                        "with it the layout has " + with + " facets, more than the " + MOST_FACETS + " that fit");
            }
            facets = with;
            steps.forEach(step -> placeCopy(part, pieces, step));
            chordErrors.put(part.name(), pieces.chordError());
        } catch (IllegalArgumentException | ArithmeticException problem) {
            complete = false;
            findings.error("part-not-buildable", part.place(), "part " + part.name() + ": " + problem.getMessage());
        }
        List<String> names = new ArrayList<>();
        for (Body body : bodies.subList(first, bodies.size())) {
            body.faces().forEach(face -> names.addAll(face.surfaces()));
        }
        surfacesOf.put(part.name(), names);
    }

    private Pieces pieces(Part part) {
        if (!(part.shape() instanceof Shape.Mesh shape)) {
            return memory.pieces(part);
        }
        MeshShape mesh = shapes.computeIfAbsent(shape, MeshShape::of);
        meshes.put(part.name(), mesh);
        MeshFindings.report(part, shape, mesh, findings);
        mesh.finishes(shape).forEach((face, finish) -> materials.put(part.name() + "/" + face, finish));
        return new Pieces(mesh.pieces(), List.of(), List.of(), mesh.chordError(shape));
    }

    private void placeCopy(Part part, Pieces pieces, GridSteps.Step step) {
        Vector3D offset = Vector3D.of(step.offset().getX(), step.offset().getY(), 0);
        Placement drawn = part.placement().thenMoved(offset);
        Placement placement = cooling.of(part.name(), offset).map(drawn::then).orElse(drawn);
        String name = part.name() + step.number();
        pieces.meshes().forEach(mesh -> bodies.add(mesh.placed(name, placement, part.place())));
        pieces.openings().forEach(opening -> openings.add(opening.placed(name, placement, part.place())));
        pieces.dies().forEach(die -> dies.add(die.placed(name, placement, part.place())));
    }

    /** Whether every part so far could be built. */
    boolean complete() {
        return complete;
    }

    List<Body> bodies() {
        return bodies;
    }

    Map<String, MeshShape> meshes() {
        return meshes;
    }

    List<Opening> openings() {
        return openings;
    }

    List<Die> dies() {
        return dies;
    }

    Map<String, Double> chordErrors() {
        return chordErrors;
    }

    /** The finish that the file of a mesh gives to a surface, if it does. */
    Optional<String> finishByMaterial(String surface) {
        String[] steps = surface.split("/", 2);
        String part = PartName.of(surface);
        return Optional.ofNullable(steps.length < 2 ? null : materials.get(part + "/" + steps[1]));
    }

    /** Names of the surfaces of a part and its copies. */
    List<String> surfacesOf(String part) {
        return surfacesOf.get(part);
    }
}
