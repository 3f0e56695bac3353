package darkrim.reference;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** docs/validation.md as a whole: what its sections, each held by its own test, leave open. */
class ValidationPageTest {
    /** Run the tests that the page names with {@code -Dwrite.docs=true} where this fails. */
    @Test
    void thePageHasEverySectionInOrderAndCountsItsRows() throws Exception {
        String page = Files.readString(ValidationPage.PAGE);
        assertThat(page).isEqualTo(ValidationPage.current());
        assertThat(Stream.of(ValidationPage.Section.values()))
                .allSatisfy(section -> assertThat(ValidationPage.rows(section))
                        .as("%s", section)
                        .isNotEmpty());
    }

    /** No case with a known answer is left out, and no row is of a case that is no longer there. */
    @Test
    void everyCaseWithAKnownAnswerStandsOnIt() throws Exception {
        Set<String> cases = "ABCDEFGHIJ"
                .chars()
                .mapToObj(letter -> String.valueOf((char) letter))
                .flatMap(letter -> ReferenceCases.family(letter).stream())
                .map(ReferenceCase::id)
                .collect(Collectors.toSet());
        Set<String> shown = Stream.of(ValidationPage.Section.values())
                .flatMap(section -> ValidationPage.rows(section).stream())
                .map(row -> row.substring(2, row.indexOf(" |")))
                .filter(id -> id.matches("[A-J]\\d\\d[^ ]*"))
                .map(id -> id.replaceAll("\\[\\d+]$", ""))
                .collect(Collectors.toSet());
        assertThat(shown).isEqualTo(cases);
    }
}
