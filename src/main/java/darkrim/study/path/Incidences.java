package darkrim.study.path;

/**
 * Angles of incidence at which a path's light strikes one of its surfaces, deg.
 *
 * @param mean the angle whose cosine is the mean cosine, weighted by what each way brings
 * @param least the least that was found
 * @param most the greatest that was found
 */
public record Incidences(double mean, double least, double most) {}
