package darkrim.layout.form;

import com.ezylang.evalex.BaseException;
import com.ezylang.evalex.config.ExpressionConfiguration;
import com.ezylang.evalex.config.FunctionDictionaryIfc;
import com.ezylang.evalex.config.MapBasedFunctionDictionary;
import com.ezylang.evalex.config.MapBasedOperatorDictionary;
import com.ezylang.evalex.config.OperatorDictionaryIfc;
import com.ezylang.evalex.data.DataAccessorIfc;
import com.ezylang.evalex.data.EvaluationValue;
import com.ezylang.evalex.functions.basic.AbsFunction;
import com.ezylang.evalex.functions.basic.MaxFunction;
import com.ezylang.evalex.functions.basic.MinFunction;
import com.ezylang.evalex.operators.OperatorIfc;
import com.ezylang.evalex.operators.arithmetic.InfixMinusOperator;
import com.ezylang.evalex.operators.arithmetic.InfixMultiplicationOperator;
import com.ezylang.evalex.operators.arithmetic.InfixPlusOperator;
import com.ezylang.evalex.operators.arithmetic.InfixPowerOfOperator;
import com.ezylang.evalex.operators.arithmetic.PrefixMinusOperator;
import com.ezylang.evalex.operators.arithmetic.PrefixPlusOperator;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;

/**
 * The language of formulas: the four operations, powers, brackets, {@code pi}, and the functions abs, min, max, sqrt,
 * sin, cos, tan, asin, acos, atan. Nothing else of the library's language is there: no texts, conditions, arrays or
 * clock. Names are case-sensitive.
 */
final class FormulaLanguage {
    static final String PI = "pi";
    /** In the order in which messages name them. */
    static final List<String> FUNCTIONS =
            List.of("abs", "min", "max", "sqrt", "sin", "cos", "tan", "asin", "acos", "atan");
    /** Enough to read a formula; it evaluates nothing. */
    static final ExpressionConfiguration SYNTAX = configuration(BigDecimal.ONE, Map.of());

    private static final BigDecimal PI_VALUE = new BigDecimal("3.14159265358979323846264338327950288");

    private FormulaLanguage() {}

    /** Names that a dimension cannot have. */
    static boolean reserves(String name) {
        return FUNCTIONS.contains(name.toLowerCase(java.util.Locale.ROOT))
                || name.equalsIgnoreCase(PI)
                || Unit.of(name).isPresent();
    }

    /**
     * What is needed to work out formulas.
     *
     * @param values values of names, in the units of the file; it may grow
     * @param angleUnit size of the file's unit of angle, degrees
     */
    static ExpressionConfiguration over(Map<String, BigDecimal> values, BigDecimal angleUnit) {
        return configuration(angleUnit, values);
    }

    /** Plain words for what the library says. */
    static String explain(BaseException problem) {
        String token = Wording.shortened(String.valueOf(problem.getTokenString()));
        String said = String.valueOf(problem.getMessage());
        if (said.startsWith("Undefined function")) {
            return "unknown function '" + token + "', " + Wording.suggestion(token, FUNCTIONS);
        }
        if (said.startsWith("Undefined operator")) {
            return "'" + token + "' is not an operator, expected + - * / or ^";
        }
        return switch (said) {
            case "Too many operands", "Missing operator" -> "an operator is missing, expected + - * / or ^";
            case "Closing brace not found" -> "a closing bracket is missing, expected one";
            case "Unexpected closing brace" ->
                "a bracket closes that was never opened, expected one that opens before it";
            case "Missing second operand for operator", "Missing operand for operator" ->
                "the operator '" + token + "' lacks a value, expected one on each side"
                        + (token.equals("^") ? "; a negative exponent stands in brackets, ^(-2)" : "");
            case "Not enough parameters for function" ->
                "the function '" + token + "' lacks a value, expected one in its brackets";
            case "Too many parameters for function" ->
                "the function '" + token + "' has too many values, expected fewer in its brackets";
            case "Unexpected token after infix operator" ->
                "two operators follow each other, expected a value between them";
            case "Empty expression" -> "it is empty, expected a value";
            case "Division by zero" -> "division by zero";
            default ->
                said.isEmpty()
                        ? "it is not complete, expected more"
                        : said.substring(0, 1).toLowerCase(java.util.Locale.ROOT) + said.substring(1);
        };
    }

    private static ExpressionConfiguration configuration(BigDecimal angleUnit, Map<String, BigDecimal> values) {
        return ExpressionConfiguration.builder()
                .implicitMultiplicationAllowed(false)
                .arraysAllowed(false)
                .structuresAllowed(false)
                .binaryAllowed(false)
                // -a^2 is -(a^2), as in mathematics; the library's default is (-a)^2.
                .powerOfPrecedence(OperatorIfc.OPERATOR_PRECEDENCE_POWER_HIGHER)
                .operatorDictionary(operators())
                .functionDictionary(functions(angleUnit))
                .defaultConstants(Map.of())
                .dataAccessorSupplier(() -> new NamedNumbers(values))
                .build();
    }

    private static OperatorDictionaryIfc operators() {
        OperatorDictionaryIfc operators = new MapBasedOperatorDictionary();
        // The library tells prefix from infix by the operator itself.
        operators.addOperator("+", new PrefixPlusOperator());
        operators.addOperator("-", new PrefixMinusOperator());
        operators.addOperator("+", new InfixPlusOperator());
        operators.addOperator("-", new InfixMinusOperator());
        operators.addOperator("*", new InfixMultiplicationOperator());
        operators.addOperator("/", new Division());
        operators.addOperator("^", new InfixPowerOfOperator());
        return operators;
    }

    private static FunctionDictionaryIfc functions(BigDecimal angleUnit) {
        double unit = Math.toRadians(angleUnit.doubleValue());
        FunctionDictionaryIfc functions = new MapBasedFunctionDictionary();
        functions.addFunction("abs", new AbsFunction());
        functions.addFunction("min", new MinFunction());
        functions.addFunction("max", new MaxFunction());
        functions.addFunction("sqrt", new RealFunction(Math::sqrt));
        functions.addFunction("sin", new RealFunction(angle -> StrictMath.sin(angle * unit)));
        functions.addFunction("cos", new RealFunction(angle -> StrictMath.cos(angle * unit)));
        functions.addFunction("tan", new RealFunction(angle -> StrictMath.tan(angle * unit)));
        functions.addFunction("asin", new RealFunction(ratio -> StrictMath.asin(ratio) / unit));
        functions.addFunction("acos", new RealFunction(ratio -> StrictMath.acos(ratio) / unit));
        functions.addFunction("atan", new RealFunction(ratio -> StrictMath.atan(ratio) / unit));
        return functions;
    }

    /** The names of a formula, case-sensitive. */
    private record NamedNumbers(Map<String, BigDecimal> values) implements DataAccessorIfc {
        @Override
        public EvaluationValue getData(String name) {
            BigDecimal value = name.equals(PI) ? PI_VALUE : values.get(name);
            return value == null ? null : EvaluationValue.numberValue(value);
        }

        @Override
        public void setData(String name, EvaluationValue value) {
            throw new UnsupportedOperationException("a formula sets nothing");
        }
    }
}
