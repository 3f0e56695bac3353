package darkrim.study.sweep;

import darkrim.study.Change;
import darkrim.study.RequirementFigure;

/**
 * One requirement at one point.
 *
 * @param figure its figures, without those of single surfaces
 * @param change how much the value of its worst surface differs from that at the point compared with; NaN where it is not known
 * @param changeError standard error of that difference; NaN where it is not known
 * @param significant whether there is a difference at all, at the stated confidence, for this one statement
 */
public record RequirementLine(RequirementFigure figure, double change, double changeError, boolean significant) {
    /** A requirement whose point is compared with none. */
    static RequirementLine alone(RequirementFigure figure) {
        return of(figure, Change.UNKNOWN, 0);
    }

    static RequirementLine of(RequirementFigure figure, Change change, double confidence) {
        return new RequirementLine(
                figure.withoutSamples(), change.value(), change.standardError(), change.isSignificant(confidence));
    }
}
