package darkrim.view.work;

import darkrim.diagnostic.Finding;
import darkrim.study.irradiance.SurfaceMap;
import darkrim.study.way.Way;
import darkrim.view.parts.Stage;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;

/**
 * What there is to show. Immutable.
 *
 * @param stage the last layout that could be used; empty until there was one
 * @param facts what is known of its light; empty until something is known
 * @param maps maps of its surfaces by name, as fine as they are by now
 * @param sources the light of sources beside the beam that were looked at, by name
 * @param ways ways of light to the selected surface
 * @param errors what is wrong with the layout file as it stands now; while there is something, all else is of before
 * @param activity what is being worked out, in words; empty where nothing is
 * @param progress how far that is, 0 to 1; negative where it is not known
 * @param moving whether a dimension is being dragged and more is to be found of its position
 * @param note something the viewer should know, one line; empty where there is nothing
 * @param seen what the chosen point sees; empty while none is chosen
 */
public record Content(
        Optional<Stage> stage,
        Optional<Facts> facts,
        Map<String, SurfaceMap> maps,
        Map<String, SourceFacts> sources,
        List<Way> ways,
        List<Finding> errors,
        String activity,
        double progress,
        boolean moving,
        String note,
        Optional<SeenFrom> seen) {
    /** Nothing yet. */
    public static final Content NOTHING = new Content(
            Optional.empty(),
            Optional.empty(),
            Map.of(),
            Map.of(),
            List.of(),
            List.of(),
            "reading the layout",
            -1,
            false,
            "",
            Optional.empty());

    /** Copies the collections. */
    public Content {
        maps = Map.copyOf(maps);
        sources = Map.copyOf(sources);
        ways = List.copyOf(ways);
        errors = List.copyOf(errors);
    }

    /** A new layout, of whose light nothing is known. */
    public Content with(Stage other) {
        return new Content(
                Optional.of(other),
                Optional.empty(),
                Map.of(),
                Map.of(),
                List.of(),
                List.of(),
                activity,
                progress,
                false,
                note,
                seen);
    }

    /** While a dimension is dragged: another position, or more of it. */
    Content moved(Stage position, Facts found, boolean more) {
        boolean same = stage.equals(Optional.of(position));
        return new Content(
                Optional.of(position),
                Optional.of(found),
                same ? maps : Map.of(),
                same ? sources : Map.of(),
                same ? ways : List.of(),
                List.of(),
                "",
                -1,
                more,
                "",
                seen);
    }

    /** A dimension leaves the position that is shown: what is known of it is marked, until the new one is. */
    Content leaving() {
        Optional<Facts> before =
                facts.map(known -> known.outdated("reckoning… what is shown is of the position before"));
        return new Content(stage, before, maps, sources, ways, errors, activity, progress, true, note, seen);
    }

    /** A position that cannot be shown; what is shown stays marked as of another. */
    Content impossible(String why, boolean more) {
        Optional<Facts> before = facts.map(known -> known.outdated("not of this value, which is not possible"));
        return new Content(stage, before, maps, sources, ways, errors, "", -1, more, why, seen);
    }

    /** The same layout with what is known of its light. */
    public Content with(Facts other) {
        return new Content(
                stage, Optional.of(other), maps, sources, ways, errors, activity, progress, moving, note, seen);
    }

    /** With maps that are new, or finer than before; those of another layout, or another position of it, are left out. */
    public Content mapped(List<SurfaceMap> finer) {
        Map<String, SurfaceMap> all = new HashMap<>(maps);
        finer.stream()
                .filter(map ->
                        stage.filter(shown -> map.cells().isOf(shown.scene())).isPresent())
                .forEach(map -> all.put(map.cells().surface().name(), map));
        return new Content(stage, facts, all, sources, ways, errors, activity, progress, moving, note, seen);
    }

    /** With what is known of the light of a source; that of another layout, or another position of it, is left out. */
    Content lit(Stage in, SourceFacts found) {
        if (stage.filter(shown -> shown.scene() == in.scene()).isEmpty()) {
            return this;
        }
        Map<String, SourceFacts> all = new HashMap<>(sources);
        all.put(found.source().name(), found);
        return with(all);
    }

    /** With more that is known of the light of a source, if something was known. */
    Content lit(String source, UnaryOperator<SourceFacts> more) {
        SourceFacts known = sources.get(source);
        return known == null ? this : lit(stage.orElseThrow(), more.apply(known));
    }

    private Content with(Map<String, SourceFacts> others) {
        return new Content(stage, facts, maps, others, ways, errors, activity, progress, moving, note, seen);
    }

    /**
     * The light of the beam or of a source, and what is known of it; empty without a layout, and where nothing is known of the source yet.
     *
     * @param source name of the source; empty for the beam
     */
    public Optional<Lighting> lighting(Optional<String> source) {
        return source.isPresent()
                ? Optional.ofNullable(sources.get(source.get())).map(Lighting::of)
                : stage.map(shown -> Lighting.of(shown, facts));
    }

    /** What is known of a surface in the light of the beam or of a source. */
    public Optional<SurfaceFacts> light(Optional<String> source, String surface) {
        return lighting(source).map(known -> known.surfaces().get(surface));
    }

    /** Maps in the light of the beam or of a source, by name of the surface. */
    public Map<String, SurfaceMap> maps(Optional<String> source) {
        return source.isEmpty()
                ? maps
                : Optional.ofNullable(sources.get(source.get()))
                        .map(SourceFacts::maps)
                        .orElse(Map.of());
    }

    /** How far the sampling of a source's light is, 0 to 1; empty where it is not sampled now. */
    public OptionalDouble sampled(Optional<String> source) {
        boolean wanted = !moving
                && source.isPresent()
                && stage.flatMap(shown -> SourceFinder.source(shown, source.get()))
                        .isPresent();
        SourceFacts known = wanted ? sources.get(source.get()) : null;
        double share = known == null ? 0 : known.progress();
        return wanted && share < 1 ? OptionalDouble.of(share) : OptionalDouble.empty();
    }

    /** Why the light of a source is not known, or not yet as well as it will be; empty for the beam, and where all is known. */
    public String wanting(Optional<String> source) {
        if (source.isEmpty() || stage.isEmpty()) {
            return "";
        }
        String name = source.get();
        if (SourceFinder.source(stage.get(), name).isEmpty()) {
            return "this layout has no distant source named " + name;
        }
        SourceFacts known = sources.get(name);
        if (known == null) {
            return "light of " + name + (moving ? " follows when the dimension rests" : " is being sampled");
        }
        return known.progress() < 1 ? "light of " + name + " at first sight, grows finer" : "";
    }

    /** With other ways of light; those in another layout, or another position of it, are left out. */
    public Content following(Stage in, List<Way> others) {
        if (stage.filter(shown -> shown.scene() == in.scene()).isEmpty()) {
            return this;
        }
        return new Content(stage, facts, maps, sources, others, errors, activity, progress, moving, note, seen);
    }

    /** The last good layout, while the file has errors. */
    public Content refused(List<Finding> found) {
        return new Content(stage, facts, maps, sources, ways, found, "", -1, false, note, seen);
    }

    /** While something is worked out. */
    public Content doing(String words, double share) {
        return new Content(stage, facts, maps, sources, ways, errors, words, share, moving, note, seen);
    }

    /** With what a point sees. */
    Content seeing(SeenFrom other) {
        return new Content(
                stage, facts, maps, sources, ways, errors, activity, progress, moving, note, Optional.of(other));
    }

    /** With something that the viewer should know. */
    public Content noting(String words) {
        return new Content(stage, facts, maps, sources, ways, errors, activity, progress, moving, words, seen);
    }
}
