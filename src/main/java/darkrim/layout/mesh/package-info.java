/**
 * Reading of mesh files: STL, OBJ and STEP. Whatever a file holds, memory and time stay bounded and every error has its
 * place.
 *
 * <p>In: a path as the layout writes it. Out: a {@code MeshFile}: the facets, the groups of the file and
 * the SHA-256 of its bytes, or findings with a place in the file. Main types: {@code MeshFiles} reads each file
 * once, {@code BinaryStl}, {@code TextStl} and {@code ObjFile} are the formats, {@code Mesher} runs the program
 * that turns STEP into facets (docs/decisions/0031).
 *
 * <p>It must not know: units, faces and names: the layout says these, and geom.mesh finds faces. Begin to read:
 * {@code MeshFiles}.
 */
package darkrim.layout.mesh;
