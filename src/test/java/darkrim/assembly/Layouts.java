package darkrim.assembly;

import darkrim.diagnostic.Findings;
import darkrim.diagnostic.Place;
import darkrim.geom.Placement;
import darkrim.geom.Ring;
import darkrim.layout.BeamSpec;
import darkrim.layout.BeamSpec.PupilSpec;
import darkrim.layout.DetectorsShape;
import darkrim.layout.DetectorsShape.Bonds;
import darkrim.layout.DetectorsShape.Side;
import darkrim.layout.DetectorsShape.Sides;
import darkrim.layout.DetectorsShape.Underfill;
import darkrim.layout.FinishRule;
import darkrim.layout.FinishSpec;
import darkrim.layout.Layout;
import darkrim.layout.MapSpec;
import darkrim.layout.Part;
import darkrim.layout.Requirement;
import darkrim.layout.SamplingSpec;
import darkrim.layout.Shape;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** Layouts built in code, for tests. */
final class Layouts {
    private Layouts() {}

    static final BeamSpec BEAM = new BeamSpec(
            new PupilSpec(Ring.disc(22.5), Vector3D.of(0, 0, 320), 0, 0),
            Optional.empty(),
            Optional.empty(),
            Place.IN_CODE);

    static Part part(String name, Shape shape) {
        return part(name, shape, Placement.NONE);
    }

    static Part part(String name, Shape shape, Placement placement) {
        return new Part(name, shape, placement, Optional.empty(), Optional.empty(), Place.IN_CODE);
    }

    static Layout layout(Part... parts) {
        return layout(List.of(parts), List.of(), List.of(), MapSpec.DEFAULT);
    }

    static Layout layout(List<Part> parts, List<FinishRule> rules, List<Requirement> requirements, MapSpec maps) {
        Map<String, FinishSpec> finishes = new LinkedHashMap<>();
        finishes.put("black", new FinishSpec("black", 0.04, 0, "", Place.IN_CODE));
        finishes.put("polished", new FinishSpec("polished", 0, 0.9, "", Place.IN_CODE));
        return new Layout(
                "test",
                "",
                Layout.Source.IN_CODE,
                Map.of(),
                finishes,
                rules,
                BEAM,
                List.of(),
                parts,
                requirements,
                Optional.of(0.1),
                SamplingSpec.DEFAULT,
                maps);
    }

    /** The assembly of a layout in which nothing is wrong. */
    static Assembly assemble(Layout layout) {
        Findings findings = new Findings();
        Assembly assembly = Assembly.of(layout, findings);
        if (!findings.sorted().isEmpty()) {
            throw new AssertionError("unexpected findings: " + findings.sorted());
        }
        return assembly;
    }

    /** The bodies of one part that stands where it is drawn. */
    static List<Body> bodies(Shape shape) {
        return assemble(layout(part("part", shape))).bodies();
    }

    /** The 2 x 2 mosaic of the agreed example: butted toward the middle, bonds on the outer x side. */
    static DetectorsShape mosaic() {
        return new DetectorsShape(
                2,
                2,
                40.2,
                40.2,
                2048,
                0.018,
                4,
                true,
                Sides.all(0.5),
                0.2,
                new Sides(0, 2.5, 0, 2.5),
                0.5,
                Optional.of(new Underfill(0.05, 0.1)),
                Sides.all(1),
                2,
                Optional.of(new Bonds(EnumSet.of(Side.PLUS_X), 0.3, 0.4, 0.35, 0.8)));
    }
}
