package darkrim.study.tolerance;

import darkrim.study.PointResult;

/**
 * A look that is finished.
 *
 * @param look what was asked
 * @param result what was found, without what single surfaces have
 */
public record Looked(Look look, PointResult result) {}
