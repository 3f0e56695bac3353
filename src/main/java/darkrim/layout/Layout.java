package darkrim.layout;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A layout as the designer wrote it, with every formula worked out. All lengths are in mm, all angles in degrees.
 *
 * @param title title, one line
 * @param revision revision mark, may be empty
 * @param source the file it came from
 * @param dimensions named dimensions by name, in the order of the file
 * @param finishes finishes by name
 * @param finishRules which surfaces get which finish, in the order of the file; a later rule wins over an earlier one and over the part
 * @param beam the light that comes in
 * @param sources sources of light beside the beam, in the order of the file
 * @param parts the parts, in the order of the file
 * @param requirements what must hold, in the order of the file
 * @param placementError total placement error a side between opening and detector, mm, for the feasibility line; absent where not stated
 * @param sampling how hard to look
 * @param maps where maps are wanted
 */
public record Layout(
        String title,
        String revision,
        Source source,
        Map<String, Dimension> dimensions,
        Map<String, FinishSpec> finishes,
        List<FinishRule> finishRules,
        BeamSpec beam,
        List<SourceSpec> sources,
        List<Part> parts,
        List<Requirement> requirements,
        Optional<Double> placementError,
        SamplingSpec sampling,
        MapSpec maps) {

    /** Copies the collections; maps keep their order. */
    public Layout {
        dimensions = java.util.Collections.unmodifiableMap(new java.util.LinkedHashMap<>(dimensions));
        finishes = java.util.Collections.unmodifiableMap(new java.util.LinkedHashMap<>(finishes));
        finishRules = List.copyOf(finishRules);
        sources = List.copyOf(sources);
        parts = List.copyOf(parts);
        requirements = List.copyOf(requirements);
    }

    /** The same with other parts. */
    public Layout with(List<Part> others) {
        return new Layout(
                title,
                revision,
                source,
                dimensions,
                finishes,
                finishRules,
                beam,
                sources,
                others,
                requirements,
                placementError,
                sampling,
                maps);
    }

    /** The same with nothing asked and no rules for finishes. */
    public Layout partsOnly() {
        return new Layout(
                title,
                revision,
                source,
                dimensions,
                finishes,
                List.of(),
                beam,
                sources,
                parts,
                List.of(),
                placementError,
                sampling,
                MapSpec.DEFAULT);
    }

    /** The same with only one of its requirements. */
    public Layout withOnly(Requirement requirement) {
        return new Layout(
                title,
                revision,
                source,
                dimensions,
                finishes,
                finishRules,
                beam,
                sources,
                parts,
                List.of(requirement),
                placementError,
                sampling,
                maps);
    }

    /**
     * Where a layout came from.
     *
     * @param name file name as the user gave it
     * @param sha256 SHA-256 of the file's bytes in lower-case hexadecimal, of the files that it names with them; empty for a layout built in code
     */
    public record Source(String name, String sha256) {
        /** A layout built in code. */
        public static final Source IN_CODE = new Source("<code>", "");
    }
}
