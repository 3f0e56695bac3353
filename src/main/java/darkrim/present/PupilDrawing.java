package darkrim.present;

import darkrim.geom.Frame;
import darkrim.study.PointSight;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * A drawing of what a point sees of the pupil: the outline of the pupil in its own plane, to scale, what is seen filled, what is hidden
 * hatched, what no light comes from dotted. SVG without references to anything outside.
 *
 * @param version version of the program
 */
public record PupilDrawing(String version) {
    private static final double WIDTH = 700;
    private static final double LEFT = 120;
    private static final double TOP = 128;
    private static final double SIDE = 500;
    private static final double LINE = 19;
    private static final int MOST_NAMES = 4;
    /** Characters that fit into a line of small and of large letters. */
    private static final int SMALL_LINE = 84;

    private static final int LARGE_LINE = 60;
    private static final String SEEN = "#f5c542";

    /** The drawing as text. */
    public String of(PointSight sight) {
        double seen = sight.exactShare();
        double lit = sight.withoutParts().areaFraction();
        boolean limited = !SightWords.isWhole(lit);
        List<BlockerSection.Hidden> hidden = BlockerSection.hidden(sight);
        int names = Math.min(MOST_NAMES, hidden.size());
        double legend = TOP + SIDE + 74;
        double height = legend + LINE * (2 + (limited ? 1 : 0) + names + (names > 0 ? 1 : 0)) + 40;
        PlotAxes axes = PlotAxes.around(sight.scene().beam().pupil().outline(), LEFT, TOP, SIDE);
        Svg svg = new Svg(WIDTH, height);
        svg.words("title", SightWords.place(sight.at()) + " " + SightWords.verdict(seen));
        patterns(svg, axes.scale());
        svg.shape("rect", "width", "100%", "height", "100%", "fill", "white");
        head(svg, sight, seen);
        pupil(svg, sight, axes, limited);
        Frame frame = sight.scene().beam().pupil().frame();
        axes.write(svg, axis("x", frame.u()), axis("y", frame.v().negate()));
        double y = legend;
        swatch(svg, y, SEEN, "seen: " + SightWords.percent(seen));
        y += LINE;
        swatch(svg, y, "url(#hatch-page)", "hidden by parts: " + SightWords.percent(Math.max(0, lit - seen)));
        y += LINE;
        if (limited) {
            swatch(svg, y, "url(#dots-page)", SightWords.unlit(sight) + ": " + SightWords.percent(1 - lit));
            y += LINE;
        }
        if (names > 0) {
            small(svg, LEFT - 60, y + 12, "First in the way, of all of the pupil (sampled):");
            y += LINE;
        }
        for (BlockerSection.Hidden one : hidden.subList(0, names)) {
            String words = Figures.percent(one.share().mean()) + "  " + one.name();
            small(svg, LEFT - 40, y + 12, Printable.within(SMALL_LINE - 8, words));
            y += LINE;
        }
        small(
                svg,
                24,
                height - 14,
                Printable.within(
                        SMALL_LINE,
                        "Darkrim " + version + ", " + sight.layout().source().name()));
        return svg.end();
    }

    private static void patterns(Svg svg, double scale) {
        svg.open("defs");
        // One of each for the plot, whose unit is a millimetre, and one for the legend.
        hatch(svg, "hatch", 1 / scale);
        hatch(svg, "hatch-page", 1);
        dots(svg, "dots", 1 / scale);
        dots(svg, "dots-page", 1);
        svg.close();
    }

    private static void hatch(Svg svg, String id, double pixel) {
        String size = Svg.number(7 * pixel);
        svg.open(
                "pattern",
                "id",
                id,
                "width",
                size,
                "height",
                size,
                "patternUnits",
                "userSpaceOnUse",
                "patternTransform",
                "rotate(45)");
        svg.shape("rect", "width", size, "height", size, "fill", "#ffffff");
        svg.shape("rect", "width", Svg.number(1.6 * pixel), "height", size, "fill", "#555555");
        svg.close();
    }

    private static void dots(Svg svg, String id, double pixel) {
        String size = Svg.number(8 * pixel);
        String middle = Svg.number(4 * pixel);
        svg.open("pattern", "id", id, "width", size, "height", size, "patternUnits", "userSpaceOnUse");
        svg.shape("rect", "width", size, "height", size, "fill", "#ffffff");
        svg.shape("circle", "cx", middle, "cy", middle, "r", Svg.number(1.2 * pixel), "fill", "#555555");
        svg.close();
    }

    private static void head(Svg svg, PointSight sight, double seen) {
        svg.words(
                "text",
                Printable.within(LARGE_LINE, LayoutWords.title(sight.layout())),
                "x",
                "24",
                "y",
                "34",
                "font-size",
                "17",
                "font-weight",
                "bold");
        svg.words(
                "text",
                Printable.within(LARGE_LINE + 10, SightWords.place(sight.at())),
                "x",
                "24",
                "y",
                "60",
                "font-size",
                "15");
        small(svg, 24, 80, "point " + SightWords.position(sight.at()));
        svg.words("text", SightWords.verdict(seen), "x", "24", "y", "106", "font-size", "17", "font-weight", "bold");
    }

    private static void pupil(Svg svg, PointSight sight, PlotAxes axes, boolean limited) {
        String outline = PupilPaths.of(sight.scene().beam().pupil().outline());
        String thin = Svg.number(0.4 / axes.scale());
        svg.open("g", "transform", axes.transform());
        fill(svg, "pupil", outline, limited ? "url(#dots)" : "url(#hatch)");
        String lit = PupilPaths.of(sight.withoutParts().rims());
        if (limited && !lit.isEmpty()) {
            fill(svg, "lit", lit, "url(#hatch)");
        }
        String seen = sight.view().isNone() ? "" : PupilPaths.of(sight.view().rims());
        if (!seen.isEmpty()) {
            // The thin line hides the seams between pieces that touch.
            fill(svg, "seen", seen, SEEN, "stroke", SEEN, "stroke-width", thin);
        }
        svg.shape(
                "path",
                "d",
                outline,
                "fill",
                "none",
                "stroke",
                "black",
                "stroke-width",
                Svg.number(1.6 / axes.scale()));
        svg.close();
    }

    private static void fill(Svg svg, String id, String path, String fill, String... more) {
        String[] pairs = new String[8 + more.length];
        String[] first = {"id", id, "d", path, "fill", fill, "fill-rule", "evenodd"};
        System.arraycopy(first, 0, pairs, 0, first.length);
        System.arraycopy(more, 0, pairs, first.length, more.length);
        svg.shape("path", pairs);
    }

    private static void swatch(Svg svg, double y, String fill, String words) {
        svg.shape(
                "rect",
                "x",
                Svg.number(LEFT - 60),
                "y",
                Svg.number(y),
                "width",
                "28",
                "height",
                "14",
                "fill",
                fill,
                "stroke",
                "black");
        small(svg, LEFT - 24, y + 12, words);
    }

    private static void small(Svg svg, double x, double y, String words) {
        svg.words("text", words, "x", Svg.number(x), "y", Svg.number(y), "font-size", "13");
    }

    /** Such as {@code x, mm}; of a tilted pupil the axis is tilted with it. */
    private static String axis(String name, Vector3D direction) {
        Vector3D untilted = name.equals("x") ? Vector3D.Unit.PLUS_X : Vector3D.Unit.PLUS_Y;
        return direction.distance(untilted) < 1e-9
                ? name + " in the plane of the pupil, mm"
                : name + " in the plane of the pupil, tilted with it, mm";
    }
}
