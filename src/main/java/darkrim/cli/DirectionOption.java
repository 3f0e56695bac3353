package darkrim.cli;

import darkrim.layout.form.Wording;
import darkrim.present.picture.ViewDirection;
import java.util.LinkedHashMap;
import java.util.Map;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads from where to look: a word, or {@code AZIMUTH,ELEVATION} in degrees. */
final class DirectionOption implements ITypeConverter<ViewDirection> {
    private static final Map<String, ViewDirection> WORDS = words();

    private static Map<String, ViewDirection> words() {
        Map<String, ViewDirection> words = new LinkedHashMap<>();
        words.put("corner", ViewDirection.CORNER);
        words.put("top", ViewDirection.TOP);
        words.put("bottom", ViewDirection.BOTTOM);
        words.put("front", ViewDirection.FRONT);
        words.put("back", ViewDirection.BACK);
        words.put("left", ViewDirection.LEFT);
        words.put("right", ViewDirection.RIGHT);
        return words;
    }

    /** A direction in words: the sides by name, others by their angles. */
    static String words(ViewDirection direction) {
        return WORDS.entrySet().stream()
                .filter(word -> word.getValue().equals(direction) && !direction.equals(ViewDirection.CORNER))
                .map(word -> "the " + word.getKey())
                .findFirst()
                .orElseGet(() -> "azimuth " + Wording.number(direction.azimuth()) + ", elevation "
                        + Wording.number(direction.elevation()) + " deg");
    }

    @Override
    public ViewDirection convert(String text) {
        ViewDirection word = WORDS.get(text);
        if (word != null) {
            return word;
        }
        String[] angles = text.split(",", -1);
        if (angles.length == 2) {
            try {
                return new ViewDirection(Decimal.read(angles[0]), Decimal.read(angles[1]));
            } catch (IllegalArgumentException noAngles) {
                throw refused(text);
            }
        }
        throw refused(text);
    }

    private static TypeConversionException refused(String text) {
        return new TypeConversionException("expected " + Wording.anyOf(WORDS.keySet())
                + ", or azimuth and elevation in degrees (up to 90 either way), such as -60,40, got '"
                + Wording.shortened(text) + "'");
    }
}
