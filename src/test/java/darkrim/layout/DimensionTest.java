package darkrim.layout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Units and formulas. */
class DimensionTest {
    /** A layout whose one block has a height of this, in a file with these units and dimensions. */
    private static LayoutReading reading(String units, String dimensions, String height) {
        String text = "title: x\nunits: " + units + "\ndimensions: " + dimensions
                + "\nbeam: {pupil: {shape: disc, diameter: 1 mm, distance: 9 mm}}\n"
                + "parts:\n  bar: {kind: block, width: 1 mm, depth: 1 mm, height: \"" + height + "\"}\n"
                + "  dome: {kind: sphere_cap, radius: 1 mm, half_angle: \"atan(1)\"}\n"
                + "requirements: {r: {surfaces: bar, direct: none}}\n";
        return LayoutReader.read("f", text.getBytes(StandardCharsets.UTF_8));
    }

    private static double height(String units, String dimensions, String height) {
        LayoutReading reading = reading(units, dimensions, height);
        assertThat(reading.findings()).isEmpty();
        return ((Shape.Block) reading.layout().orElseThrow().parts().get(0).shape()).height();
    }

    /**
     * Definitions of the units: SI; the inch is 25.4 mm by the agreement of 1959. Decimal fractions are exact to the
     * last bit.
     */
    @ParameterizedTest
    @CsvSource({
        "3.2 mm,3.2",
        "40 um,0.04",
        "40 \u00b5m,0.04",
        "1.5 cm,15",
        "0.32 m,320",
        "0.5 in,12.7",
        "3.2mm,3.2",
        "7,7"
    })
    void aLengthIsExactInMillimetres(String written, double millimetres) {
        assertThat(height("{length: mm}", "{}", written)).isEqualTo(millimetres);
    }

    @ParameterizedTest
    @CsvSource({"mm,3", "um,0.003", "cm,30", "m,3000", "in,76.2"})
    void aBareLengthIsInTheUnitsOfTheFileAlsoInsideAFormula(String unit, double threeUnits) {
        assertThat(height("{length: " + unit + "}", "{}", "3")).isEqualTo(threeUnits);
        assertThat(height("{length: " + unit + "}", "{a: 2}", "a + 1")).isEqualTo(threeUnits);
        // A dimension with a unit of its own and a bare number meet in one sum.
        assertThat(height("{length: " + unit + "}", "{a: 5 mm}", "a + 1")).isCloseTo(5 + threeUnits / 3, within(1e-9));
    }

    @ParameterizedTest
    @CsvSource({"deg,45", "rad,0.78539816339744831", "mrad,785.39816339744831", "arcmin,2700", "arcsec,162000"})
    void anglesInFormulasAreInTheUnitsOfTheFile(String unit, String quarterTurnHalved) {
        String units = "{angle: " + unit + "}";
        // tan 45 deg = 1
        assertThat(height(units, "{t: " + quarterTurnHalved + "}", "5 * tan(t)"))
                .isCloseTo(5, within(1e-12));
        assertThat(height(units, "{t: 45 deg}", "5 * tan(t)")).isCloseTo(5, within(1e-12));
        // arctan 1 = 45 deg
        Shape dome =
                reading(units, "{}", "1").layout().orElseThrow().parts().get(1).shape();
        assertThat(((Shape.SphereCap) dome).halfAngle()).isCloseTo(45, within(1e-12));
    }

    @ParameterizedTest
    @CsvSource({
        "2 + 3 * 4,14",
        "(2 + 3) * 4,20",
        "2 ^ 3,8",
        "2 - 3 + 4,3",
        "12 / 2 / 3,2",
        "5 - 2 ^ 2,1",
        "-2 ^ 2 + 5,1",
        "abs(0 - 3),3",
        "sqrt(16),4",
        "2 * pi / pi,2",
        "0.1 + 0.2 - 0.3 + 1,1"
    })
    void formulasFollowTheRulesOfArithmetic(String formula, double value) {
        assertThat(height("{}", "{}", formula)).isEqualTo(value);
    }

    @Test
    void minAndMaxTakeSeveralValues() {
        assertThat(height("{}", "{}", "min(3, 2, 7) + max(1, 5)")).isEqualTo(7);
    }

    @Test
    void aDifferenceOfDecimalsThatIsZeroOnPaperIsZero() {
        // In binary floating point 3.2 - 0.8 - 2.4 is 4.4e-16, and two faces that should touch would overlap.
        LayoutReading reading = reading("{}", "{a: 3.2, b: 0.8, c: 2.4}", "a - b - c");
        assertThat(reading.findings()).singleElement().asString().contains("'a - b - c' gives 0 mm");
    }

    @Test
    void dimensionsMayUseThoseThatFollow() {
        assertThat(height("{}", "{a: b + 1, b: c * 2, c: 3 mm}", "a")).isEqualTo(7);
    }

    @Test
    void aDimensionWithoutAUnitTakesTheKindOfItsUse() {
        Layout layout = reading(
                        "{length: cm, angle: rad}", "{h: 2, t: 0.1, n: 3, half: h / 2}", "n * half * cos(t) + h")
                .layout()
                .orElseThrow();
        assertThat(layout.dimensions().values())
                .extracting(Dimension::kind)
                .isEqualTo(List.of(Quantity.LENGTH, Quantity.ANGLE, Quantity.NUMBER, Quantity.LENGTH));
        assertThat(layout.dimensions().get("h").value()).isEqualTo(20); // mm
        assertThat(layout.dimensions().get("t").value()).isCloseTo(Math.toDegrees(0.1), within(1e-12));
        assertThat(layout.dimensions().get("n").value()).isEqualTo(3);
        assertThat(layout.dimensions().get("half").value()).isEqualTo(10);
    }

    @Test
    void theLengthOfADiagonalIsALength() {
        assertThat(height("{}", "{a: 3 mm, b: 4 mm}", "sqrt(a^2 + b^2)")).isEqualTo(5);
    }

    @Test
    void kindsAreCheckedThroughPowersAndRoots() {
        assertThat(reading("{}", "{a: 3 mm, b: 4 mm}", "sqrt(a^2 + b)").findings())
                .singleElement()
                .asString()
                .contains("'b' is a length")
                .contains("expected length^2");
    }
}
