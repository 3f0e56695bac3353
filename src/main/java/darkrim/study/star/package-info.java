/**
 * Where a star must not stand: once-reflected light over the position of a star around the detectors.
 *
 * <p>In: a scene, a region of star positions, a level ({@code StarScanSettings}). Out: a {@code StarScanResult}:
 * cells with a share that was proved or bounded by samples, and the {@code AvoidanceZone} around those above the
 * level. Main types: {@code StarScan} splits cells where it matters, {@code StarBound} is the bound of a sampled
 * share.
 *
 * <p>It must not know: pictures of the zone. Begin to read: {@code StarScan}.
 */
package darkrim.study.star;
