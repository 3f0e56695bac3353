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
 * @param cooldown the temperatures at which it is drawn and works; absent where none are stated
 * @param warmth what is warm, where the file says it
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
        MapSpec maps,
        Optional<Cooldown> cooldown,
        Optional<WarmthSpec> warmth) {

    /** A layout that is not cooled and says nothing of temperatures. */
    public Layout(
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
        this(
                title,
                revision,
                source,
                dimensions,
                finishes,
                finishRules,
                beam,
                sources,
                parts,
                requirements,
                placementError,
                sampling,
                maps,
                Optional.empty(),
                Optional.empty());
    }

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
                maps,
                cooldown,
                warmth);
    }

    /** The same with nothing asked and no rules for finishes and temperatures. */
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
                MapSpec.DEFAULT,
                cooldown,
                Optional.empty());
    }

    /** The same with only one of its requirements. */
    public Layout withOnly(Requirement requirement) {
        return asking(List.of(requirement));
    }

    /** The same in its shape as drawn. */
    public Layout warm() {
        return with(cooldown.map(each -> each.in(ThermalShape.WARM)));
    }

    /** The same in its shape at the temperature at which it works; no other where it is not cooled. */
    public Layout cold() {
        return with(cooldown.map(each -> each.in(ThermalShape.COLD)));
    }

    /** The same with other requirements. */
    public Layout asking(List<Requirement> others) {
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
                others,
                placementError,
                sampling,
                maps,
                cooldown,
                warmth);
    }

    /** The temperature of its parts in the shape that it has, K; absent where none is stated. */
    public Optional<Double> temperature() {
        return cooldown.map(Cooldown::temperature);
    }

    private Layout with(Optional<Cooldown> other) {
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
                requirements,
                placementError,
                sampling,
                maps,
                other,
                warmth);
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
