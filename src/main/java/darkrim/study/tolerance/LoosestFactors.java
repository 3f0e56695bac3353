package darkrim.study.tolerance;

import java.util.Optional;

/**
 * The loosest common factors on all tolerances.
 *
 * @param estimate with it as great a share of the sampled builds passes as is wanted of all builds
 * @param proved with it so many of the sampled builds pass that the wanted share of all builds is proved; absent where even all of them would
 *     not prove it
 */
public record LoosestFactors(LoosestFactor estimate, Optional<LoosestFactor> proved) {}
