package darkrim.study;

import darkrim.verdict.Verdict;

/**
 * How far a requirement is from the other side.
 *
 * @param requirement the requirement
 * @param verdict its verdict
 * @param margin the least of its surfaces, negative where it fails: for no direct light and for the pupil in mm, for a limit the limit less the
 *     relative irradiance; NaN where it is not known
 * @param standardError standard error of the margin; 0 where it is exact
 * @param millimetres whether it is in mm
 * @param where the surface that has it; empty where it is not known
 */
public record MarginFigure(
        String requirement, Verdict verdict, double margin, double standardError, boolean millimetres, String where) {}
