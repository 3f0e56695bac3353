/** Nearest hit and blocked-or-not through a bounding-volume tree. Hot code; knows only triangles. */
package darkrim.trace;
