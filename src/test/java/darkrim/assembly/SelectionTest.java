package darkrim.assembly;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SelectionTest {
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            mosaic/**/edge/*              | mosaic/die[1,2]/edge/+x     | true
            mosaic/**/edge/*              | mosaic/die/edge/-y          | true
            mosaic/**/edge/*              | mosaic/die[1,2]/ledge/+x    | false
            mosaic/**/edge/*              | lid/die/edge/-y             | false
            mosaic/die[1,2]/active        | mosaic/die[1,2]/active      | true
            mosaic/die[1,2]/active        | mosaic/die1/active          | false
            mosaic/die[?,2]/active        | mosaic/die[7,2]/active      | true
            mosaic/die[?,2]/active        | mosaic/die[10,2]/active     | false
            **/active                     | mosaic/die/active           | true
            **/active                     | active                      | true
            **/active                     | mosaic/die/reactive         | false
            **/{pads,ledge}/+x            | mosaic/die/pads/+x          | true
            **/{pads,ledge}/+x            | mosaic/die/ledge/+x         | true
            **/{pads,ledge}/+x            | mosaic/die/edge/+x          | false
            {mosaic/**,lid}/active        | mosaic/die/active           | true
            {**/edge,lid/top}             | lid/top                     | true
            {a,b{c,d}}/x                  | bd/x                        | true
            {a,b{c,d}}/x                  | b/x                         | false
            lid                           | lid/opening[1,2]/land/-y    | true
            lid                           | lid2/top                    | false
            lid                           | lid[1,1]/top                | false
            lid*                          | lid[1,1]/top                | true
            mosaic/**/bonds               | mosaic/die/bonds/+y/top     | true
            mosaic/**/bonds               | mosaic/die/bondsy/top       | false
            li*                           | lid/top                     | true
            l*d/t*                        | lid/top                     | true
            *                             | lid/top                     | true
            **                            | lid/top                     | true
            lid/**                        | lid/opening/land            | true
            lid/*/land                    | lid/opening/land            | true
            lid/*/land                    | lid/opening/a/land          | false
            lid/**/land                   | lid/land                    | true
            stop/front                    | stop/front                  | true
            stop/front                    | stop/frontier               | false
            a.c                           | abc                         | false
            bar/+x                        | bar/+x                      | true
            a,b                           | a,b                         | true
            {m/die[1,2],m/die[2,1]}/edge  | m/die[2,1]/edge/+x          | true
            {m/die[1,2],m/die[2,1]}/edge  | m/die[1,2]/edge/+x          | true
            {m/die[1,2],m/die[2,1]}/edge  | m/die[1/edge/+x             | false
            {a[1,b/c,d}                   | d                           | true
            a**c/d                        | axyc/d                      | true
            """)
    void aPatternSelects(String pattern, String path, boolean selected) {
        assertThat(Selection.of(pattern).selects(path)).isEqualTo(selected);
    }

    @Test
    void aSelectionKeepsTheOrderOfThePaths() {
        assertThat(Selection.of("b*").of(Stream.of("b2/x", "a/x", "b1/x"))).isEqualTo(List.of("b2/x", "b1/x"));
        assertThat(Selection.of("b*")).hasToString("b*");
    }

    @Test
    void bracesThatDoNotMatchAreNamed() {
        assertThatThrownBy(() -> Selection.of("lid/{a,b")).hasMessage("the { at character 5 has no } after it");
        assertThatThrownBy(() -> Selection.of("lid/a}")).hasMessage("the } at character 6 has no { before it");
        assertThatThrownBy(() -> Selection.of("")).hasMessageContaining("from 1 to 1000 characters");
        assertThatThrownBy(() -> Selection.of("a".repeat(1001))).hasMessageContaining("got 1001");
    }

    /** A backtracking engine needs longer than the age of the universe for these. */
    @Test
    void aHostilePatternTakesNoLongerThanItsLengthAllows() {
        String path = "a".repeat(200) + "/" + "a/".repeat(100);
        List<String> hostile = List.of(
                "*a".repeat(400) + "b",
                "**/".repeat(300) + "b",
                "{a,a}".repeat(190) + "b",
                "{a,{a,{a,{a,a*}*}*}*}".repeat(40) + "b",
                "{".repeat(490) + "a" + "}".repeat(490) + "b",
                "**".repeat(490) + "b");
        for (String pattern : hostile) {
            boolean selected = Assertions.assertTimeoutPreemptively(
                    Duration.ofSeconds(5), () -> Selection.of(pattern).selects(path));
            assertThat(selected).as(pattern).isFalse();
        }
    }

    @Test
    void theNearestPathIsTheOneThatNeedsTheFewestEdits() {
        List<String> paths = List.of(
                "mosaic/die[1,1]/active",
                "mosaic/die[1,1]/edge/+x",
                "mosaic/die[1,1]/ledge/+x",
                "lid/top",
                "lid/opening/land/-y");
        assertThat(NearestPath.to("mosaic/**/egde/*", paths)).contains("mosaic/die[1,1]/edge/+x");
        assertThat(NearestPath.to("lidd", paths)).contains("lid");
        assertThat(NearestPath.to("lid/{opning,tip}/land/-y", paths)).contains("lid/opening/land/-y");
        assertThat(NearestPath.to("**/activ?s", paths)).contains("mosaic/die[1,1]/active");
        assertThat(NearestPath.to("mosaik", paths)).contains("mosaic");
        assertThat(NearestPath.to("x", List.of())).isEmpty();
    }
}
