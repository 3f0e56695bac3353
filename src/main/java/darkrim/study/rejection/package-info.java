/**
 * How well a baffle keeps the light of a body beside the field off the detectors.
 *
 * <p>In: a scene, a body far away, angles ({@code RejectionSettings}). Out: a {@code RejectionResult}: for each
 * angle the light on the detectors over that on a plane that faces the body, by number of reflections. Main types:
 * {@code RejectionStudy} goes through the angles, {@code DirectionLight} measures or proves one of them.
 *
 * <p>It must not know: how bright the body is: irradiance is put in by whoever shows it. Begin to read: {@code
 * RejectionStudy}.
 */
package darkrim.study.rejection;
