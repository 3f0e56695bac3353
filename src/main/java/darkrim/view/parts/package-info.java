/**
 * The parts as they are shown and picked: edges, sections, the tree of names. No window.
 *
 * <p>In: an assembly, its scene and maps. Out: triangles, edges and cut faces that can be drawn, the tree of
 * names, what a line of sight meets. Main types: {@code Stage} is a layout ready to be drawn and picked, {@code
 * Picker} asks the ray core, {@code SectionCut} cuts, {@code FeatureEdges} finds edges, {@code PartNode} is the
 * tree.
 *
 * <p>It must not know: JavaFX; what has been chosen to be seen. Begin to read: {@code Stage}.
 */
package darkrim.view.parts;
