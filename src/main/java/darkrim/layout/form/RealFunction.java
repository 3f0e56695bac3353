package darkrim.layout.form;

import com.ezylang.evalex.EvaluationException;
import com.ezylang.evalex.Expression;
import com.ezylang.evalex.data.EvaluationValue;
import com.ezylang.evalex.functions.AbstractFunction;
import com.ezylang.evalex.functions.FunctionParameter;
import com.ezylang.evalex.parser.Token;
import java.math.BigDecimal;
import java.util.function.DoubleUnaryOperator;

/** A function of one number in double precision, for the formula library. */
@FunctionParameter(name = "value")
final class RealFunction extends AbstractFunction {
    private final DoubleUnaryOperator law;

    RealFunction(DoubleUnaryOperator law) {
        this.law = law;
    }

    @Override
    public EvaluationValue evaluate(Expression expression, Token function, EvaluationValue... values)
            throws EvaluationException {
        double result = law.applyAsDouble(values[0].getNumberValue().doubleValue());
        if (!Double.isFinite(result)) {
            throw new EvaluationException(
                    function,
                    function.getValue() + " of "
                            + Wording.number(values[0].getNumberValue().doubleValue()) + " is not a finite number");
        }
        return EvaluationValue.numberValue(BigDecimal.valueOf(result));
    }
}
