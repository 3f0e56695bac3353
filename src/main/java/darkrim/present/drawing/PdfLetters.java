package darkrim.present.drawing;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;

/** The font of documents: Liberation Sans, which comes with the library that writes them, so that none of the machine is looked for. */
public final class PdfLetters {
    private static final String FONT = "/org/apache/pdfbox/resources/ttf/LiberationSans-Regular.ttf";
    private static final int NAMED = 8;

    private PdfLetters() {}

    /** The font, a TrueType file. */
    public static InputStream open() {
        InputStream letters = PDDocument.class.getResourceAsStream(FONT);
        if (letters == null) {
            throw new IllegalStateException("the program was built without " + FONT);
        }
        return letters;
    }

    /**
     * The letters of a text that the font lacks, each once, in the order in which they come; a warning for whoever reads a document without them.
     *
     * @param text what is written in a document
     * @return words such as {@code 2 letters that its font lacks: \u591c (U+591C), \u5149 (U+5149)}; empty where it has all
     */
    public static String lacking(String text) {
        List<Integer> lacking = new ArrayList<>();
        try (InputStream stream = open();
                TrueTypeFont font = new TTFParser().parse(new RandomAccessReadBuffer(stream))) {
            CmapLookup glyphs = font.getUnicodeCmapLookup();
            text.codePoints()
                    .filter(letter -> letter >= ' ' && glyphs.getGlyphId(letter) == 0)
                    .distinct()
                    .forEach(lacking::add);
        } catch (IOException problem) {
            throw new UncheckedIOException(problem);
        }
        if (lacking.isEmpty()) {
            return "";
        }
        List<String> named = lacking.stream()
                .limit(NAMED)
                .map(letter -> Character.toString(letter) + String.format(Locale.ROOT, " (U+%04X)", letter))
                .toList();
        int more = lacking.size() - named.size();
        return lacking.size() + (lacking.size() == 1 ? " letter" : " letters") + " that its font lacks: "
                + String.join(", ", named) + (more > 0 ? " and " + more + " more" : "");
    }
}
