/**
 * How far triangulated surfaces are from one another, where they stand and while one is moved along a straight
 * line.
 *
 * <p>In: facets with the thickness of their coating. Out: the {@code Least} distance with the two points that it
 * lies between. Main types: {@code FacetBoxes} is a tree over facets, {@code LeastDistance} walks two trees
 * together, {@code SweptPair} does so for facets that move.
 *
 * <p>It must not know: parts, names, limits: it has triangles only. Begin to read: {@code LeastDistance}.
 */
package darkrim.study.distance;
