package darkrim.view.work;

import darkrim.diagnostic.Finding;
import darkrim.study.irradiance.SurfaceMap;
import darkrim.study.way.Way;
import darkrim.view.parts.Stage;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What there is to show. Immutable.
 *
 * @param stage the last layout that could be used; empty until there was one
 * @param facts what is known of its light; empty until something is known
 * @param maps maps of its surfaces by name, as fine as they are by now
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
        ways = List.copyOf(ways);
        errors = List.copyOf(errors);
    }

    /** A new layout, of whose light nothing is known. */
    public Content with(Stage other) {
        return new Content(
                Optional.of(other),
                Optional.empty(),
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
        return new Content(stage, before, maps, ways, errors, activity, progress, true, note, seen);
    }

    /** A position that cannot be shown; what is shown stays marked as of another. */
    Content impossible(String why, boolean more) {
        Optional<Facts> before = facts.map(known -> known.outdated("not of this value, which is not possible"));
        return new Content(stage, before, maps, ways, errors, "", -1, more, why, seen);
    }

    /** The same layout with what is known of its light. */
    public Content with(Facts other) {
        return new Content(stage, Optional.of(other), maps, ways, errors, activity, progress, moving, note, seen);
    }

    /** With maps that are new, or finer than before; those of another layout, or another position of it, are left out. */
    public Content mapped(List<SurfaceMap> finer) {
        Map<String, SurfaceMap> all = new HashMap<>(maps);
        finer.stream()
                .filter(map ->
                        stage.filter(shown -> map.cells().isOf(shown.scene())).isPresent())
                .forEach(map -> all.put(map.cells().surface().name(), map));
        return new Content(stage, facts, all, ways, errors, activity, progress, moving, note, seen);
    }

    /** With other ways of light; those in another layout, or another position of it, are left out. */
    public Content following(Stage in, List<Way> others) {
        if (stage.filter(shown -> shown.scene() == in.scene()).isEmpty()) {
            return this;
        }
        return new Content(stage, facts, maps, others, errors, activity, progress, moving, note, seen);
    }

    /** The last good layout, while the file has errors. */
    public Content refused(List<Finding> found) {
        return new Content(stage, facts, maps, ways, found, "", -1, false, note, seen);
    }

    /** While something is worked out. */
    public Content doing(String words, double share) {
        return new Content(stage, facts, maps, ways, errors, words, share, moving, note, seen);
    }

    /** With what a point sees. */
    Content seeing(SeenFrom other) {
        return new Content(stage, facts, maps, ways, errors, activity, progress, moving, note, Optional.of(other));
    }

    /** With something that the viewer should know. */
    public Content noting(String words) {
        return new Content(stage, facts, maps, ways, errors, activity, progress, moving, words, seen);
    }
}
