package darkrim.present.picture;

import darkrim.layout.Layout;
import darkrim.present.LayoutWords;
import darkrim.present.Printable;
import darkrim.study.irradiance.LightKind;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What pictures say of themselves.
 *
 * @param layout the layout
 * @param seed seed of the sampled numbers
 * @param version version of the program
 * @param date a date to be written on the picture, as the user gave it
 * @param notes what else must be said, a sentence each
 */
public record PictureWords(Layout layout, long seed, String version, Optional<String> date, List<String> notes) {
    /** Copies the list. */
    public PictureWords {
        notes = List.copyOf(notes);
    }

    /**
     * The text of a picture.
     *
     * @param what what it shows
     * @param light which light it shows; empty for none
     * @param unit in what it is given
     * @param scale the colours
     */
    public PictureText text(String what, Optional<LightKind> light, LightUnit unit, ColourScale scale) {
        List<String> foot = new ArrayList<>();
        if (light.isPresent()) {
            foot.add(reading(light.get(), unit, scale));
        }
        foot.addAll(notes);
        foot.add(LayoutWords.file(layout) + "; Darkrim " + version + ", seed " + seed
                + date.map(day -> "; " + Printable.of(day)).orElse("") + ".");
        return new PictureText(LayoutWords.title(layout), what, foot);
    }

    private static String reading(LightKind light, LightUnit unit, ColourScale scale) {
        String relative = unit.words().isEmpty() ? "" : unit.words() + " ";
        String none =
                scale.least() > 0 ? "Black: below the scale, or no light found; only a proof shows darkness. " : "";
        String more = light == LightKind.DIRECT ? "" : "More than one reflection is not in it. ";
        return (relative + none + more + "Colours are means over a face or a cell, sampled.").strip();
    }
}
