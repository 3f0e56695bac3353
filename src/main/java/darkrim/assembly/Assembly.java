package darkrim.assembly;

import darkrim.diagnostic.Findings;
import darkrim.layout.BeamSpec;
import darkrim.layout.FinishRule;
import darkrim.layout.Layout;
import darkrim.layout.Part;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The parts of a layout as placed, named bodies in the shape that the layout has, warm or cold, with the finish of every surface and the maps that were asked for. Immutable.
 *
 * <p>Curved outlines are polygons on the side of less material, so that no surface is darker than behind the true part;
 * {@link #largestChordError()} says by how much they differ.
 */
public final class Assembly {
    private final List<Body> bodies;
    private final List<Opening> openings;
    private final List<Die> dies;
    private final Map<String, Double> chordErrors;
    private final Map<String, String> finishOf;
    private final Map<String, Double> kelvinOf;
    private final Map<String, MapGrid> mapOf;
    private final Map<String, MeshShape> meshes;

    private Assembly(
            List<Body> bodies,
            List<Opening> openings,
            List<Die> dies,
            Map<String, Double> chordErrors,
            Map<String, String> finishOf,
            Map<String, Double> kelvinOf,
            Map<String, MapGrid> mapOf,
            Map<String, MeshShape> meshes) {
        this.bodies = List.copyOf(bodies);
        this.openings = List.copyOf(openings);
        this.dies = List.copyOf(dies);
        this.chordErrors = Map.copyOf(chordErrors);
        this.finishOf = Collections.unmodifiableMap(finishOf);
        this.kelvinOf = Collections.unmodifiableMap(kelvinOf);
        this.meshes = Map.copyOf(meshes);
        this.mapOf = Collections.unmodifiableMap(mapOf);
    }

    /**
     * Builds every part in the order of the layout, gives finishes and maps, and checks that rules and requirements mean something.
     *
     * @param layout the layout, with every part of its file
     * @param findings what is known to be wrong; receives what else is: with an error among them the assembly lacks what the error is about and must not be used
     */
    public static Assembly of(Layout layout, Findings findings) {
        return of(layout, new AssemblyMemory(), findings);
    }

    /**
     * The same, taking from the last layout what holds for this one.
     *
     * @param layout the layout
     * @param memory what is known of the last layout; of this one afterwards
     * @param findings receives what is wrong
     */
    public static Assembly of(Layout layout, AssemblyMemory memory, Findings findings) {
        PartPlacer placer = new PartPlacer(memory, Cooling.of(layout), findings);
        layout.parts().forEach(placer::place);
        List<Face> faces =
                placer.bodies().stream().flatMap(body -> body.faces().stream()).toList();
        Map<String, String> finishOf = new LinkedHashMap<>();
        for (Part part : layout.parts()) {
            placer.surfacesOf(part.name())
                    .forEach(name -> finishOf.put(
                            name, placer.finishByMaterial(name).or(part::finish).orElse(Part.NO_FINISH)));
        }
        SurfaceSelector selector = new SurfaceSelector(memory, finishOf.keySet(), placer.complete(), findings);
        Set<String> ruled = finishOf.keySet().stream()
                .filter(name -> placer.finishByMaterial(name).isPresent())
                .collect(Collectors.toCollection(HashSet::new));
        for (FinishRule rule : layout.finishRules()) {
            List<String> selected = selector.select("finish rule", rule.surfaces(), rule.place());
            selected.forEach(name -> finishOf.replace(name, rule.finish()));
            ruled.addAll(selected);
        }
        FinishCheck.check(layout, placer::surfacesOf, ruled, findings);
        Map<String, Double> kelvinOf = Temperatures.of(layout, placer::surfacesOf, selector);
        Map<String, MapGrid> mapOf = Maps.of(layout, faces, selector, findings);
        RequirementCheck.check(layout, selector, mapOf.keySet(), findings);
        if (!layout.beam().equals(BeamSpec.UNREAD)) {
            PupilPlane.check(layout.beam(), findings);
            AboveWindow.check(placer.bodies(), layout.beam(), findings);
            BeyondPupil.check(placer.bodies(), layout.beam(), findings);
            DetectorFacing.check(placer.bodies(), placer.dies(), layout.beam(), findings);
        }
        return new Assembly(
                placer.bodies(),
                placer.openings(),
                placer.dies(),
                placer.chordErrors(),
                finishOf,
                kelvinOf,
                mapOf,
                placer.meshes());
    }

    /** All bodies, in the order of the layout. */
    public List<Body> bodies() {
        return bodies;
    }

    /** All faces, body after body. */
    public Stream<Face> faces() {
        return bodies.stream().flatMap(body -> body.faces().stream());
    }

    /** Names of all surfaces, in the order of {@link #faces}; the back of a sheet follows its front. */
    public List<String> surfaces() {
        return List.copyOf(finishOf.keySet());
    }

    /**
     * Name of the finish of a surface.
     *
     * @throws IllegalArgumentException if there is no such surface
     */
    public String finishOf(String surface) {
        String finish = finishOf.get(surface);
        if (finish == null) {
            throw new IllegalArgumentException("no surface is named " + surface);
        }
        return finish;
    }

    /**
     * Temperature of a surface, K.
     *
     * @throws IllegalArgumentException if there is no such surface, or the layout says nothing of temperatures
     */
    public double kelvinOf(String surface) {
        Double kelvin = kelvinOf.get(surface);
        if (kelvin == null) {
            throw new IllegalArgumentException("no temperature is known of " + surface);
        }
        return kelvin;
    }

    /** The map of a surface, if one was asked for. */
    public Optional<MapGrid> mapOf(String surface) {
        return Optional.ofNullable(mapOf.get(surface));
    }

    /** The meshes among the parts, by name of the part. */
    public Map<String, MeshShape> meshes() {
        return meshes;
    }

    /** All openings of plates. */
    public List<Opening> openings() {
        return openings;
    }

    /** All detector dies. */
    public List<Die> detectors() {
        return dies;
    }

    /** Greatest distance between a curved outline and the polygon that stands for it, mm; 0 without curved outlines. */
    public double largestChordError() {
        return chordErrors.values().stream()
                .mapToDouble(Double::doubleValue)
                .max()
                .orElse(0);
    }

    /** The same of one part, by its name. */
    public double chordErrorOf(String part) {
        return chordErrors.getOrDefault(part, 0.0);
    }
}
