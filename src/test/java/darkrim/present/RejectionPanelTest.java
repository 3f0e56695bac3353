package darkrim.present;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.layout.LayoutReader;
import darkrim.scene.DistantBody;
import darkrim.study.rejection.OrderLight;
import darkrim.study.rejection.OrderLight.Evidence;
import darkrim.study.rejection.RejectionPoint;
import darkrim.study.rejection.RejectionResult;
import darkrim.study.rejection.RejectionSettings;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Looks at the pixels of a panel 1008 px wide and 420 px high: its lowest line lies 52 px above its lower end, its legend in the last 160 px. */
class RejectionPanelTest {
    private static final int WIDE = 1008;
    private static final int HIGH = 420;
    private static final int LOWEST = HIGH - 52;
    private static final int LEGEND = WIDE - 160;

    private static BufferedImage panel(List<OrderLight> orders) {
        var reading = LayoutReader.read("sheet.yaml", """
                title: Sheet
                beam: {pupil: {shape: disc, diameter: 30, distance: 320}}
                parts: {sheet: {kind: rectangle, width: 10, depth: 10}}
                requirements: {dark: {surfaces: "sheet/back", direct: none}}
                """.getBytes(StandardCharsets.UTF_8));
        RejectionSettings settings = new RejectionSettings(
                Optional.empty(),
                new DistantBody(0, 0, 0.53, Optional.empty()),
                OptionalDouble.empty(),
                List.of(5.0, 10.0),
                List.of(0.0),
                "sheet/front",
                orders.size() - 1,
                8);
        RejectionResult result = new RejectionResult(
                reading.layout().orElseThrow(),
                settings,
                1,
                0.999,
                List.of(),
                List.of(new RejectionPoint(0, 5, orders), new RejectionPoint(0, 10, orders)),
                false,
                false,
                List.of());
        BufferedImage image = new BufferedImage(WIDE, HIGH, BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = image.createGraphics();
        graphics.setColor(Color.WHITE);
        graphics.fillRect(0, 0, WIDE, HIGH);
        new RejectionPanel(result, 0).paint(graphics, WIDE, HIGH);
        graphics.dispose();
        return image;
    }

    private static OrderLight sampled(int order, double value) {
        return new OrderLight(order, Evidence.SAMPLED, value, 0.2 * value, 2 * value);
    }

    /** Pixels of the mark of an order, between two heights and left of the legend. */
    private static long marked(BufferedImage image, int order, int from, int to) {
        int colour = legend(image, order)[6 * 12 + 6];
        return IntStream.range(from, to)
                .mapToLong(y -> IntStream.range(0, LEGEND)
                        .filter(x -> image.getRGB(x, y) == colour)
                        .count())
                .sum();
    }

    /** The mark of an order in the legend, 12 px high and wide. */
    private static int[] legend(BufferedImage image, int order) {
        return image.getRGB(LEGEND + 20 - 6, 34 + 8 + 22 * order - 6, 12, 12, null, 0, 12);
    }

    /** Dark walls: the fourth order and the fifth lie below the twelve decades that are drawn. */
    @Test
    void whatWasFoundBelowTheScaleIsNotDrawnAsProved() {
        BufferedImage image = panel(List.of(
                sampled(0, 0.9),
                new OrderLight(1, Evidence.PROVED, 0, 0, 0),
                sampled(2, 1e-6),
                sampled(3, 1e-9),
                sampled(4, 5.1e-13),
                sampled(5, 2.7e-15)));
        for (int order : new int[] {4, 5}) {
            assertThat(marked(image, order, LOWEST - 8, LOWEST + 8))
                    .as("order %d", order)
                    .isZero();
            assertThat(marked(image, order, LOWEST - 35, LOWEST - 8))
                    .as("order %d", order)
                    .isPositive();
        }
        long filled = marked(image, 1, LOWEST - 8, LOWEST + 8);
        assertThat(filled).isGreaterThan(2 * 40);
        assertThat(marked(image, 1, 0, LOWEST - 8)).isZero();
        // Open: an outline only.
        assertThat(marked(image, 4, LOWEST - 35, LOWEST - 8)).isLessThan(filled);
    }

    /** An arrow down from a bound ends above the lowest line, however small the bound is. */
    @Test
    void norIsABound() {
        BufferedImage image = panel(List.of(
                sampled(0, 0.9),
                new OrderLight(1, Evidence.PROVED, 0, 0, 0),
                new OrderLight(2, Evidence.NONE_FOUND, 0, 0, 1e-14)));
        assertThat(marked(image, 2, LOWEST - 8, LOWEST + 8)).isZero();
        assertThat(marked(image, 2, 0, LOWEST - 8)).isPositive();
    }

    /** The angle of a single proved mark is read off its middle: the ticks of 5 and 10 deg lie 3 % of 5 deg from the borders. */
    @Test
    void aProvedMarkStandsAtItsAngle() {
        List<OrderLight> orders = new ArrayList<>(IntStream.rangeClosed(0, 8)
                .mapToObj(order -> sampled(order, 0.1))
                .toList());
        orders.set(0, new OrderLight(0, Evidence.PROVED, 0, 0, 0));
        BufferedImage image = panel(orders);
        int colour = legend(image, 0)[6 * 12 + 6];
        double at = 90 + 0.03 / 1.06 * (LEGEND - 90);
        double middle = IntStream.range(0, LEGEND / 2)
                .filter(x -> image.getRGB(x, LOWEST - 2) == colour)
                .average()
                .orElseThrow();
        assertThat(middle).isCloseTo(at, within(1.0));
    }

    @Test
    void everyOrderThatCanBeAskedForHasItsOwnMark() {
        BufferedImage image = panel(IntStream.rangeClosed(0, 8)
                .mapToObj(order -> sampled(order, 0.1))
                .toList());
        Set<Integer> colours = new HashSet<>();
        Set<String> shapes = new HashSet<>();
        for (int order = 0; order <= 8; order++) {
            int[] pixels = legend(image, order);
            colours.add(pixels[6 * 12 + 6]);
            shapes.add(Arrays.toString(
                    Arrays.stream(pixels).map(each -> each == -1 ? 0 : 1).toArray()));
        }
        assertThat(colours).hasSize(9);
        assertThat(shapes).hasSize(9);
    }
}
