/**
 * How parts lie against each other: overlaps, and sheets on faces.
 *
 * <p>In: an assembly and its scene. Out: warnings and errors with their places, no values. Main types: {@code
 * PartContacts} for parts among each other, {@code MeshContacts} for what comes from a mesh file, {@code
 * OverlapSearch} finds bodies that run into one another.
 *
 * <p>It must not know: requirements: what is found here holds whatever is asked. Begin to read: {@code
 * PartContacts}.
 */
package darkrim.study.contact;
