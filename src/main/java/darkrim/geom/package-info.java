/** Frames, outlines and planar meshes. A leaf: it imports nothing else of Darkrim. */
package darkrim.geom;
