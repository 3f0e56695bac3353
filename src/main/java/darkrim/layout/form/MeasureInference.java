package darkrim.layout.form;

import com.ezylang.evalex.parser.ASTNode;
import com.ezylang.evalex.parser.Token;
import darkrim.diagnostic.Findings;
import darkrim.diagnostic.Place;
import java.util.IdentityHashMap;
import java.util.List;

/**
 * Works out what the pieces of one formula measure, and so what the dimensions in it measure that carry no unit.
 * Lengths and angles have powers that add in a product; the sides of a sum agree; functions of angles want angles. A
 * bare number stands for whatever makes sense.
 */
final class MeasureInference {
    private final Formula formula;
    private final DimensionMeasures dimensions;
    private final Findings findings;
    /** What is known stays known, and its parts have been asked once: without it the work doubles with each term of a sum. */
    private final IdentityHashMap<ASTNode, Inferred.Known> known = new IdentityHashMap<>();

    /**
     * @param formula the formula
     * @param dimensions what is known of the dimensions; more may become known
     * @param findings receives contradictions
     */
    MeasureInference(Formula formula, DimensionMeasures dimensions, Findings findings) {
        this.formula = formula;
        this.dimensions = dimensions;
        this.findings = findings;
    }

    /** What the formula measures where nothing is asked of it. */
    Inferred measure() {
        return infer(formula.tree());
    }

    /** Asks that the formula measures this. */
    void demand(Measure wanted) {
        demand(formula.tree(), wanted);
    }

    private Inferred infer(ASTNode node) {
        Inferred.Known before = known.get(node);
        if (before != null) {
            return before;
        }
        Inferred found = inferred(node);
        if (found instanceof Inferred.Known now) {
            known.put(node, now);
        }
        return found;
    }

    private Inferred inferred(ASTNode node) {
        Token token = node.getToken();
        List<ASTNode> parts = node.getParameters();
        return switch (token.getType()) {
            case VARIABLE_OR_CONSTANT ->
                token.getValue().equals(FormulaLanguage.PI) ? Inferred.ANYTHING : dimensions.of(token.getValue());
            case PREFIX_OPERATOR -> infer(parts.get(0));
            case INFIX_OPERATOR ->
                switch (token.getValue()) {
                    case "*" -> product(parts.get(0), parts.get(1), node);
                    case "/" -> quotient(parts.get(0), parts.get(1), node);
                    case "^" -> power(parts.get(0), parts.get(1));
                    default -> agreeing(parts);
                };
            case FUNCTION -> function(node);
            default -> Inferred.ANYTHING;
        };
    }

    private void demand(ASTNode node, Measure wanted) {
        Token token = node.getToken();
        List<ASTNode> parts = node.getParameters();
        switch (token.getType()) {
            case VARIABLE_OR_CONSTANT -> {
                if (!token.getValue().equals(FormulaLanguage.PI)) {
                    dimensions.demand(token.getValue(), wanted, formula.placeOf(node), findings);
                }
            }
            case PREFIX_OPERATOR -> demand(parts.get(0), wanted);
            case INFIX_OPERATOR -> {
                switch (token.getValue()) {
                    case "*" -> demandProduct(node, wanted);
                    case "/" -> demandQuotient(node, wanted);
                    case "^" -> demandPower(node, wanted);
                    default -> demandAgreeing(node, wanted);
                }
            }
            case FUNCTION -> {
                if (List.of("min", "max", "abs").contains(name(node))) {
                    demandAgreeing(node, wanted);
                } else if (name(node).equals("sqrt")) {
                    demand(parts.get(0), wanted.power(2));
                } else {
                    compare(node, infer(node), wanted);
                }
            }
            default -> {
                // A number literal stands for whatever is wanted.
            }
        }
    }

    /** Where all sides are the same and wrong, that is one mistake, not one for each side. */
    private void demandAgreeing(ASTNode node, Measure wanted) {
        List<Measure> sides = node.getParameters().stream()
                .map(this::infer)
                .filter(Inferred.Known.class::isInstance)
                .map(found -> ((Inferred.Known) found).measure())
                .toList();
        boolean agree = sides.size() > 1 && sides.stream().distinct().count() == 1;
        if (agree && !sides.get(0).equals(wanted)) {
            compare(node, new Inferred.Known(sides.get(0)), wanted);
        } else {
            node.getParameters().forEach(part -> demand(part, wanted));
        }
    }

    /** The sides of a sum, or the values of min and max. */
    private Inferred agreeing(List<ASTNode> parts) {
        Inferred found = Inferred.ANYTHING;
        for (ASTNode part : parts) {
            Inferred measure = infer(part);
            if (measure instanceof Inferred.Known known) {
                parts.forEach(each -> demand(each, known.measure()));
                return known;
            }
            found = measure instanceof Inferred.Open ? measure : found;
        }
        return found;
    }

    private Inferred product(ASTNode left, ASTNode right, ASTNode whole) {
        Inferred a = infer(left);
        Inferred b = infer(right);
        if (a instanceof Inferred.Known x && b instanceof Inferred.Known y) {
            return bounded(x.measure().times(y.measure()), whole);
        }
        if (a instanceof Inferred.Open || b instanceof Inferred.Open) {
            return Inferred.OPEN;
        }
        return withBareNumber(a, b);
    }

    private Inferred quotient(ASTNode left, ASTNode right, ASTNode whole) {
        Inferred a = infer(left);
        Inferred b = infer(right);
        if (a instanceof Inferred.Known x && b instanceof Inferred.Known y) {
            return bounded(x.measure().over(y.measure()), whole);
        }
        if (a instanceof Inferred.Open || b instanceof Inferred.Open) {
            return Inferred.OPEN;
        }
        // 90 / opening: the bare number above may be a length itself.
        return a instanceof Inferred.Known ? a : Inferred.ANYTHING;
    }

    /** 2 * opening is a length; 3.2 * tan(tilt) may be one, where 3.2 is a bare length. */
    private static Inferred withBareNumber(Inferred a, Inferred b) {
        Inferred known = a instanceof Inferred.Known ? a : b;
        boolean plain = known instanceof Inferred.Known k && k.measure().equals(Measure.NUMBER);
        return plain ? Inferred.ANYTHING : known;
    }

    private Inferred power(ASTNode base, ASTNode exponent) {
        Inferred of = infer(base);
        Integer whole = Exponent.of(exponent);
        if (of instanceof Inferred.Known known && whole != null) {
            return bounded(known.measure().power(whole), base);
        }
        return of;
    }

    private Inferred bounded(Measure measure, ASTNode at) {
        if (Math.abs(measure.length()) > 1000 || Math.abs(measure.angle()) > 1000) {
            findings.error(
                    "measure",
                    formula.placeOf(at),
                    "the powers of lengths and angles in the formula grow too high, expected at most 1000");
            return Inferred.ANYTHING;
        }
        return new Inferred.Known(measure);
    }

    private Inferred function(ASTNode node) {
        List<ASTNode> parts = node.getParameters();
        return switch (name(node)) {
            case "sin", "cos", "tan" -> {
                demand(parts.get(0), Measure.ANGLE);
                yield new Inferred.Known(Measure.NUMBER);
            }
            case "asin", "acos", "atan" -> {
                demand(parts.get(0), Measure.NUMBER);
                yield new Inferred.Known(Measure.ANGLE);
            }
            case "sqrt" -> root(parts.get(0));
            default -> agreeing(parts);
        };
    }

    private Inferred root(ASTNode part) {
        Inferred of = infer(part);
        if (of instanceof Inferred.Known known) {
            Measure measure = known.measure();
            if (measure.length() % 2 != 0 || measure.angle() % 2 != 0) {
                findings.error(
                        "measure",
                        formula.placeOf(part),
                        "the square root of " + measure
                                + " has no meaning here, expected that of an area or of a plain number");
                return Inferred.ANYTHING;
            }
            return new Inferred.Known(new Measure(measure.length() / 2, measure.angle() / 2));
        }
        return of;
    }

    private void demandProduct(ASTNode node, Measure wanted) {
        ASTNode left = node.getParameters().get(0);
        ASTNode right = node.getParameters().get(1);
        Inferred a = infer(left);
        Inferred b = infer(right);
        if (b instanceof Inferred.Open) {
            demandFactor(right, a, wanted);
        }
        if (a instanceof Inferred.Open) {
            demandFactor(left, infer(right), wanted);
        }
        compare(node, product(left, right, node), wanted);
    }

    /** The open factor measures what the other leaves. */
    private void demandFactor(ASTNode open, Inferred other, Measure wanted) {
        if (other instanceof Inferred.Known known) {
            demand(open, wanted.over(known.measure()));
        } else if (other instanceof Inferred.Anything) {
            demand(open, wanted);
        }
    }

    private void demandQuotient(ASTNode node, Measure wanted) {
        ASTNode above = node.getParameters().get(0);
        ASTNode below = node.getParameters().get(1);
        Inferred a = infer(above);
        Inferred b = infer(below);
        if (a instanceof Inferred.Open && b instanceof Inferred.Known known) {
            demand(above, wanted.times(known.measure()));
        } else if (a instanceof Inferred.Open && b instanceof Inferred.Anything) {
            demand(above, wanted);
        } else if (a instanceof Inferred.Known known && b instanceof Inferred.Open) {
            demand(below, known.measure().over(wanted));
        }
        compare(node, quotient(above, below, node), wanted);
    }

    private void demandPower(ASTNode node, Measure wanted) {
        ASTNode base = node.getParameters().get(0);
        Integer whole = Exponent.of(node.getParameters().get(1));
        if (whole != null && whole != 0 && wanted.length() % whole == 0 && wanted.angle() % whole == 0) {
            Inferred of = infer(base);
            if (of instanceof Inferred.Open) {
                demand(base, new Measure(wanted.length() / whole, wanted.angle() / whole));
            }
        }
        compare(node, power(base, node.getParameters().get(1)), wanted);
    }

    private void compare(ASTNode node, Inferred found, Measure wanted) {
        if (found instanceof Inferred.Known known && !known.measure().equals(wanted)) {
            Place place = formula.placeOf(node);
            findings.error(
                    "measure",
                    place,
                    "'" + node.getToken().getValue() + "' gives " + known.measure() + " here, expected " + wanted);
        }
    }

    private static String name(ASTNode node) {
        return node.getToken().getValue().toLowerCase(java.util.Locale.ROOT);
    }
}
