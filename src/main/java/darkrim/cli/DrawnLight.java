package darkrim.cli;

import darkrim.present.picture.ColourScale.Spacing;
import darkrim.present.picture.LightChoice;
import darkrim.study.irradiance.LightKind;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Option;

/** What a picture of light can be told about colours and cells. */
final class DrawnLight {
    @Option(
            names = "--light",
            paramLabel = "WHICH",
            order = -20,
            converter = Kind.class,
            defaultValue = "direct",
            description = "direct (default), reflected (once), total (both), or none for plain grey parts.")
    private Chosen light;

    @Option(
            names = "--scale",
            paramLabel = "HOW",
            order = -19,
            converter = Steps.class,
            defaultValue = "log",
            description = "log, equal ratios are equal steps of colour (default), or linear.")
    private Spacing spacing;

    @Option(
            names = "--range",
            paramLabel = "A..B",
            order = -18,
            converter = ValueRange.class,
            description =
                    "Values of the darkest and the lightest colour, such as 1e-6..1; default: found from the values.")
    private LightChoice.Range range;

    @Option(
            names = "--cells",
            paramLabel = "PATTERN",
            order = -17,
            description =
                    "Surfaces that are shown cell by cell, the others as a whole; may be repeated. Default: active"
                            + " areas and openings in a picture of parts, all in one of what a point sees, none in a"
                            + " file for another program.")
    private List<String> cells;

    @Option(
            names = "--cells-along",
            paramLabel = "N",
            order = -16,
            converter = WholeNumber.Cells.class,
            description = "Cells along the longer side of a surface; default: 24.")
    private Long along;

    @Option(
            names = "--cell-samples",
            paramLabel = "N",
            order = -15,
            converter = WholeNumber.CellSamples.class,
            description =
                    "Samples of each cell for direct light, 16 times as many for once-reflected light. Default: 128; 512 for a flat map, 64 for what a point sees.")
    private Long samples;

    /** The choice of colours. */
    LightChoice choice() {
        return new LightChoice(light.kind(), spacing, Optional.ofNullable(range));
    }

    /** Which light. */
    Optional<LightKind> light() {
        return light.kind();
    }

    /** Patterns of the surfaces that are shown cell by cell, where they were given. */
    Optional<List<String>> cells() {
        return Optional.ofNullable(cells).map(List::copyOf);
    }

    /** Cells along the longer side. */
    int along(int otherwise) {
        return along == null ? otherwise : Math.toIntExact(along);
    }

    /** Samples of a cell. */
    int samples(int otherwise) {
        return samples == null ? otherwise : Math.toIntExact(samples);
    }

    /** Why colours and cells do not fit together, if they do not. */
    Optional<String> problem() {
        return spacing == Spacing.LOGARITHMIC && range != null && !(range.least() > 0)
                ? Optional.of(
                        "--range begins at 0, which a logarithmic scale cannot show, expected more than 0 or --scale linear")
                : Optional.empty();
    }

    /**
     * The light that was chosen. An option of its own kind: the library has ideas of its own about an optional one.
     *
     * @param kind which light, if any
     */
    record Chosen(Optional<LightKind> kind) {}

    /** Reads a class of light. */
    static final class Kind extends Choice<Chosen> {
        Kind() {
            super(
                    List.of("direct", "reflected", "total", "none"),
                    List.of(
                            new Chosen(Optional.of(LightKind.DIRECT)),
                            new Chosen(Optional.of(LightKind.ONCE_REFLECTED)),
                            new Chosen(Optional.of(LightKind.TOTAL)),
                            new Chosen(Optional.empty())));
        }
    }

    /** Reads how values are spread over colours. */
    static final class Steps extends Choice<Spacing> {
        Steps() {
            super(List.of("log", "linear"), List.of(Spacing.LOGARITHMIC, Spacing.LINEAR));
        }
    }
}
