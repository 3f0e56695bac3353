package darkrim.present.drawing;

import java.util.Collection;
import java.util.List;
import java.util.Locale;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/** The text of a DXF file of release 12 while it is written: pairs of a group code and a value, a line each. */
final class DxfText {
    /** Longest name of a layer in release 12. */
    private static final int LONGEST = 31;

    private final StringBuilder text = new StringBuilder();

    /** A name for a layer of which all programs read every letter, and which no other layer has. */
    static String layer(String wanted, Collection<String> others) {
        String plain = wanted.toUpperCase(Locale.ROOT).replaceAll("[^A-Z0-9_$-]", "_");
        String name = plain.substring(0, Math.min(LONGEST, plain.length()));
        for (int number = 2; others.contains(name); number++) {
            String end = "-" + number;
            name = plain.substring(0, Math.min(LONGEST - end.length(), plain.length())) + end;
        }
        return name;
    }

    void header(double[] bounds) {
        pair(999, "Darkrim section, mm");
        section("HEADER");
        pair(9, "$ACADVER");
        pair(1, "AC1009");
        pair(9, "$EXTMIN");
        corner(bounds[0], bounds[1]);
        pair(9, "$EXTMAX");
        corner(bounds[2], bounds[3]);
        endSection();
        section("TABLES");
    }

    private void corner(double x, double y) {
        pair(10, number(x));
        pair(20, number(y));
        pair(30, "0.0");
    }

    void lineTypes() {
        table("LTYPE", 3);
        lineType("CONTINUOUS", "Solid line");
        lineType("DASHED", "__ __ __", 1.0, -0.5);
        lineType("DASHDOT", "__ . __ .", 2.0, -0.5, 0.0, -0.5);
        pair(0, "ENDTAB");
    }

    private void lineType(String name, String description, double... pattern) {
        double length = 0;
        for (double part : pattern) {
            length += Math.abs(part);
        }
        pair(0, "LTYPE");
        pair(2, name);
        pair(70, "0");
        pair(3, description);
        pair(72, "65");
        pair(73, String.valueOf(pattern.length));
        pair(40, number(length));
        for (double part : pattern) {
            pair(49, number(part));
        }
    }

    void beginLayers(int count) {
        table("LAYER", count);
    }

    void layer(String name, int colour, String lineType) {
        pair(0, "LAYER");
        pair(2, name);
        pair(70, "0");
        pair(62, String.valueOf(colour));
        pair(6, lineType);
    }

    void endLayers() {
        pair(0, "ENDTAB");
        endSection();
    }

    void beginEntities() {
        section("ENTITIES");
    }

    void polyline(String layer, List<Vector2D> points, boolean closed) {
        pair(0, "POLYLINE");
        pair(8, layer);
        pair(66, "1");
        corner(0, 0);
        pair(70, closed ? "1" : "0");
        for (Vector2D point : points) {
            pair(0, "VERTEX");
            pair(8, layer);
            corner(point.getX(), point.getY());
        }
        pair(0, "SEQEND");
        pair(8, layer);
    }

    void line(String layer, Vector2D from, Vector2D to) {
        pair(0, "LINE");
        pair(8, layer);
        corner(from.getX(), from.getY());
        pair(11, number(to.getX()));
        pair(21, number(to.getY()));
        pair(31, "0.0");
    }

    void point(String layer, Vector2D at) {
        pair(0, "POINT");
        pair(8, layer);
        corner(at.getX(), at.getY());
    }

    /** Words from a place to the right. What is not ASCII becomes a question mark; signs that the format takes for its own are parted. */
    void text(String layer, Vector2D at, double height, String words) {
        pair(0, "TEXT");
        pair(8, layer);
        corner(at.getX(), at.getY());
        pair(40, number(height));
        pair(1, words.replaceAll("[^\\x20-\\x7e]", "?").replace("%%", "% %").replace("^", "^ "));
    }

    String end() {
        endSection();
        pair(0, "EOF");
        return text.toString();
    }

    private void section(String name) {
        pair(0, "SECTION");
        pair(2, name);
    }

    private void endSection() {
        pair(0, "ENDSEC");
    }

    private void table(String name, int count) {
        pair(0, "TABLE");
        pair(2, name);
        pair(70, String.valueOf(count));
    }

    private void pair(int code, String value) {
        text.append(String.format(Locale.ROOT, "%3d", code))
                .append('\n')
                .append(value)
                .append('\n');
    }

    private static String number(double value) {
        return Double.toString(value + 0.0);
    }
}
