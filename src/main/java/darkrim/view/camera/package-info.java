/** Where the viewer stands, and which line of sight belongs to which pixel: plain arithmetic, no window. */
package darkrim.view.camera;
