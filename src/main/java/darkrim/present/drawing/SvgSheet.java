package darkrim.present.drawing;

import java.io.StringWriter;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.stream.Collectors;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/**
 * Writes a sheet as SVG 1.1, true to scale: a unit is a millimetre of paper. Refers to nothing outside itself; the library escapes every text.
 */
public final class SvgSheet {
    private static final int DECIMALS = 4;

    /** Width of a space in Helvetica and letters like it, in heights of the letters. */
    private static final double SPACE = 0.278;

    private final StringWriter text = new StringWriter();
    private final XMLStreamWriter xml;
    private int clips;

    private SvgSheet() throws XMLStreamException {
        xml = XMLOutputFactory.newDefaultFactory().createXMLStreamWriter(text);
    }

    /**
     * The sheet as text.
     *
     * @param sheet the sheet
     * @param title its title, for readers that show one
     */
    public static String of(SectionSheet sheet, String title) {
        try {
            return new SvgSheet().written(sheet, title);
        } catch (XMLStreamException impossible) {
            throw new IllegalStateException("writing to memory failed", impossible);
        }
    }

    private String written(SectionSheet sheet, String title) throws XMLStreamException {
        String width = number(SectionSheet.WIDTH);
        String height = number(SectionSheet.HEIGHT);
        xml.writeStartDocument("UTF-8", "1.0");
        xml.writeCharacters("\n");
        xml.writeStartElement("svg");
        xml.writeDefaultNamespace("http://www.w3.org/2000/svg");
        attributes(
                "version",
                "1.1",
                "width",
                width + "mm",
                "height",
                height + "mm",
                "viewBox",
                "0 0 " + width + " " + height,
                "font-family",
                "Helvetica, Arial, Liberation Sans, sans-serif");
        xml.writeCharacters("\n");
        xml.writeStartElement("title");
        xml.writeCharacters(darkrim.present.Printable.of(title));
        xml.writeEndElement();
        xml.writeCharacters("\n");
        empty("rect", "width", "100%", "height", "100%", "fill", "#ffffff");
        all(sheet.marks());
        xml.writeEndElement();
        xml.writeCharacters("\n");
        xml.writeEndDocument();
        xml.close();
        return text.toString();
    }

    private void all(List<Mark> marks) throws XMLStreamException {
        for (Mark mark : marks) {
            if (mark instanceof Mark.Area area) {
                area(area);
            } else if (mark instanceof Mark.Path path) {
                path(path);
            } else if (mark instanceof Mark.Words words) {
                words(words);
            } else if (mark instanceof Mark.Clipped clipped) {
                clipped(clipped);
            }
        }
    }

    private void area(Mark.Area area) throws XMLStreamException {
        String d = area.rings().stream().map(ring -> points(ring) + "Z").collect(Collectors.joining());
        empty(
                "path",
                "d",
                d,
                "fill",
                area.fill(),
                "fill-rule",
                "evenodd",
                "stroke",
                area.outline().colour(),
                "stroke-width",
                number(area.outline().width()),
                "stroke-linejoin",
                "round");
    }

    private void path(Mark.Path path) throws XMLStreamException {
        Line line = path.line();
        String dashes = line.dashes().stream().map(SvgSheet::number).collect(Collectors.joining(" "));
        empty(
                "path",
                "d",
                points(path.points()),
                "fill",
                "none",
                "stroke",
                line.colour(),
                "stroke-width",
                number(line.width()),
                "stroke-dasharray",
                dashes.isEmpty() ? "none" : dashes,
                "stroke-linejoin",
                "round");
    }

    private void words(Mark.Words words) throws XMLStreamException {
        // Readers of SVG drop spaces at the beginning of a line.
        int indent = words.text().length() - words.text().stripLeading().length();
        xml.writeStartElement("text");
        attributes(
                "x",
                number(words.x() + indent * SPACE * words.size()),
                "y",
                number(words.y()),
                "font-size",
                number(words.size()),
                "font-weight",
                words.bold() ? "bold" : "normal",
                "text-anchor",
                switch (words.anchor()) {
                    case START -> "start";
                    case MIDDLE -> "middle";
                    case END -> "end";
                });
        xml.writeCharacters(words.text().stripLeading());
        xml.writeEndElement();
        xml.writeCharacters("\n");
    }

    private void clipped(Mark.Clipped clipped) throws XMLStreamException {
        String id = "view" + ++clips;
        xml.writeStartElement("clipPath");
        attributes("id", id);
        Box box = clipped.box();
        empty(
                "rect",
                "x",
                number(box.x()),
                "y",
                number(box.y()),
                "width",
                number(box.width()),
                "height",
                number(box.height()));
        xml.writeEndElement();
        xml.writeStartElement("g");
        attributes("clip-path", "url(#" + id + ")");
        xml.writeCharacters("\n");
        all(clipped.marks());
        xml.writeEndElement();
        xml.writeCharacters("\n");
    }

    private void empty(String name, String... pairs) throws XMLStreamException {
        xml.writeEmptyElement(name);
        attributes(pairs);
        xml.writeCharacters("\n");
    }

    private void attributes(String... pairs) throws XMLStreamException {
        for (int i = 0; i < pairs.length; i += 2) {
            xml.writeAttribute(pairs[i], pairs[i + 1]);
        }
    }

    private static String points(List<Vector2D> points) {
        StringBuilder d = new StringBuilder();
        for (Vector2D point : points) {
            d.append(d.length() == 0 ? 'M' : 'L')
                    .append(number(point.getX()))
                    .append(' ')
                    .append(number(point.getY()));
        }
        return d.toString();
    }

    /** To a tenth of a micrometre of paper. */
    private static String number(double value) {
        BigDecimal shown = BigDecimal.valueOf(value)
                .setScale(DECIMALS, RoundingMode.HALF_EVEN)
                .stripTrailingZeros();
        return shown.signum() == 0 ? "0" : shown.toPlainString();
    }
}
