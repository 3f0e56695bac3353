package darkrim.present.json;

import darkrim.study.irradiance.DarkProof;
import java.util.HashSet;
import java.util.Set;
import tools.jackson.databind.JsonNode;

/**
 * Which surfaces a saved result proves dark. Earlier files name a proof that holds for facets only like any other; that the
 * verdict beside it is no pass tells it.
 */
public final class SavedDarkness {
    private static final String PROVED = "proved_dark";
    private static final String BEHIND_FACETS = "dark_behind_facets";

    private final Set<String> doubted = new HashSet<>();

    /**
     * Looks at the verdicts.
     *
     * @param root the whole file
     */
    public SavedDarkness(JsonNode root) {
        for (JsonNode requirement : root.path("requirements")) {
            for (JsonNode outcome : requirement.path("outcomes")) {
                if (isBehindFacets(outcome)) {
                    doubted.add(outcome.path("surface").asString());
                }
            }
        }
    }

    /** Whether an outcome is that of a surface that is dark behind the facets only. */
    public static boolean isBehindFacets(JsonNode outcome) {
        String kind = outcome.at("/evidence/kind").asString("");
        return kind.equals(BEHIND_FACETS)
                || (kind.equals(PROVED) && !outcome.path("verdict").asString("").equals("pass"));
    }

    /** What is proved of the direct light on a surface, one entry of the list of them. */
    public DarkProof of(JsonNode surface) {
        String kind = surface.at("/darkness/kind").asString("");
        return kind.equals(BEHIND_FACETS)
                        || (kind.equals(PROVED)
                                && doubted.contains(surface.path("name").asString()))
                ? DarkProof.BEHIND_FACETS
                : kind.equals(PROVED) ? DarkProof.PROVED : DarkProof.NONE;
    }
}
