package darkrim.study.advice;

import darkrim.study.MarginUnit;

/**
 * How fast the margin of a requirement grows with a dimension.
 *
 * @param requirement the requirement
 * @param dimension the dimension
 * @param perUnit change of the margin for 1 mm, 1 deg or 1 of the dimension; NaN where it is not known
 * @param standardError its standard error; 0 where the margin is exact
 * @param unit what the margin is measured in
 */
public record Slope(String requirement, String dimension, double perUnit, double standardError, MarginUnit unit) {}
