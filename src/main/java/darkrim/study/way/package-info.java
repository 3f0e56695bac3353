/**
 * Ways that light takes through a layout, as lines that anyone can draw.
 *
 * <p>In: a scene, its tree, a receiver and a reflector. Out: {@code Way}s: from a point of the pupil by a point of
 * the reflector to a point of the receiver, both legs free. Main types: {@code WaySearch} tries, {@code Way} is
 * found.
 *
 * <p>It must not know: how much light a way carries: study.path has that. Begin to read: {@code WaySearch}.
 */
package darkrim.study.way;
