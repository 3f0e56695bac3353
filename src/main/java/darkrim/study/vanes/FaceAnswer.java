package darkrim.study.vanes;

import darkrim.shadow.LitAndSeen;

/**
 * What is known about a surface of the vanes or their wall.
 *
 * @param surface its name
 * @param area its area, mm2
 * @param found whether any of it is lit and seen
 */
public record FaceAnswer(String surface, double area, LitAndSeen.Found found) {}
