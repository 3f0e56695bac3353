/**
 * What light meets: facets, named surfaces, finishes and the beam. No files, no options.
 *
 * <p>In: an assembly and the beam of its layout. Out: a {@code Scene}, flat arrays that do not change: facets,
 * surfaces, finishes, beam. Main types: {@code SceneFactory} makes it, {@code Surface} is a name with facets,
 * {@code Finish} how it reflects, {@code Beam} what comes in through a {@code Pupil}.
 *
 * <p>It must not know: how rays are traced, requirements, files. Begin to read: {@code SceneFactory}.
 */
package darkrim.scene;
