package darkrim.study.comparison;

import darkrim.layout.SourceSpec;
import darkrim.layout.form.Wording;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Finds the sources beside the beam in which two layouts differ. A check does not look at them. */
final class SourceDifferences {
    private SourceDifferences() {}

    /**
     * @param found takes what differs
     * @param before sources of the first layout
     * @param after those of the second
     */
    static void find(SettingDifferences found, List<SourceSpec> before, List<SourceSpec> after) {
        Set<String> names = new LinkedHashSet<>();
        before.forEach(each -> names.add(each.name()));
        after.forEach(each -> names.add(each.name()));
        for (String name : names) {
            Optional<SourceSpec> one = named(before, name);
            Optional<SourceSpec> two = named(after, name);
            found.compare(
                    "source " + name,
                    one.map(Content::of),
                    two.map(Content::of),
                    one.map(SourceDifferences::words),
                    two.map(SourceDifferences::words));
        }
    }

    private static Optional<SourceSpec> named(List<SourceSpec> sources, String name) {
        return sources.stream().filter(each -> each.name().equals(name)).findFirst();
    }

    /** All that a source is, but for where it stands in its file. */
    private record Content(List<Object> numbers) {
        static Content of(SourceSpec source) {
            if (source instanceof SourceSpec.Star star) {
                return new Content(List.of("star", star.focus(), star.flux()));
            }
            SourceSpec.Distant body = (SourceSpec.Distant) source;
            return new Content(List.of(
                    body.offAxis(),
                    body.azimuth(),
                    body.diameter(),
                    body.irradiance(),
                    body.entrance().map(SourceSpec.Entrance::centre),
                    body.entrance().map(entrance -> SettingDifferences.corners(entrance.outline()))));
        }
    }

    private static String words(SourceSpec source) {
        if (source instanceof SourceSpec.Star star) {
            return "star at " + SettingDifferences.point(star.focus())
                    + star.flux()
                            .map(flux -> ", " + Wording.number(flux) + " W")
                            .orElse("");
        }
        SourceSpec.Distant body = (SourceSpec.Distant) source;
        return "body " + Wording.number(body.offAxis()) + " deg off axis, azimuth " + Wording.number(body.azimuth())
                + " deg, " + Wording.number(body.diameter()) + " deg wide"
                + body.irradiance()
                        .map(value -> ", " + Wording.number(value) + " W/m2")
                        .orElse("")
                + body.entrance()
                        .map(entrance -> ", through a " + SettingDifferences.outline(entrance.outline()) + " at "
                                + SettingDifferences.point(entrance.centre()))
                        .orElse("");
    }
}
