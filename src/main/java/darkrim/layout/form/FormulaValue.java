package darkrim.layout.form;

import com.ezylang.evalex.EvaluationException;
import com.ezylang.evalex.Expression;
import com.ezylang.evalex.config.ExpressionConfiguration;
import com.ezylang.evalex.parser.ParseException;
import darkrim.diagnostic.Findings;
import java.math.BigDecimal;
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
     * @param language knows the values of all names that it uses, in the units of the file
     * @return the value in the units of the file; empty, with a finding, if there is none
     */
    Optional<BigDecimal> evaluate(ExpressionConfiguration language) {
        try {
            // Read anew: the tree of the first reading is bound to functions of degrees.
            BigDecimal value =
                    new Expression(formula.source(), language).evaluate().getNumberValue();
            if (Double.isFinite(value.doubleValue())) {
                return Optional.of(value);
            }
            findings.error(
                    "not-finite", formula.placeOf(1), shown() + " is too large for a number, expected a finite value");
        } catch (EvaluationException | ParseException problem) {
            String said = FormulaLanguage.explain(problem);
            boolean division = said.equals("division by zero");
            findings.error(
                    division ? "division-by-zero" : "not-finite",
                    formula.placeOf(problem.getStartPosition()),
                    (division ? "division by zero in " + shown() : said + " in " + shown())
                            + (division ? ", expected a divisor other than 0" : ", expected a finite value"));
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
