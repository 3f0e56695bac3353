package darkrim.layout.form;

import com.ezylang.evalex.Expression;
import com.ezylang.evalex.parser.ASTNode;
import com.ezylang.evalex.parser.ParseException;
import com.ezylang.evalex.parser.Token.TokenType;
import darkrim.diagnostic.Findings;
import darkrim.diagnostic.Place;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A formula over named dimensions: {@code + - * / ^}, brackets, and the functions of {@link FormulaLanguage}. Bounded
 * in length and depth.
 */
public final class Formula implements Written {
    /** Most characters of a formula. */
    public static final int LONGEST = 500;
    /** Most brackets open at once. */
    private static final int DEEPEST = 30;

    private static final Pattern UNIT_INSIDE =
            Pattern.compile("[\\d.]\\s*(mm|um|cm|m|in|deg|rad|mrad|arcmin|arcsec)\\b");

    private final Node.Scalar scalar;
    private final ASTNode tree;

    private Formula(Node.Scalar scalar, ASTNode tree) {
        this.scalar = scalar;
        this.tree = tree;
    }

    /** Reads a formula; empty, with a finding, where it is none. */
    static Optional<Formula> parse(Node.Scalar scalar, Findings findings) {
        String text = scalar.text();
        String shown = "'" + Wording.shortened(text.strip()) + "'";
        int deep = tooDeepAt(text);
        if (deep >= 0) {
            findings.error(
                    "formula",
                    scalar.placeOf(deep),
                    "the formula opens more than " + DEEPEST + " brackets at once, expected fewer");
            return Optional.empty();
        }
        Matcher unit = UNIT_INSIDE.matcher(text);
        if (unit.find()) {
            findings.error(
                    "formula",
                    scalar.placeOf(unit.start(1)),
                    "the unit '" + unit.group(1) + "' stands inside the formula " + shown
                            + ", expected bare numbers; give the value with its unit a name under 'dimensions'");
            return Optional.empty();
        }
        try {
            ASTNode tree = new Expression(text, FormulaLanguage.SYNTAX).getAbstractSyntaxTree();
            return refusedWord(tree)
                    .map(node -> {
                        findings.error(
                                "formula",
                                scalar.placeOf(node.getToken().getStartPosition() - 1),
                                "'" + Wording.shortened(node.getToken().getValue()) + "' has no place in the formula "
                                        + shown + ", expected names, decimal numbers, + - * / ^ and brackets");
                        return Optional.<Formula>empty();
                    })
                    .orElseGet(() -> Optional.of(new Formula(scalar, tree)));
        } catch (ParseException problem) {
            findings.error(
                    "formula",
                    scalar.placeOf(Math.max(0, problem.getStartPosition() - 1)),
                    "cannot read " + shown + " as a number, a number with a unit, or a formula: "
                            + FormulaLanguage.explain(problem));
            return Optional.empty();
        }
    }

    @Override
    public String text() {
        return scalar.text().strip();
    }

    /** Whether it is a single name. */
    boolean isName() {
        return tree.getToken().getType() == TokenType.VARIABLE_OR_CONSTANT;
    }

    /** Whether a name means something in formulas already, so that a dimension cannot have it. */
    public static boolean reserves(String name) {
        return FormulaLanguage.reserves(name);
    }

    /** The names that it uses, in the order of their first use. */
    public Set<String> names() {
        Set<String> names = new LinkedHashSet<>();
        variables(tree, new ArrayList<>())
                .forEach(node -> names.add(node.getToken().getValue()));
        return names;
    }

    /** The uses of names. */
    List<ASTNode> variables() {
        return variables(tree, new ArrayList<>());
    }

    ASTNode tree() {
        return tree;
    }

    /** The formula itself, for the evaluating library. */
    String source() {
        return scalar.text();
    }

    /** Where a piece of it stands in the file. */
    Place placeOf(int startPosition) {
        return scalar.placeOf(startPosition - 1);
    }

    Place placeOf(ASTNode node) {
        return placeOf(node.getToken().getStartPosition());
    }

    private static List<ASTNode> variables(ASTNode node, List<ASTNode> into) {
        if (node.getToken().getType() == TokenType.VARIABLE_OR_CONSTANT
                && !node.getToken().getValue().equals(FormulaLanguage.PI)) {
            into.add(node);
        }
        node.getParameters().forEach(part -> variables(part, into));
        return into;
    }

    private static int tooDeepAt(String text) {
        int open = 0;
        for (int i = 0; i < text.length(); i++) {
            open += text.charAt(i) == '(' ? 1 : text.charAt(i) == ')' ? -1 : 0;
            if (open > DEEPEST) {
                return i;
            }
        }
        return -1;
    }

    /** Texts in quotes, hexadecimal and not finite numbers. */
    private static Optional<ASTNode> refusedWord(ASTNode node) {
        TokenType type = node.getToken().getType();
        String value = node.getToken().getValue();
        boolean refused = switch (type) {
            case STRING_LITERAL -> true;
            case NUMBER_LITERAL -> !isUsable(value);
            default -> false;
        };
        if (refused) {
            return Optional.of(node);
        }
        return node.getParameters().stream()
                .map(Formula::refusedWord)
                .flatMap(Optional::stream)
                .findFirst();
    }

    /** A decimal number that is finite and, unless it is written as 0, not 0. */
    private static boolean isUsable(String literal) {
        if (literal.startsWith("0x") || literal.startsWith("0X")) {
            return false;
        }
        double value;
        try {
            value = Double.parseDouble(literal);
        } catch (NumberFormatException twoPointsOrExponents) {
            // The library's tokens are wider than its numbers: 1e3.5.
            return false;
        }
        String mantissa = literal.split("[eE]", -1)[0];
        boolean writtenAsZero = mantissa.chars().allMatch(c -> c == '0' || c == '.');
        return Double.isFinite(value) && (value != 0 || writtenAsZero);
    }
}
