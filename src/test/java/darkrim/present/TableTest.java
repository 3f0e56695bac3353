package darkrim.present;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.verdict.Verdict;
import org.junit.jupiter.api.Test;

class TableTest {
    @Test
    void wordsStandLeftAndNumbersRight() {
        Table table = new Table().words("name").numbers("value");
        table.row("a", "1");
        table.row("longer", "12.5");
        assertThat(table.text().lines().map(String::stripTrailing))
                .containsExactly("name    value", "--------------", "a           1", "longer   12.5");
    }

    @Test
    void colourDoesNotMoveColumns() {
        String plain = verdicts(Ink.PLAIN);
        String coloured = verdicts(Ink.COLOUR);
        assertThat(coloured).isNotEqualTo(plain);
        assertThat(coloured.replaceAll("\u001b\\[[0-9;]*m", "")).isEqualTo(plain);
    }

    @Test
    void onlyNamesAreShortenedAndOnlyWhereTheyMust() {
        String name = "x".repeat(40) + "/middle/" + "y".repeat(40);
        Table wide = new Table().names("name").words("words");
        wide.row(name, "short");
        assertThat(wide.text()).contains(name);

        Table narrow = new Table().names("name").words("words");
        String words = "w".repeat(50);
        narrow.row(name, words);
        assertThat(narrow.text()).contains(words).contains("...").doesNotContain(name);
        assertThat(narrow.text().lines()).allMatch(line -> line.stripTrailing().length() <= Page.WIDTH);
    }

    @Test
    void namesThatDifferNeverReadAlike() {
        Table table = new Table().names("name").words("words");
        String same = "n".repeat(30);
        table.row(same + "one" + same, "w".repeat(90));
        table.row(same + "two" + same, "");
        assertThat(table.text()).contains("one").contains("two");
    }

    private static String verdicts(Ink ink) {
        Table table = new Table().words("verdict", ink::cell).words("what");
        for (Verdict verdict : Verdict.values()) {
            table.row(verdict.name(), "FAIL is a word here");
        }
        return table.text();
    }
}
