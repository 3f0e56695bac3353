/** The parts as they are shown and picked: edges, sections, the tree of names. No window. */
package darkrim.view.parts;
