package darkrim.present;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.study.tolerance.LoosestFactor;
import darkrim.study.tolerance.LoosestFactors;
import darkrim.study.tolerance.YieldInterval;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class LoosestSectionTest {
    /** As found on a layout that fails as drawn: the interval is of no build. */
    @Test
    void whereNoFactorWasFoundItStillNamesTheBuildsLookedAt() {
        LoosestFactor none =
                new LoosestFactor(0, Double.POSITIVE_INFINITY, 0.9, 4, new YieldInterval(0, 0, 0, 0, 1, 0.999), false);
        Page page = new Page();
        LoosestSection.write(page, new LoosestFactors(none, Optional.empty()), 40);
        assertThat(page.text().replaceAll("\\s+", " "))
                .contains("no factor was found with which 90 % of these 40 builds pass")
                .contains("even if all 40 builds passed they would not prove 90 %");
    }
}
