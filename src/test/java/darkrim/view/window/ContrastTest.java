package darkrim.view.window;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.present.picture.VerdictMark;
import darkrim.verdict.Verdict;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javafx.scene.paint.Color;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** All text of the window stands out from what is behind it by at least 4.5 : 1, as Web Content Accessibility Guidelines 2.1, 1.4.3, reckon it. */
class ContrastTest {
    private static final double LEAST = 4.5;
    private static final Pattern RULE = Pattern.compile("([^{}]+)\\{([^}]*)}");
    private static final Pattern SELECTOR = Pattern.compile("[^,]+");
    private static final Pattern DECLARATION = Pattern.compile("([\\w-]+)\\s*:([^;]+)");
    /** What plain text stands on: pages, lines over and under the view, banners, dialogs and fields. */
    private static final List<String> GROUNDS =
            List.of(".side", ".status", ".side-title", ".side-row", ".side-switch", ".banner-note");

    private static final Map<String, Map<String, String>> STYLES = styles();

    private record Pair(String name, Color text, Color ground) {
        private double ratio() {
            double one = luminance(text);
            double two = luminance(ground);
            return (Math.max(one, two) + 0.05) / (Math.min(one, two) + 0.05);
        }

        private static double luminance(Color colour) {
            return 0.2126 * linear(colour.getRed())
                    + 0.7152 * linear(colour.getGreen())
                    + 0.0722 * linear(colour.getBlue());
        }

        private static double linear(double share) {
            return share <= 0.03928 ? share / 12.92 : Math.pow((share + 0.055) / 1.055, 2.4);
        }
    }

    private static Map<String, Map<String, String>> styles() {
        try (var stream = ViewerWindow.class.getResourceAsStream("window.css")) {
            Map<String, Map<String, String>> styles = new LinkedHashMap<>();
            Matcher rule = RULE.matcher(new String(stream.readAllBytes(), StandardCharsets.UTF_8));
            while (rule.find()) {
                Matcher selector = SELECTOR.matcher(rule.group(1));
                while (selector.find()) {
                    Map<String, String> style =
                            styles.computeIfAbsent(selector.group().strip(), each -> new LinkedHashMap<>());
                    Matcher declaration = DECLARATION.matcher(rule.group(2));
                    while (declaration.find()) {
                        style.put(declaration.group(1), declaration.group(2).strip());
                    }
                }
            }
            return styles;
        } catch (IOException unreadable) {
            throw new AssertionError(unreadable);
        }
    }

    private static Color colour(String selector, String property) {
        return Color.web(STYLES.get(selector).get(property));
    }

    /** What is seen of a colour that lets something through. */
    private static Color over(Color colour, Color behind) {
        return behind.interpolate(
                Color.color(colour.getRed(), colour.getGreen(), colour.getBlue()), colour.getOpacity());
    }

    private static Stream<Pair> plain() {
        return STYLES.entrySet().stream()
                .filter(style -> style.getValue().containsKey("-fx-text-fill"))
                .filter(style -> !List.of(".badge", ".plate", ".banner-error .label", ".menu-item:focused .label")
                        .contains(style.getKey()))
                .flatMap(style -> Stream.concat(
                        Stream.of(new Pair(
                                style.getKey() + " on white", colour(style.getKey(), "-fx-text-fill"), Color.WHITE)),
                        GROUNDS.stream()
                                .map(ground -> new Pair(
                                        style.getKey() + " on " + ground,
                                        colour(style.getKey(), "-fx-text-fill"),
                                        colour(ground, "-fx-background-color")))));
    }

    private static Stream<Pair> special() {
        Color badge = colour(".badge", "-fx-text-fill");
        Color letter = Palette.colour(VerdictMark.LETTER);
        Stream<Pair> badges = STYLES.keySet().stream()
                .filter(selector -> selector.startsWith(".badge-"))
                .map(selector -> new Pair(selector, badge, colour(selector, "-fx-background-color")));
        Stream<Pair> letters = Stream.of(Verdict.values())
                .map(verdict -> new Pair(
                        "letter of " + verdict,
                        letter,
                        Palette.colour(VerdictMark.of(verdict).argb())));
        return Stream.of(
                        badges,
                        letters,
                        Stream.of(
                                new Pair("letter of before", letter, Palette.colour(SceneView.OUTDATED)),
                                new Pair(
                                        "error",
                                        colour(".banner-error .label", "-fx-text-fill"),
                                        colour(".banner-error", "-fx-background-color")),
                                new Pair("prompt", colour(".text-input", "-fx-prompt-text-fill"), Color.WHITE),
                                new Pair("selected line", Color.WHITE, colour(".root", "-fx-accent")),
                                new Pair(
                                        "chosen line of a menu",
                                        colour(".menu-item:focused .label", "-fx-text-fill"),
                                        colour(".root", "-fx-accent")),
                                new Pair(
                                        "name under the mouse",
                                        colour(".plate", "-fx-text-fill"),
                                        over(colour(".plate", "-fx-background-color"), Color.WHITE)),
                                new Pair("words over the parts", Overlay.INK, SceneView.BACKGROUND),
                                new Pair("scale", Overlay.INK, ScaleBar.GROUND)))
                .flatMap(each -> each);
    }

    @TestFactory
    Stream<DynamicTest> textStandsOutFromWhatIsBehindIt() {
        List<Pair> pairs = Stream.concat(plain(), special()).toList();
        assertThat(pairs).hasSizeGreaterThan(40);
        return pairs.stream()
                .map(pair -> DynamicTest.dynamicTest(
                        pair.name(),
                        () -> assertThat(pair.ratio()).as(pair.name()).isGreaterThanOrEqualTo(LEAST)));
    }
}
