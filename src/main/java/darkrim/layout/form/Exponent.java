package darkrim.layout.form;

import com.ezylang.evalex.parser.ASTNode;
import com.ezylang.evalex.parser.Token.TokenType;
import darkrim.diagnostic.Findings;
import java.util.Optional;

/** The exponent of a power: a small whole number that is written out, so that what is measured is known and the work is bounded. */
final class Exponent {
    private static final int GREATEST = 10;

    private Exponent() {}

    /** The exponent, or null where it is not a whole number from -10 to 10. */
    static Integer of(ASTNode node) {
        if (node.getToken().getType() == TokenType.PREFIX_OPERATOR) {
            Integer part = of(node.getParameters().get(0));
            return part == null || node.getToken().getValue().equals("+") ? part : Integer.valueOf(-part);
        }
        if (node.getToken().getType() != TokenType.NUMBER_LITERAL) {
            return null;
        }
        double value = Double.parseDouble(node.getToken().getValue());
        return value == Math.rint(value) && value <= GREATEST ? Integer.valueOf((int) value) : null;
    }

    /** Reports the first exponent in a formula that is refused. */
    static boolean check(Formula formula, Findings findings) {
        Optional<ASTNode> refused = refused(formula.tree());
        refused.ifPresent(node -> findings.error(
                "formula",
                formula.placeOf(node),
                "the exponent is not a whole number from -10 to 10, expected such as ^2; for a root use sqrt"));
        return refused.isEmpty();
    }

    private static Optional<ASTNode> refused(ASTNode node) {
        if (node.getToken().getType() == TokenType.INFIX_OPERATOR
                && node.getToken().getValue().equals("^")
                && of(node.getParameters().get(1)) == null) {
            return Optional.of(node.getParameters().get(1));
        }
        return node.getParameters().stream()
                .map(Exponent::refused)
                .flatMap(Optional::stream)
                .findFirst();
    }
}
