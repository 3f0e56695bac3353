/** Drawings of sections on paper: marks in mm, and the files they are written into. */
package darkrim.present.drawing;
