package darkrim.present;

import java.io.StringWriter;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;

/** Writes a drawing as SVG 1.1; the library escapes every text and attribute. Mutable, for one drawing. */
final class Svg {
    private final StringWriter text = new StringWriter();
    private final XMLStreamWriter xml;

    /**
     * @param width width, px
     * @param height height, px
     */
    Svg(double width, double height) {
        try {
            xml = XMLOutputFactory.newDefaultFactory().createXMLStreamWriter(text);
            xml.writeStartDocument("UTF-8", "1.0");
            xml.writeCharacters("\n");
            xml.writeStartElement("svg");
            xml.writeDefaultNamespace("http://www.w3.org/2000/svg");
            attributes(
                    "version",
                    "1.1",
                    "width",
                    number(width),
                    "height",
                    number(height),
                    "viewBox",
                    "0 0 " + number(width) + " " + number(height),
                    "font-family",
                    "sans-serif");
            xml.writeCharacters("\n");
        } catch (XMLStreamException problem) {
            throw impossible(problem);
        }
    }

    /**
     * Opens an element that holds others.
     *
     * @param pairs names and values of its attributes
     */
    Svg open(String name, String... pairs) {
        try {
            xml.writeStartElement(name);
            attributes(pairs);
            xml.writeCharacters("\n");
            return this;
        } catch (XMLStreamException problem) {
            throw impossible(problem);
        }
    }

    /** Closes the innermost open element. */
    Svg close() {
        try {
            xml.writeEndElement();
            xml.writeCharacters("\n");
            return this;
        } catch (XMLStreamException problem) {
            throw impossible(problem);
        }
    }

    /** An element without content. */
    Svg shape(String name, String... pairs) {
        try {
            xml.writeEmptyElement(name);
            attributes(pairs);
            xml.writeCharacters("\n");
            return this;
        } catch (XMLStreamException problem) {
            throw impossible(problem);
        }
    }

    /** An element that holds words, from wherever they come. */
    Svg words(String name, String words, String... pairs) {
        try {
            xml.writeStartElement(name);
            attributes(pairs);
            xml.writeCharacters(Printable.of(words));
            xml.writeEndElement();
            xml.writeCharacters("\n");
            return this;
        } catch (XMLStreamException problem) {
            throw impossible(problem);
        }
    }

    /** The whole drawing. */
    String end() {
        try {
            xml.writeEndElement();
            xml.writeCharacters("\n");
            xml.writeEndDocument();
            xml.close();
            return text.toString();
        } catch (XMLStreamException problem) {
            throw impossible(problem);
        }
    }

    /** A number with all its digits. */
    static String number(double value) {
        String all = Double.toString(value + 0.0);
        return all.endsWith(".0") ? all.substring(0, all.length() - 2) : all;
    }

    private void attributes(String... pairs) throws XMLStreamException {
        for (int i = 0; i < pairs.length; i += 2) {
            xml.writeAttribute(pairs[i], pairs[i + 1]);
        }
    }

    private static IllegalStateException impossible(XMLStreamException problem) {
        return new IllegalStateException("writing to memory failed", problem);
    }
}
