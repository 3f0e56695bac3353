package darkrim.present.review;

import darkrim.layout.form.Wording;
import java.io.StringWriter;
import java.util.Base64;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;

/**
 * Writes a page as HTML that is well-formed XML too, so that a browser and a program that sets pages can read the same text. The library escapes every
 * text and attribute; what acts on a terminal or hides becomes a question mark. Mutable, for one page.
 */
final class Markup {
    private static final Pattern APART = Pattern.compile("/|[0-9.)]+e-[0-9]+");

    private final StringWriter text = new StringWriter();
    private final XMLStreamWriter xml;

    Markup() {
        try {
            xml = XMLOutputFactory.newDefaultFactory().createXMLStreamWriter(text);
        } catch (XMLStreamException problem) {
            throw impossible(problem);
        }
    }

    /** The beginning of every page. */
    Markup doctype() {
        return write(() -> {
            xml.writeDTD("<!DOCTYPE html>");
            xml.writeCharacters("\n");
        });
    }

    /**
     * Opens an element.
     *
     * @param pairs names and values of its attributes
     */
    Markup open(String name, String... pairs) {
        return write(() -> {
            xml.writeStartElement(name);
            attributes(pairs);
        });
    }

    /** Closes the innermost open element. */
    Markup close() {
        return write(() -> {
            xml.writeEndElement();
            xml.writeCharacters("\n");
        });
    }

    /** Closes the innermost open element, with nothing after it: words may follow. */
    Markup closeInLine() {
        return write(xml::writeEndElement);
    }

    /** An element that cannot have content. */
    Markup single(String name, String... pairs) {
        return write(() -> {
            xml.writeEmptyElement(name);
            attributes(pairs);
        });
    }

    /** An element that holds words. */
    Markup words(String name, String words, String... pairs) {
        return open(name, pairs).text(words).close();
    }

    /** Words, from wherever they come. */
    Markup text(String words) {
        return write(() -> xml.writeCharacters(harmless(words)));
    }

    /** Words with names of surfaces, which may be broken after a slash, and numbers, which may not before their exponent. */
    Markup names(String words) {
        String all = harmless(words);
        Matcher apart = APART.matcher(all);
        int from = 0;
        while (apart.find()) {
            if (apart.group().equals("/")) {
                text(all.substring(from, apart.end()));
                if (apart.end() < all.length()) {
                    single("wbr");
                }
            } else {
                text(all.substring(from, apart.start()));
                open("span", "class", "whole").text(apart.group()).closeInLine();
            }
            from = apart.end();
        }
        return text(all.substring(from));
    }

    /** A style sheet of our own. */
    Markup style(String css) {
        return write(() -> {
            xml.writeStartElement("style");
            xml.writeCharacters(css);
            xml.writeEndElement();
            xml.writeCharacters("\n");
        });
    }

    /**
     * A picture inside the page.
     *
     * @param content its bytes
     * @param type its media type
     * @param instead what it shows, in words
     */
    Markup picture(byte[] content, String type, String instead, String... pairs) {
        String[] all = new String[pairs.length + 4];
        all[0] = "src";
        all[1] = "data:" + type + ";base64," + Base64.getEncoder().encodeToString(content);
        all[2] = "alt";
        all[3] = instead;
        System.arraycopy(pairs, 0, all, 4, pairs.length);
        return single("img", all);
    }

    /** The whole page. */
    String end() {
        write(xml::close);
        return text.toString();
    }

    private void attributes(String... pairs) throws XMLStreamException {
        for (int i = 0; i < pairs.length; i += 2) {
            xml.writeAttribute(pairs[i], harmless(pairs[i + 1]));
        }
    }

    /** Without what XML cannot hold, and what hides or turns text around. */
    private static String harmless(String words) {
        boolean harmless = true;
        for (int i = 0; i < words.length() && harmless; i++) {
            harmless = words.charAt(i) >= ' ' && words.charAt(i) < 0x7f;
        }
        if (harmless) {
            return words;
        }
        StringBuilder shown = new StringBuilder();
        words.codePoints().forEach(c -> shown.appendCodePoint(isUnfit(c) ? '?' : c));
        return shown.toString();
    }

    private static boolean isUnfit(int c) {
        boolean half = c >= Character.MIN_SURROGATE && c <= Character.MAX_SURROGATE;
        return Wording.isControl(c) || half || (c & 0xfffe) == 0xfffe;
    }

    private interface Step {
        void run() throws XMLStreamException;
    }

    private Markup write(Step step) {
        try {
            step.run();
            return this;
        } catch (XMLStreamException problem) {
            throw impossible(problem);
        }
    }

    private static IllegalStateException impossible(XMLStreamException problem) {
        return new IllegalStateException("writing to memory failed", problem);
    }
}
