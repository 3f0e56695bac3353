package darkrim.reference;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** The reader drops no case. */
class ReferenceCasesTest {
    @Test
    void allCasesAreRead() {
        assertThat(ReferenceCases.all()).hasSize(155);
        assertThat(ReferenceCases.family("A")).hasSize(48);
        assertThat(ReferenceCases.family("B")).hasSize(10);
        assertThat(ReferenceCases.family("J")).hasSize(6);
        assertThat(ReferenceCases.byId("B02a").values()).hasSize(7);
        assertThat(ReferenceCases.byId("B02a").receiverPoints()).hasSize(7);
        assertThat(ReferenceCases.all()).allSatisfy(each -> {
            assertThat(each.values()).isNotEmpty().doesNotContain(Double.NaN);
            assertThat(each.source()).isNotBlank();
        });
    }
}
