package darkrim.cli;

import darkrim.layout.Layout;
import darkrim.layout.SourceSpec;
import darkrim.layout.form.Wording;
import darkrim.study.UnusableStudy;
import java.util.List;

/** What {@code --source} names. */
final class DistantSource {
    private DistantSource() {}

    /**
     * The distant source of a name.
     *
     * @param layout the layout
     * @param name what was given
     * @throws UnusableStudy saying which there are, if the layout has none of this name
     */
    static SourceSpec.Distant of(Layout layout, String name) throws UnusableStudy {
        List<SourceSpec.Distant> known = layout.sources().stream()
                .filter(SourceSpec.Distant.class::isInstance)
                .map(SourceSpec.Distant.class::cast)
                .toList();
        return known.stream()
                .filter(each -> each.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new UnusableStudy("--source: the layout has no source of kind 'distant' named '"
                        + Wording.shortened(name) + "'"
                        + (known.isEmpty()
                                ? ", and none of another name"
                                : ", expected "
                                        + Wording.anyOf(known.stream()
                                                .map(SourceSpec::name)
                                                .toList()))));
    }
}
