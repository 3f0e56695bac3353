package darkrim.scene;

import darkrim.geom.Frame;
import darkrim.geom.Outline;

/**
 * The flat source of the light: an outline of uniform radiance in a plane; it shines to the side of the frame's normal.
 *
 * @param outline its shape in the frame's u and v, mm
 * @param frame its plane; the normal points toward the focal plane
 */
public record Pupil(Outline outline, Frame frame) {}
