/** The parts of a layout, with or without the light on them, as files for other programs. */
package darkrim.present.geometry;
