package darkrim.present;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class PrintableTest {
    @Test
    void whatActsOnATerminalIsShownAsAQuestionMark() {
        assertThat(Printable.of("a\u001b[31mred\u0007\r\nb\u202ec")).isEqualTo("a?[31mred???b?c");
    }

    @Test
    void lettersOfAnyLanguageStay() {
        assertThat(Printable.of("Schutzkappe f\u00fcr M\u00f6we")).isEqualTo("Schutzkappe f\u00fcr M\u00f6we");
    }

    @Test
    void aLongNameKeepsItsBeginningAndItsEnd() {
        String name = "the-longest-name-of-all/inner";
        assertThat(Printable.within(29, name)).isEqualTo(name);
        assertThat(Printable.within(20, name))
                .hasSize(20)
                .startsWith("the-long")
                .endsWith("ll/inner")
                .contains("...");
    }

    @Test
    void aShortenedNameKeepsTheNumbersOfItsPartAndItsSide() {
        assertThat(Printable.within(22, "mosaic/die[2,1]/underfill/-y")).isEqualTo("mosaic/die[2,1]...l/-y");
        assertThat(Printable.within(24, "mosaic/die[1,12]/carrier/top/-x")).isEqualTo("mosaic/die[1,12]...op/-x");
        assertThat(Printable.within(20, "mosaic/part-of-many/die[2,1]/edge")).isEqualTo("mosaic/...[2,1]/edge");
        // No room for both.
        assertThat(Printable.within(10, "mosaic/die[2,1]/underfill/-y"))
                .hasSize(10)
                .contains("...");
    }
}
