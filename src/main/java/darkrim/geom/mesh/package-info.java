/** Facet meshes from files: shared points, mending, faces along creases and their names. Part of the leaf {@link darkrim.geom}. */
package darkrim.geom.mesh;
