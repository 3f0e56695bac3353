package darkrim.layout;

import darkrim.diagnostic.Place;

/**
 * A finish as the designer wrote it.
 *
 * @param name its name
 * @param diffuse reflectance of the Lambertian part, 0 to 1
 * @param mirror reflectance of the mirror part, 0 to 1
 * @param source where the numbers come from, in the designer's words; may be empty
 * @param place where it stands
 */
public record FinishSpec(String name, double diffuse, double mirror, String source, Place place) {}
