package darkrim.material;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.reference.ReferenceCases;
import darkrim.reference.ReferenceScalar;
import darkrim.reference.Validation;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tools.jackson.databind.JsonNode;

/** How materials contract (family G). Nothing is sampled. */
@ExtendWith(Validation.class)
class ReferenceContractionTest {
    private static final Map<String, String> NAMES = Map.of(
            "Al 6061-T6", "aluminium-6061",
            "Invar 36 (Fe-36Ni)", "invar-36",
            "Ti-6Al-4V", "titanium-6al-4v",
            "Stainless 304", "stainless-304",
            "Stainless 316", "stainless-316",
            "OFHC copper", "copper",
            "Molybdenum", "molybdenum",
            "Silicon", "silicon");

    static Stream<ReferenceScalar> contractions() {
        return ofKind("contraction");
    }

    static Stream<ReferenceScalar> bars() {
        return ofKind("assembly");
    }

    private static Stream<ReferenceScalar> ofKind(String kind) {
        return ReferenceScalar.family("G").filter(each -> each.from().kind().equals(kind));
    }

    private static Contraction of(JsonNode reference) {
        return MaterialLibrary.of(NAMES.get(reference.asString())).orElseThrow().contraction();
    }

    @Test
    void everyCaseIsRun() {
        assertThat(ReferenceCases.family("G")).hasSize(13);
        assertThat(Stream.concat(contractions(), bars()))
                .containsExactlyInAnyOrderElementsOf(ReferenceScalar.family("G").toList());
    }

    /** Published fits to 1e-9 of the same coefficients; copper to 1e-6 of an integral; handbook figures as they stand. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("contractions")
    void theContractionIsThatOfTheReferenceCase(ReferenceScalar scalar) {
        JsonNode params = scalar.from().geometry().get("params");
        JsonNode temperatures = params.get("T_K");
        double kelvin =
                temperatures.isArray() ? temperatures.get(scalar.index()).asDouble() : temperatures.asDouble();
        Contraction contraction = of(params.get("material"));
        double share = scalar.id().startsWith("G06") ? 1e-6 : 1e-9;
        Validation.requireExact(scalar, "material of the program", contraction.at(kelvin), share * scalar.value());
        assertThat(contraction.between(Contraction.REFERENCE, kelvin)).isEqualTo(contraction.at(kelvin));
    }

    /** How much two bars shrink, the difference, and how far each end moves if they are fixed at the middle. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("bars")
    void twoBarsMoveAsTheReferenceSays(ReferenceScalar scalar) {
        JsonNode params = scalar.from().geometry().get("params");
        double length = params.get("length").asDouble();
        double kelvin = params.get("T_K").asDouble();
        double baffle = length * of(params.get("baffle")).between(293, kelvin);
        double plate = length * of(params.get("plate")).between(293, kelvin);
        List<Double> found = List.of(baffle, plate, baffle - plate, (baffle - plate) / 2);
        Validation.requireExact(scalar, "materials of the program", found.get(scalar.index()), 1e-6);
    }
}
