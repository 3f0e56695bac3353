/**
 * The parts of a layout, with or without the light on them, as files for other programs.
 *
 * <p>In: an assembly, or a scene with its maps. Out: text or bytes of a file. Main types: {@code ShapeFiles}
 * writes STL and OBJ of the shape alone, {@code GltfScene} and {@code VtuScene} the scene with its light, {@code
 * SurfaceCsv} the table that belongs to it. docs/recipes.md adds one more.
 *
 * <p>It must not know: files: who calls writes them, all or none. Begin to read: {@code ShapeFiles}.
 */
package darkrim.present.geometry;
