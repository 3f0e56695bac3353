package darkrim.layout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Values are put into the text of a file, and nothing else of it changes. */
class DimensionEditTest {
    private static final String HEAD = """
            title: x   # a title
            units: {length: mm, angle: deg}
            dimensions:
            """;
    private static final String REST = """
            beam: {pupil: {shape: disc, diameter: 1 mm, distance: 900 mm}}
            parts:
              bar: {kind: block, width: "side", depth: 1 mm, height: 1 mm}
            requirements: {r: {surfaces: bar, direct: none}}
            """;

    private static String edited(String text, Map<String, Double> values, DimensionEdit.Formulas formulas)
            throws RefusedEdit {
        byte[] content = text.getBytes(StandardCharsets.UTF_8);
        return new String(DimensionEdit.of("f.yaml", content, values, formulas), StandardCharsets.UTF_8);
    }

    private static String edited(String dimensions, double side) throws RefusedEdit {
        String text = edited(HEAD + dimensions + REST, Map.of("side", side), DimensionEdit.Formulas.REFUSE);
        assertThat(text).startsWith(HEAD).endsWith(REST);
        return text.substring(HEAD.length(), text.length() - REST.length());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            ignoreLeadingAndTrailingWhitespace = false,
            value = {
                "  side: 38.6 mm   # side of an opening~|  side: 37.2 mm   # side of an opening~",
                "  side: 38.6~|  side: 37.2~",
                "  side: 38600um # small~|  side: 37200um # small~",
                "  side: 3.86   cm~|  side: 3.72   cm~",
                "  {side: 38.6, other: 38.6}~|  {side: 37.2, other: 38.6}~",
                "  side: {value: 38.6, tolerance: 0.03}~|  side: {value: 37.2, tolerance: 0.03}~",
                "  side:~    tolerance: 38.6 # 38.6~    value: 38.6~|  side:~    tolerance: 38.6 # 38.6~    value: 37.2~",
                "  side: '38.6 mm'~|  side: '37.2 mm'~",
                "  side: \" 38.6 mm \"~|  side: \" 37.2 mm \"~",
                "  # side: 38.6~  other: 38.6~  side: +38.60e0 mm~|  # side: 38.6~  other: 38.6~  side: 37.2 mm~",
            })
    void onlyTheDigitsAreReplaced(String before, String after) throws RefusedEdit {
        assertThat(edited(before.replace('~', '\n'), 37.2)).isEqualTo(after.replace('~', '\n'));
    }

    @Test
    void aValueThatTheTextSaysAlreadyStaysAsItIsWritten() throws RefusedEdit {
        assertThat(edited("  side: 37.20 mm\n", 37.2)).isEqualTo("  side: 37.20 mm\n");
    }

    @Test
    void aFormulaIsRefusedUnlessANumberIsAskedForInItsPlace() throws RefusedEdit {
        String text = HEAD + "  half: 19 mm\n  side: 2 * half   # twice\n" + REST;
        assertThatThrownBy(() -> edited(text, Map.of("side", 37.2), DimensionEdit.Formulas.REFUSE))
                .isInstanceOf(RefusedEdit.class)
                .hasMessage("f.yaml:5:9: the dimension 'side' is the formula '2 * half', expected a number:"
                        + " change what it is reckoned from, or ask for a number in its place");
        assertThat(edited(text, Map.of("side", 37.2, "half", 18.0), DimensionEdit.Formulas.REPLACE))
                .isEqualTo(text.replace("2 * half", "37.2").replace("19 mm", "18 mm"));
    }

    @Test
    void whatCannotBePutInItsPlaceIsRefused() {
        String plain = HEAD + "  side: 38.6\n" + REST;
        String escaped = HEAD + "  side: \"3\\x38.6\"\n" + REST;
        assertThatThrownBy(() -> edited(plain, Map.of("size", 1.0), DimensionEdit.Formulas.REPLACE))
                .hasMessage("f.yaml: there is no dimension 'size'");
        assertThatThrownBy(() -> edited(plain, Map.of("side", Double.NaN), DimensionEdit.Formulas.REPLACE))
                .hasMessage("f.yaml:4:9: the dimension 'side' cannot be NaN, expected a finite number");
        assertThatThrownBy(() -> edited(escaped, Map.of("side", 1.0), DimensionEdit.Formulas.REPLACE))
                .hasMessage("f.yaml:4:9: the dimension 'side' is not written in one piece on one line");
        assertThatThrownBy(() -> edited(plain, Map.of("side", -1.0), DimensionEdit.Formulas.REPLACE))
                .hasMessageStartingWith("f.yaml: with these values the file would have errors: f.yaml:7:");
    }

    /**
     * 600 texts put together from pieces at random, seed 20: what stands before and after the digits is known, so that it can be seen to be
     * untouched, and the reader says what the text means.
     */
    @Test
    void theTextReadAgainSaysExactlyTheValueAndAllElseIsUntouched() throws RefusedEdit {
        Random random = new Random(20);
        for (int i = 0; i < 600; i++) {
            String end = pick(random, "\n", "\r\n", "\r");
            String unit = pick(random, "", " mm", "um", "  cm", " m", " in");
            String quote = pick(random, "", "", "'", "\"");
            String old = pick(random, "38.6", "+38.60", "0.5", "7", "12e-1", ".25");
            String unitOfFile = pick(random, "mm", "um", "cm", "m", "in");
            boolean keys = random.nextBoolean();
            boolean block = random.nextBoolean();
            String open = keys ? (block ? end + "    value: " : "{value: ") : "";
            String close = keys ? (block ? "" : ", tolerance: 0.01 mm}") : "";
            String before = pick(random, "", "\uFEFF") + "# \u00fcber \ud83d\ude00" + end + "title: x" + end
                    + "units: {length: " + unitOfFile + "}" + end + "dimensions:" + end
                    + pick(random, "", "  a: 38.6 # a" + end) + pick(random, "  # side: 1" + end, "") + "  side: "
                    + open + quote;
            String after = unit
                    + quote
                    + close
                    + pick(random, "", "   # " + old + " \u2028 was it")
                    + end
                    + pick(random, "", "  z: 38.6" + end)
                    + REST.replace("\n", end);
            double value =
                    pick(random, List.of(37.2, 1 / 3.0, 1.23456789e-5, 123456.75, random.nextDouble(), 5.0, 25.4));
            String changed = edited(before + old + after, Map.of("side", value), DimensionEdit.Formulas.REFUSE);
            assertThat(changed).as("text %s", i).startsWith(before).endsWith(after);
            LayoutReading again = LayoutReader.read("f", changed.getBytes(StandardCharsets.UTF_8));
            assertThat(again.layout().orElseThrow().dimensions().get("side").value())
                    .as("text %s: %s", i, changed)
                    .isEqualTo(value);
        }
    }

    private static String pick(Random random, String... from) {
        return from[random.nextInt(from.length)];
    }

    private static double pick(Random random, List<Double> from) {
        return from.get(random.nextInt(from.size()));
    }
}
