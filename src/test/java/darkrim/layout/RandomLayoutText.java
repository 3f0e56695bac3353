package darkrim.layout;

import darkrim.layout.form.Key;
import darkrim.layout.form.Kind;
import java.util.List;
import java.util.SplittableRandom;

/** Layout files made by chance from the table of keys: every key and every kind can come up, most values right, some wrong. */
public final class RandomLayoutText {
    private static final List<String> NUMBERS = List.of(
            "0",
            "1",
            "2",
            "3.2",
            "12",
            "40",
            "0.05",
            "-1",
            "-0.0",
            "1e-9",
            "1e6",
            "1e308",
            "1e999",
            ".nan",
            "0x1F",
            "1,5",
            "100000000",
            "9223372036854775808",
            "a",
            "a / 2",
            "2 * a + b",
            "b ^ 2",
            "tan(a)",
            "sqrt(-1)",
            "1 / 0",
            "((((a))))",
            "3 mm",
            "2 deg",
            "1 in",
            "5 furlong",
            "pi",
            "a b",
            "unknown + 1");
    private static final List<String> WORDS = List.of(
            "one",
            "two",
            "a",
            "b",
            "\"one/**\"",
            "\"**\"",
            "\"{one,two}/*\"",
            "\"\\e[31mred\"",
            "\"=cmd|' /C calc'!A0\"",
            "\"<b>&amp;\"",
            "\"]]>\"",
            "../../etc/passwd",
            "/dev/zero",
            ".",
            "block.stl",
            "\"\\u202Egnp\"",
            "\"\"",
            "~",
            "\"(a+)+$\"",
            "'x''y'");
    private static final int DEEPEST = 9;

    private final SplittableRandom random;

    /**
     * @param random decides
     */
    public RandomLayoutText(SplittableRandom random) {
        this.random = random;
    }

    /** A layout as one line of YAML. */
    public String next() {
        StringBuilder text = new StringBuilder();
        write(text, LayoutKeys.LAYOUT, 0);
        return text.append('\n').toString();
    }

    private void write(StringBuilder text, Kind kind, int depth) {
        if (depth > DEEPEST || random.nextInt(150) == 0) {
            text.append(any(random.nextBoolean() ? NUMBERS : WORDS));
        } else if (kind instanceof Kind.Either either) {
            write(text, any(either.kinds()), depth + 1);
        } else if (kind instanceof Kind.ListOf list) {
            items(text, list, depth);
        } else if (kind instanceof Kind.Named named) {
            text.append('{');
            int count = 1 + random.nextInt(3);
            for (int i = 0; i < count; i++) {
                String name = random.nextInt(40) == 0
                        ? any(WORDS)
                        : List.of("a", "b", "one", "two").get(i + random.nextInt(2));
                text.append(i == 0 ? "" : ", ").append(name).append(": ");
                write(text, named.item(), depth + 1);
            }
            text.append('}');
        } else if (kind instanceof Kind.Variants variants) {
            Kind.Case one = any(variants.cases());
            text.append('{').append(variants.selector()).append(": ").append(one.word());
            keys(text, one.structure(), depth, ", ");
            text.append('}');
        } else if (kind instanceof Kind.Structure structure) {
            text.append('{');
            keys(text, structure, depth, "");
            text.append('}');
        } else {
            scalar(text, kind);
        }
    }

    private void items(StringBuilder text, Kind.ListOf list, int depth) {
        int most = Math.min(list.most(), list.least() + 3);
        int count = list.least() + random.nextInt(most - list.least() + 1);
        count = random.nextInt(60) == 0 ? random.nextInt(6) : Math.min(count, 6);
        text.append('[');
        for (int i = 0; i < count; i++) {
            text.append(i == 0 ? "" : ", ");
            write(text, list.item(), depth + 1);
        }
        text.append(']');
    }

    private void keys(StringBuilder text, Kind.Structure structure, int depth, String before) {
        String comma = before;
        String chosen = structure.exactlyOneOf().isEmpty() ? "" : any(structure.exactlyOneOf());
        for (Key key : structure.keys()) {
            boolean choice = structure.exactlyOneOf().contains(key.name());
            boolean asked = choice ? key.name().equals(chosen) : key.required() || random.nextInt(3) == 0;
            if (asked != (random.nextInt(200) == 0)) {
                text.append(comma).append(key.name()).append(": ");
                write(text, key.kind(), depth + 1);
                comma = ", ";
            }
        }
    }

    private void scalar(StringBuilder text, Kind kind) {
        if (kind instanceof Kind.Numeric numeric && random.nextInt(4) != 0) {
            double least = Math.max(numeric.range().least(), -20);
            double most = Math.min(numeric.range().most(), 40);
            text.append((float) (least + random.nextDouble() * (most - least)));
        } else if (kind instanceof Kind.Whole whole && random.nextInt(6) != 0) {
            text.append(whole.least() + random.nextLong(Math.min(4, whole.most() - whole.least() + 1)));
        } else if (kind instanceof Kind.Choice choice) {
            text.append(any(choice.words()));
        } else if (kind instanceof Kind.Flag) {
            text.append(random.nextBoolean());
        } else {
            text.append(any(kind instanceof Kind.Text && random.nextInt(10) != 0 ? WORDS : NUMBERS));
        }
    }

    private <T> T any(List<T> all) {
        return all.get(random.nextInt(all.size()));
    }
}
