package darkrim.diagnostic;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Findings come all at once, in the order of the file, each with its place. */
class FindingsTest {
    @Test
    void findingsAreSortedByFileLineAndColumn() {
        Findings findings = new Findings();
        findings.error("d", new Place("b.yaml", 1, 1), "4");
        findings.error("c", new Place("a.yaml", 10, 2), "3");
        findings.warning("b", new Place("a.yaml", 9, 12), "2");
        findings.error("a", new Place("a.yaml", 9, 3), "1");
        assertThat(findings.sorted()).extracting(Finding::message).containsExactly("1", "2", "3", "4");
    }

    @Test
    void ofFindingsAtOnePlaceTheFirstComesFirstAndEqualOnesComeOnce() {
        Findings findings = new Findings();
        Place place = new Place("a.yaml", 1, 1);
        findings.error("z", place, "first");
        findings.error("a", place, "second");
        findings.addAll(List.of(Finding.error("z", place, "first"), Finding.warning("z", place, "first")));
        assertThat(findings.sorted()).hasSize(3);
        assertThat(findings.sorted().get(0).message()).isEqualTo("first");
        assertThat(findings.sorted().get(1).message()).isEqualTo("second");
    }

    @Test
    void warningsAloneDoNotStopTheReading() {
        Findings findings = new Findings();
        assertThatCode(findings::throwIfErrors).doesNotThrowAnyException();
        findings.warning("w", Place.IN_CODE, "doubtful");
        assertThat(findings.hasErrors()).isFalse();
        assertThatCode(findings::throwIfErrors).doesNotThrowAnyException();
    }

    @Test
    void anErrorStopsTheReadingWithEveryFinding() {
        Findings findings = new Findings();
        findings.warning("odd-name", new Place("a.yaml", 2, 1), "odd");
        findings.error("unknown-key", new Place("a.yaml", 1, 5), "no key");
        assertThatThrownBy(findings::throwIfErrors)
                .isInstanceOf(UnusableInput.class)
                .hasMessage("a.yaml:1:5: no key [unknown-key]\na.yaml:2:1: warning: odd [odd-name]")
                .satisfies(thrown ->
                        assertThat(((UnusableInput) thrown).findings()).hasSize(2));
    }

    @Test
    void aPlaceWithoutALineIsItsFile() {
        assertThat(Place.IN_CODE).hasToString("<code>");
        assertThat(new Place("a.yaml", 3, 4)).hasToString("a.yaml:3:4");
    }
}
