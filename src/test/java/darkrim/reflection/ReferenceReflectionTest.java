package darkrim.reflection;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.layout.FinishLibrary;
import darkrim.reference.ReferenceScalar;
import darkrim.reference.Validation;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tools.jackson.databind.JsonNode;

/** Fresnel's formulas (family E) and the shift-invariant roll-off (family F). Nothing is sampled. */
@ExtendWith(Validation.class)
class ReferenceReflectionTest {
    static Stream<ReferenceScalar> fresnel() {
        return ReferenceScalar.family("E").filter(each -> each.from().kind().equals("fresnel"));
    }

    static Stream<ReferenceScalar> rollOff() {
        return ReferenceScalar.family("F");
    }

    @Test
    void everyCaseIsRun() {
        assertThat(ReferenceScalar.family("E")
                        .filter(each -> !each.from().kind().equals("fresnel")))
                .hasSize(1);
        assertThat(rollOff()).hasSize(11);
    }

    /** The library has the index at a few wavelengths and straight lines between. */
    @Test
    void theLibraryHasTheIndexOfSilicon() {
        ReferenceScalar index = ReferenceScalar.family("E")
                .filter(each -> each.from().kind().equals("index"))
                .findFirst()
                .orElseThrow();
        double at = index.from().geometry().get("params").get("lambdaUm").asDouble();
        Reflection silicon = FinishLibrary.entry("bare-silicon")
                .orElseThrow()
                .in(at - 0.01, at + 0.01)
                .orElseThrow();
        double n = ((Fresnel) silicon.mirrors().get(0)).n();
        Validation.requireExact(index, "finish library, between two wavelengths", n, 1e-3);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("fresnel")
    void aSmoothFaceReflects(ReferenceScalar scalar) {
        JsonNode params = scalar.from().geometry().get("params");
        Fresnel face = Fresnel.of(params.get("n2").asDouble());
        String id = scalar.from().id();
        double expected = scalar.value();
        if (id.startsWith("E01")) {
            double cosine = cosine(params.get("angleDeg").get(scalar.index()).asDouble());
            double got = id.endsWith("s") ? face.s(cosine) : id.endsWith("p") ? face.p(cosine) : face.at(cosine);
            Validation.requireExact(scalar, "Fresnel", got, 1e-12);
        } else if (id.endsWith("B")) {
            Validation.requireExact(scalar, "search for the least p-polarised reflectance", leastOfP(face), 1e-9);
            assertThat(face.p(cosine(expected))).isLessThan(1e-30);
        } else if (id.endsWith("45")) {
            double s = face.s(cosine(45));
            Validation.requireExact(scalar, "Fresnel", face.p(cosine(45)), 1e-12);
            assertThat(s * s).isCloseTo(expected, within(1e-12));
        } else if (id.startsWith("E02")) {
            Validation.requireExact(scalar, "Fresnel", face.at(1), 1e-12);
        } else if (id.startsWith("E03")) {
            Validation.requireExact(scalar, "mean over the hemisphere", face.mean(), 1e-9);
        } else {
            double once = face.at(1);
            Validation.requireExact(scalar, "both faces", 2 * once / (1 + once), 1e-12);
        }
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("rollOff")
    void aRollOffScattersInAll(ReferenceScalar scalar) {
        JsonNode params = scalar.from().geometry().get("params");
        double b = params.get("B").asDouble();
        double g = params.get("g").asDouble();
        String id = scalar.from().id();
        if (id.equals("F04a")) {
            double largest = 1 / new RollOff(1, b, g).reflectance(1);
            Validation.requireExact(scalar, "one over the reflectance for a = 1", largest, 1e-8);
        } else if (id.equals("F02a")) {
            // Within a cone: what a mirror direction so oblique that only the cone is left would do; here by
            // quadrature.
            RollOff lobe = new RollOff(params.get("A").asDouble(), b, g);
            double reach = params.get("sinMax").asDouble();
            double got = 0;
            for (int i = 0; i < 400; i++) {
                got += Quadrature.panel(
                        d -> 2 * Math.PI * d * lobe.value(1, Math.sqrt(1 - d * d), Math.sqrt(1 - d * d)),
                        reach * i / 400,
                        reach * (i + 1) / 400);
            }
            Validation.requireExact(scalar, "the law over the cone", got, 1e-8 * scalar.value());
        } else {
            double angle = params.has("thetaInDeg") ? params.get("thetaInDeg").asDouble() : 0;
            double got = new RollOff(params.get("A").asDouble(), b, g).reflectance(cosine(angle));
            Validation.requireExact(scalar, "reflectance", got, 1e-8 * scalar.value());
        }
    }

    @Test
    void theQuadratureIsExactForPolynomialsOfDegreeFifteen() {
        for (int degree : List.of(0, 1, 5, 14, 15)) {
            double got = Quadrature.panel(x -> StrictMath.pow(x, degree), 0, 1);
            assertThat(got).as("degree %d", degree).isCloseTo(1.0 / (degree + 1), within(1e-14));
        }
        assertThat(Quadrature.panel(x -> StrictMath.pow(x, 16), 0, 1)).isNotCloseTo(1.0 / 17, within(1e-14));
    }

    /** Halving in three: the least value is 0, so nothing hides how it grows beside it. */
    private static double leastOfP(Fresnel face) {
        double low = 0;
        double high = 90;
        while (high - low > 1e-11) {
            double third = (high - low) / 3;
            if (face.p(cosine(low + third)) < face.p(cosine(high - third))) {
                high -= third;
            } else {
                low += third;
            }
        }
        return (low + high) / 2;
    }

    private static double cosine(double angle) {
        return StrictMath.cos(Math.toRadians(angle));
    }
}
