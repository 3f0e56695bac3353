package darkrim.shadow;

/**
 * A piece of a face.
 *
 * @param piece its outline; the frame's normal points to the side that is looked at
 * @param plane the number of its plane in the scene
 */
record Face(FlatPiece piece, int plane) {}
