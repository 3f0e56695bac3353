package darkrim.layout.form;

import com.ezylang.evalex.EvaluationException;
import darkrim.diagnostic.Findings;
import java.math.BigDecimal;
import java.util.Map;
import java.util.Optional;

/**
 * The value of a formula.
 *
 * @param formula the formula
 * @param findings receives what goes wrong
 */
record FormulaValue(Formula formula, Findings findings) {
    /**
     * Works it out.
     *
     * @param values values of all names that it uses, in the units of the file
     * @param angleUnit size of the file's unit of angle, degrees
     * @return the value in the units of the file; empty, with a finding, if there is none
     */
    Optional<BigDecimal> evaluate(Map<String, BigDecimal> values, BigDecimal angleUnit) {
        try {
            BigDecimal value = FormulaLanguage.evaluate(formula, values, angleUnit);
            if (Double.isFinite(value.doubleValue())) {
                return Optional.of(value);
            }
            findings.error(
                    "not-finite", formula.placeOf(1), shown() + " is too large for a number, expected a finite value");
        } catch (EvaluationException problem) {
            String said = FormulaLanguage.explain(problem);
            boolean division = said.equals("division by zero");
            findings.error(
                    division ? "division-by-zero" : "not-finite",
                    formula.placeOf(problem.getStartPosition()),
                    division ? "division by zero in " + shown() : said + " in " + shown());
        } catch (ArithmeticException overflow) {
            findings.error(
                    "not-finite", formula.placeOf(1), shown() + " cannot be worked out, expected a finite value");
        }
        return Optional.empty();
    }

    private String shown() {
        return "'" + Wording.shortened(formula.text()) + "'";
    }
}
