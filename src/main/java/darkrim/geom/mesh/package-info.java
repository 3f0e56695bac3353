/**
 * Facet meshes from files: shared points, mending, faces along creases and their names. Part of the leaf {@link
 * darkrim.geom}.
 *
 * <p>In: a {@code FacetMesh}: triangles that share points. Out: the mesh mended, split into faces, each with a
 * name. Main types: {@code Mending} mends what needs no guess and counts the rest as {@code MeshFlaw}s, {@code
 * CreaseFaces} splits along creases, {@code NamedFaces} names, {@code AnchoredFaces} finds a face again after the
 * part was changed, {@code FacetDeviation} compares a mesh with a finer one.
 *
 * <p>It must not know: files, parts and light. docs/decisions/0018 has the reasons. Begin to read: {@code
 * Mending}.
 */
package darkrim.geom.mesh;
