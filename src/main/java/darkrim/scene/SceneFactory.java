package darkrim.scene;

import darkrim.assembly.Assembly;
import darkrim.assembly.Body;
import darkrim.assembly.Face;
import darkrim.assembly.MapGrid;
import darkrim.assembly.PupilPlane;
import darkrim.assembly.Triangle;
import darkrim.geom.Frame;
import darkrim.layout.BeamSpec;
import darkrim.layout.BeamSpec.FieldSpec;
import darkrim.layout.FinishSpec;
import darkrim.layout.Layout;
import darkrim.layout.Part;
import java.util.HashMap;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** Makes the scene that light meets from a layout and its assembly. */
public final class SceneFactory {
    private SceneFactory() {}

    /**
     * The scene: surfaces in the order of the assembly, with their finishes and maps, and the beam.
     *
     * @param layout the layout
     * @param assembly its assembly, made without errors
     * @throws IllegalArgumentException if a finish reflects more than arrives, or the assembly belongs to another layout
     */
    public static Scene of(Layout layout, Assembly assembly) {
        SceneBuilder builder = new SceneBuilder();
        Map<String, Finish> finishes = new HashMap<>();
        for (Body body : assembly.bodies()) {
            for (Face face : body.faces()) {
                add(builder, assembly, body, face, name -> finishes.computeIfAbsent(name, any -> finish(layout, any)));
            }
        }
        return builder.build(beam(layout.beam()));
    }

    private static void add(
            SceneBuilder builder, Assembly assembly, Body body, Face face, Function<String, Finish> finishes) {
        Finish front = finishes.apply(assembly.finishOf(face.name()));
        if (face.back().isPresent()) {
            String back = face.back().get();
            builder.sheet(face.name(), front, back, finishes.apply(assembly.finishOf(back)), body.place());
        } else {
            builder.solid(face.name(), front, body.place());
        }
        for (Triangle facet : face.triangles()) {
            builder.triangle(face.name(), facet.a(), facet.b(), facet.c());
        }
        assembly.mapOf(face.name()).ifPresent(map -> builder.grid(face.name(), cells(map)));
    }

    private static CellGrid cells(MapGrid map) {
        return new CellGrid(map.origin(), map.alongColumns(), map.alongRows(), map.columns(), map.rows());
    }

    private static Finish finish(Layout layout, String name) {
        FinishSpec spec = layout.finishes().get(name);
        if (spec == null && name.equals(Part.NO_FINISH)) {
            return Finish.ABSORBER;
        }
        if (spec == null) {
            throw new IllegalArgumentException("no finish is named " + name);
        }
        return new Finish(name, spec.reflection());
    }

    /** The beam of a layout; the pupil's normal points toward the focal plane. */
    public static Beam beam(BeamSpec spec) {
        Pupil pupil = new Pupil(PupilPlane.outline(spec.pupil()), PupilPlane.frame(spec.pupil()));
        return new Beam(
                pupil,
                spec.field().map(SceneFactory::fieldLimit),
                spec.radiance().map(OptionalDouble::of).orElse(OptionalDouble.empty()),
                spec.window().map(SceneFactory::window));
    }

    private static Window window(BeamSpec.WindowSpec spec) {
        return new Window(
                spec.name(),
                spec.bottom(),
                spec.thickness(),
                spec.index(),
                spec.lower().map(OptionalDouble::of).orElse(OptionalDouble.empty()),
                spec.upper().map(OptionalDouble::of).orElse(OptionalDouble.empty()),
                spec.internal());
    }

    private static FieldLimit fieldLimit(FieldSpec field) {
        Frame frame = new Frame(field.centre(), Vector3D.Unit.PLUS_X, Vector3D.Unit.PLUS_Y, Vector3D.Unit.PLUS_Z);
        return new FieldLimit(field.outline(), frame);
    }
}
