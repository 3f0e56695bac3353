package darkrim.layout;

import darkrim.layout.form.Key;
import darkrim.layout.form.Kind;
import darkrim.layout.form.Letters;
import darkrim.layout.form.Measure;
import darkrim.layout.form.Unit;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** The keys of a layout file, each declared once: the reading and the JSON Schema follow from this table. */
final class LayoutKeys {
    private static final Kind UNITS = Kind.Structure.of(
            "units",
            Key.withDefault(
                    "length", new Kind.Choice(Unit.symbols(Measure.LENGTH)), "mm", "Unit of lengths that carry none."),
            Key.withDefault(
                    "angle", new Kind.Choice(Unit.symbols(Measure.ANGLE)), "deg", "Unit of angles that carry none."));

    private static final Kind DIMENSION = new Kind.Either(List.of(Kinds.ANY, ToleranceKeys.DIMENSION));

    private static final Kind FINISH_RULE = Kind.Structure.of(
            "finish_rule",
            Key.required("surfaces", Kinds.PATTERN, "Pattern that selects surfaces."),
            Key.required("finish", Kinds.NAME, "Name of the finish they get."));

    private static final Kind LIGHT_LIMIT = Kind.Structure.of(
            "light_limit",
            Key.required("at_most", Kinds.LIMIT, "Greatest relative irradiance that passes."),
            Key.withDefault("per", Kinds.choice("surface", "cell"), "surface", "Over what the mean is taken."));

    private static final Kind LOWERING = Kind.Structure.of(
            "while_lowered",
            Key.required(
                    "part",
                    Kinds.PATTERN,
                    "Pattern that selects what is brought in, such as a part: all of one side, none of the other."),
            Key.required("from", Kinds.SIZE, "How far from its place it starts; mm unless stated."),
            Key.withDefault(
                    "direction",
                    new Kind.ListOf(Kinds.COMPONENT, 3, 3),
                    "[0, 0, -1]",
                    "Which way it goes, of any length."));

    private static final Kind REQUIREMENT = new Kind.Structure(
            "requirement",
            List.of(
                    Key.optional(
                            "surfaces",
                            Kinds.PATTERN,
                            "Pattern that selects the surfaces it is about; of all but a clearance."),
                    Key.optional(
                            "between",
                            Kinds.pair(Kinds.PATTERN),
                            "Two patterns that select the two sides of a clearance."),
                    Key.optional(
                            "direct",
                            new Kind.Either(List.of(Kinds.choice("none"), LIGHT_LIMIT)),
                            "Light straight from the pupil: none, or a limit."),
                    Key.optional(
                            "once_reflected",
                            new Kind.Either(List.of(Kinds.choice("none"), LIGHT_LIMIT)),
                            "Light after one reflection: none, or a limit."),
                    Key.optional(
                            "pupil_seen",
                            Kind.Structure.of(
                                    "pupil_seen",
                                    Key.required(
                                            "at_least",
                                            Kinds.LEAST_SHARE,
                                            "Least share of the pupil's area that every point sees.")),
                            "How much of the pupil is seen."),
                    Key.optional(
                            "clearance",
                            Kind.Structure.of(
                                    "clearance",
                                    Key.required(
                                            "at_least",
                                            Kinds.SIZE,
                                            "Least distance that passes, coatings included; mm unless stated.")),
                            "How far the two sides keep apart."),
                    Key.optional(
                            "while_lowered",
                            LOWERING,
                            "Of a clearance: also on the whole way on which one side is brought in, in the shape as drawn."),
                    Key.optional(
                            "shape",
                            Kinds.choice("warm", "cold", "both"),
                            "Of a clearance in a layout with a cool-down: in which shape it holds; both if left out.")),
            List.of("direct", "once_reflected", "pupil_seen", "clearance"),
            new TreeMap<>(Map.of(
                    "direct", "surfaces",
                    "once_reflected", "surfaces",
                    "pupil_seen", "surfaces",
                    "clearance", "between",
                    "between", "clearance",
                    "while_lowered", "clearance",
                    "shape", "clearance")));

    private static final Kind SAMPLING = Kind.Structure.of(
            "sampling",
            Key.withDefault("seed", new Kind.Whole(0, (1L << 53) - 1), "1", "Seed of all random streams."),
            Key.withDefault(
                    "confidence", Kinds.CONFIDENCE, "0.999", "Confidence of all sampled verdicts together, 0.5 to 1."),
            Key.withDefault(
                    "most_samples",
                    new Kind.Whole(1_000, 1_000_000_000_000L),
                    "200000000",
                    "No more samples than this for the whole check."));

    private static final Kind CELLS = new Kind.Whole(1, 1000);

    private static final Kind MAPS = Kind.Structure.of(
            "maps",
            Key.withDefault("surfaces", Kinds.PATTERN, "\"**/active\"", "Pattern that selects rectangular surfaces."),
            Key.withDefault(
                    "cells",
                    new Kind.Either(List.of(CELLS, Kinds.pair(CELLS))),
                    "16",
                    "Cells a side, or [columns, rows]."));

    /** The whole file. */
    static final Kind.Structure LAYOUT = Kind.Structure.of(
            "layout",
            Key.required("title", Kinds.TITLE, "What this layout is, one line."),
            Key.withDefault("revision", Kinds.MARK, "\"\"", "Revision mark."),
            Key.withDefault("units", UNITS, "{}", "What numbers without a unit are in."),
            Key.optional(
                    "dimensions",
                    new Kind.Named(Letters.DIMENSION, DIMENSION, 0, 1000),
                    "Named dimensions for use in formulas; each may be a formula over others."),
            Key.optional(
                    "band",
                    FinishKeys.BAND,
                    "Shortest and longest wavelength, um: values of finishes that change with wavelength are averaged over it."),
            Key.optional(
                    "finishes",
                    new Kind.Named(Letters.NAME, FinishKeys.FINISH, 0, 1000),
                    "How surfaces reflect, by name; 'absorber' reflects nothing and is always there."),
            Key.optional(
                    "finish_rules",
                    new Kind.ListOf(FINISH_RULE, 0, 1000),
                    "Finishes for chosen surfaces; a later rule wins over an earlier one and over the part."),
            Key.optional(
                    "cooldown",
                    CooldownKeys.COOLDOWN,
                    "Temperatures between which the parts are cooled: they are then judged in their cold shape."),
            Key.optional(
                    "materials",
                    new Kind.Named(Letters.NAME, CooldownKeys.MATERIAL, 0, 1000),
                    "Materials of your own, by name, beside those of the program."),
            Key.required("beam", BeamKeys.BEAM, "The light that comes in."),
            Key.optional(
                    "sources",
                    new Kind.Named(Letters.NAME, SourceKeys.SOURCE, 0, 1000),
                    "Sources of light beside the beam, by name: for studies of their own, a check does not look at them."),
            Key.required("parts", new Kind.Named(Letters.NAME, PartKeys.part(), 1, 1000), "The parts, by name."),
            Key.required(
                    "requirements", new Kind.Named(Letters.NAME, REQUIREMENT, 1, 1000), "What must hold, by name."),
            Key.optional(
                    "placement_error",
                    Kinds.GAP,
                    "Total placement error a side of opening and detector, for the feasibility line; mm unless stated."),
            Key.withDefault("sampling", SAMPLING, "{}", "How hard to look."),
            Key.withDefault("maps", MAPS, "{}", "Where maps are wanted."),
            Key.optional("warmth", WarmthKeys.WARMTH, "What is warm, and the band in which it is seen."));

    private LayoutKeys() {}
}
