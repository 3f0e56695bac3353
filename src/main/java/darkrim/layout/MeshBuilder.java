package darkrim.layout;

import darkrim.diagnostic.Findings;
import darkrim.geom.mesh.FaceAnchor;
import darkrim.geom.mesh.FacetMesh;
import darkrim.layout.form.Fields;
import darkrim.layout.form.Unit;
import darkrim.layout.form.Value;
import darkrim.layout.form.Wording;
import darkrim.layout.mesh.MeshFile;
import darkrim.layout.mesh.MeshFiles;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * A part that comes from a mesh file.
 *
 * @param finishes knows the names of finishes
 * @param meshes the files of the layout
 * @param findings receives what is wrong
 */
record MeshBuilder(FinishBuilder finishes, MeshFiles meshes, Findings findings) {
    /** The shape; empty, with a finding, if the file cannot be used. */
    Optional<Shape> build(Fields fields) {
        List<FaceAnchor> names = names(fields);
        boolean stated = statesWhatTheFileNeeds(fields);
        Optional<MeshFile> file = file(fields);
        if (!stated || file.isEmpty()) {
            return Optional.empty();
        }
        boolean meshed = file.get().meshing().isPresent();
        double unit =
                meshed ? 1 : Unit.of(fields.text("unit")).orElseThrow().size().doubleValue();
        double reach = unit * file.get().mesh().reach();
        if (!(reach <= Kinds.FAR)) {
            findings.error(
                    "mesh-value",
                    fields.place(meshed ? "file" : "unit"),
                    "in this unit the mesh reaches to " + Wording.number(reach) + " mm, expected at most "
                            + Wording.number(Kinds.FAR) + " mm");
            return Optional.empty();
        }
        return Optional.of(new Shape.Mesh(
                file.get(),
                unit,
                fields.number("crease"),
                chord(fields, file.get()),
                names,
                fields.number("within"),
                finishOf(fields, file.get()),
                fields.has("least_gap") ? Optional.of(fields.number("least_gap")) : Optional.empty()));
    }

    /** Whether the keys that the file needs are there: what an STL or OBJ file does not say is stated, what a STEP file says is not. */
    private boolean statesWhatTheFileNeeds(Fields fields) {
        boolean meshed = MeshFiles.isMeshed(fields.text("file"));
        String needed = needed(meshed);
        if (!fields.has(needed)) {
            findings.error(
                    "missing-key",
                    fields.place("file"),
                    "the key '" + needed + "' is missing, expected "
                            + (meshed
                                    ? "how far facets may lie from the surfaces of a STEP file"
                                    : "what the coordinates of an STL or OBJ file are in"));
        }
        for (String other : meshed ? List.of("unit", "chord") : List.of("chord_tolerance")) {
            if (fields.has(other)) {
                findings.error(
                        "mesh-key",
                        fields.place(other),
                        meshed
                                ? "a STEP file has no key '" + other + "', expected 'chord_tolerance' alone"
                                : "'" + other
                                        + "' is for STEP files, expected 'chord' with the tolerance that this file was"
                                        + " made with");
            }
        }
        return fields.has(needed);
    }

    private static String needed(boolean meshed) {
        return meshed ? "chord_tolerance" : "unit";
    }

    /** The file, which is looked at whatever else is wrong, so that all is told at once. */
    private Optional<MeshFile> file(Fields fields) {
        String name = fields.text("file");
        boolean anywhere = fields.flag("outside_folder");
        if (!MeshFiles.isMeshed(name)) {
            return meshes.read(name, anywhere, fields.place("file"), findings);
        }
        if (!fields.has(needed(true))) {
            meshes.find(name, anywhere, fields.place("file"), findings);
            return Optional.empty();
        }
        return meshes.meshed(
                name,
                fields.number("chord_tolerance"),
                fields.number("chord_angle"),
                anywhere,
                fields.place("file"),
                findings);
    }

    private static Optional<Double> chord(Fields fields, MeshFile file) {
        return file.meshing()
                .map(meshing -> Optional.of(meshing.tolerance()))
                .orElseGet(() -> fields.has("chord") ? Optional.of(fields.number("chord")) : Optional.empty());
    }

    private List<FaceAnchor> names(Fields fields) {
        List<FaceAnchor> names = new ArrayList<>();
        if (fields.find("names").orElse(null) instanceof Value.Named named) {
            named.values().forEach((name, value) -> {
                Fields face = (Fields) value;
                Vector3D facing = vector(face.numbers("facing"));
                if (facing.norm() == 0) {
                    findings.error(
                            "axis",
                            face.place("facing"),
                            "[0, 0, 0] has no direction, expected the direction that the face has");
                } else {
                    names.add(new FaceAnchor(name, vector(face.numbers("at")), facing));
                }
            });
        }
        return names;
    }

    private Map<String, String> finishOf(Fields fields, MeshFile file) {
        Set<String> materials = new LinkedHashSet<>();
        for (FacetMesh.Group group : file.mesh().groups()) {
            if (!group.material().isEmpty()) {
                materials.add(group.material());
            }
        }
        Map<String, String> finishOf = new LinkedHashMap<>();
        for (String material : materials) {
            if (finishes.isKnown(material)) {
                finishes.use(material);
                finishOf.put(material, material);
            }
        }
        if (fields.find("materials").orElse(null) instanceof Value.Named named) {
            named.values().forEach((material, value) -> {
                finishes.checkUse(value);
                if (!materials.contains(material)) {
                    findings.error(
                            "unknown-material",
                            named.places().get(material),
                            "the mesh has no material '" + Wording.shortened(material) + "', "
                                    + Wording.suggestion(material, materials));
                } else if (finishes.isKnown(Fields.text(value))) {
                    finishOf.put(material, Fields.text(value));
                }
            });
        }
        List<String> without =
                materials.stream().filter(name -> !finishOf.containsKey(name)).toList();
        if (!finishOf.isEmpty() && !without.isEmpty()) {
            findings.warning(
                    "material-without-finish",
                    fields.place("file"),
                    "the material '" + without.get(0) + "' of the mesh"
                            + (without.size() > 1 ? " and " + (without.size() - 1) + " more have" : " has")
                            + " no finish, so the part's own holds there, expected an entry under materials");
        }
        return finishOf;
    }

    private static Vector3D vector(List<Double> three) {
        return Vector3D.of(three.get(0), three.get(1), three.get(2));
    }
}
