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
        String name = "mosaic/die[1,2]/carrier/side/+x";
        assertThat(Printable.within(31, name)).isEqualTo(name);
        assertThat(Printable.within(20, name))
                .hasSize(20)
                .startsWith("mosaic/d")
                .endsWith("/side/+x")
                .contains("...");
    }
}
