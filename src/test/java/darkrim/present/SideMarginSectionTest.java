package darkrim.present;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.shadow.OpeningMargin.Room;
import org.junit.jupiter.api.Test;

/** What is said of the room beside an opening. */
class SideMarginSectionTest {
    @Test
    void aBoundThatIsUsedUpByThePlacementErrorIsNotCalledARoomThatIsBroken() {
        Room bound = new Room(0.076, true, "mosaic/die/edge/+x");
        assertThat(SideMarginSection.words(bound, 0)).isEqualTo(">= 0.076");
        assertThat(SideMarginSection.words(bound, 0.05)).isEqualTo(">= 0.026");
        assertThat(SideMarginSection.words(bound, 0.1)).isEqualTo("not known");
        assertThat(SideMarginSection.words(new Room(0.1, true, ""), 0.1)).isEqualTo(">= 0.000");
        Room known = new Room(0.076, false, "mosaic/die/edge/+x");
        assertThat(SideMarginSection.words(known, 0.1)).isEqualTo("-0.024");
    }

    @Test
    void whatIsNegativeBeforeStaysANumber() {
        assertThat(SideMarginSection.words(new Room(-0.2, false, "a"), 0.1)).isEqualTo("-0.300");
        assertThat(SideMarginSection.words(new Room(-0.2, true, "a"), 0.1)).isEqualTo("not known");
    }
}
