package darkrim.layout;

import darkrim.layout.form.Key;
import darkrim.layout.form.Kind;
import darkrim.layout.form.Letters;
import darkrim.layout.form.Measure;
import darkrim.layout.form.Unit;
import java.util.List;

/** The keys of a part that comes from a mesh file, each declared once. */
final class MeshKeys {
    private static final Kind FACE = Kind.Structure.of(
            "mesh_face",
            Key.required("at", Kinds.POINT, "A place on the face, in the frame of the mesh; mm unless stated."),
            Key.required(
                    "facing",
                    new Kind.ListOf(Kinds.COMPONENT, 3, 3),
                    "The direction [x, y, z] that the face has there, out of the material."));

    static final List<Key> ALL = List.of(
            Key.required(
                    "file", Kinds.FILE, "The file, STL (text or binary), OBJ or STEP, from the folder of the layout."),
            Key.optional(
                    "unit",
                    new Kind.Choice(Unit.symbols(Measure.LENGTH)),
                    "What the coordinates of an STL or OBJ file are in, which must be given; a STEP file says so itself."),
            Key.withDefault(
                    "crease",
                    Kinds.CREASE,
                    "20",
                    "Facets that meet at more than this angle belong to different faces; degrees unless stated."),
            Key.optional(
                    "chord",
                    Kinds.GAP,
                    "Chord tolerance that an STL or OBJ file was made with: how far facets may lie from the curved surface; mm unless stated."),
            Key.optional(
                    "chord_tolerance",
                    Kinds.SIZE,
                    "How far the facets that a STEP file is turned into may lie from its curved surfaces, which must be given; mm unless stated."),
            Key.withDefault(
                    "chord_angle",
                    Kinds.CREASE,
                    "10",
                    "Greatest angle between neighbouring facets of a curved face of a STEP file; degrees unless stated."),
            Key.optional(
                    "names",
                    new Kind.Named(Letters.NAME, FACE, 0, 1000),
                    "Names for faces, each by a place on it; the command faces writes them."),
            Key.withDefault(
                    "within",
                    Kinds.SIZE,
                    "0.5",
                    "How far a face may lie from the place of its name; mm unless stated."),
            Key.optional(
                    "materials",
                    new Kind.Named(Letters.NAME, Kinds.NAME, 0, 1000),
                    "Finish of each material of an OBJ file; a material called like a finish has it anyway."),
            Key.optional(
                    "least_gap",
                    Kinds.SIZE,
                    "Gaps to other parts that are narrower are named in a warning, for light may leak there; mm unless stated."),
            Key.withDefault(
                    "outside_folder",
                    Kinds.FLAG,
                    "false",
                    "Whether the file may lie outside the folder of the layout."));

    private MeshKeys() {}
}
