package darkrim.layout.form;

import com.ezylang.evalex.EvaluationException;
import com.ezylang.evalex.Expression;
import com.ezylang.evalex.data.EvaluationValue;
import com.ezylang.evalex.operators.InfixOperator;
import com.ezylang.evalex.operators.OperatorIfc;
import com.ezylang.evalex.operators.arithmetic.InfixDivisionOperator;
import com.ezylang.evalex.parser.Token;

/** Division that knows every zero: the library's takes 0.0 for something else than 0 and then loses the place. */
@InfixOperator(precedence = OperatorIfc.OPERATOR_PRECEDENCE_MULTIPLICATIVE)
final class Division extends InfixDivisionOperator {
    @Override
    public EvaluationValue evaluate(Expression expression, Token operator, EvaluationValue... operands)
            throws EvaluationException {
        if (operands[1].getNumberValue().signum() == 0) {
            throw new EvaluationException(operator, "Division by zero");
        }
        return super.evaluate(expression, operator, operands);
    }
}
