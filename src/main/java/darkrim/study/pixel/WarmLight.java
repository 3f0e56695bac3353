package darkrim.study.pixel;

import darkrim.light.Estimate;

/**
 * Warm light that a pixel gets within the band.
 *
 * @param photons photons/s that are counted, quantum efficiency included
 * @param watts W, as they arrive
 */
public record WarmLight(Estimate photons, Estimate watts) {}
