package darkrim.cli;

import darkrim.layout.SourceSpec;
import darkrim.present.Printable;
import darkrim.present.picture.ColourScale;
import darkrim.present.picture.LightUnit;
import darkrim.present.picture.PictureText;
import darkrim.present.picture.PictureWords;
import darkrim.present.picture.Section;
import darkrim.present.picture.Subject;
import darkrim.study.Effort;
import darkrim.study.irradiance.LightKind;
import darkrim.study.irradiance.LitLayout;
import darkrim.study.irradiance.MapSampling.Round;
import darkrim.study.irradiance.SurfaceMap;
import darkrim.verdict.Verdict;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * What every picture is given.
 *
 * @param source the source whose light is shown; empty for the beam
 * @param light how light is coloured
 * @param size size of the picture
 * @param date a date to be written
 * @param effort threads to work with
 */
record DrawingTask(
        Optional<SourceSpec.Distant> source, DrawnLight light, PictureSize size, Optional<String> date, Effort effort) {
    LitLayout.Fineness fineness(Predicate<String> cells, int along, int samples) {
        int direct = light.samples(samples);
        Optional<LightKind> kind = light.light();
        boolean noDirect = kind.isEmpty() || kind.get() == LightKind.ONCE_REFLECTED;
        boolean noReflected = kind.isEmpty() || kind.get() == LightKind.DIRECT;
        return new LitLayout.Fineness(
                cells,
                light.along(along),
                new Round(noDirect ? 0 : direct, noReflected ? 0 : Drawing.REFLECTED * direct));
    }

    LightUnit unit(LitLayout lit) {
        return LightUnit.of(source, lit.scene());
    }

    ColourScale scale(LitLayout lit, List<SurfaceMap> maps) {
        return light.choice().scale(unit(lit), maps);
    }

    PictureText text(LitLayout lit, List<String> notes, String what, ColourScale scale) {
        return words(lit, notes).text(what, light.light(), unit(lit), scale);
    }

    private PictureWords words(LitLayout lit, List<String> notes) {
        List<String> all = lit.stopped()
                ? Stream.concat(
                                notes.stream(),
                                Stream.of("The work was stopped before its end: values may be missing."))
                        .toList()
                : notes;
        return new PictureWords(lit.layout(), lit.checked().seed(), Version.number(), date, all);
    }

    Subject subject(
            LitLayout lit,
            BitSet shown,
            ColourScale scale,
            Map<Integer, Verdict> verdicts,
            Optional<Section> section,
            List<List<Vector3D>> paths) {
        return new Subject(
                lit.scene(),
                shown,
                light.light(),
                lit.maps(),
                scale,
                unit(lit).perRelative(),
                verdicts,
                section,
                paths);
    }

    /** Which light of what, at the beginning of a sentence. */
    String beginning(LightKind kind) {
        String words = kind.words();
        String of = source.map(each -> " of " + Printable.of(each.name())).orElse("");
        return Character.toUpperCase(words.charAt(0)) + words.substring(1) + of;
    }
}
