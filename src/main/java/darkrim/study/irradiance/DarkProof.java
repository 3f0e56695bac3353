package darkrim.study.irradiance;

import darkrim.verdict.Evidence;
import java.util.Optional;

/** Whether a surface is proved to get no direct light. */
public enum DarkProof {
    /** It is not: its direct light is sampled. */
    NONE("not proved dark"),
    /** It is behind the facets, but not behind the curved surfaces that they stand for. */
    BEHIND_FACETS("dark behind the facets"),
    /** It is. */
    PROVED("proved dark");

    private final String words;

    DarkProof(String words) {
        this.words = words;
    }

    /** In words. */
    public String words() {
        return words;
    }

    /** What evidence of direct light proves. */
    public static DarkProof of(Optional<Evidence> evidence) {
        Evidence known = evidence.orElse(null);
        return known instanceof Evidence.ProvedDark
                ? PROVED
                : known instanceof Evidence.DarkBehindFacets ? BEHIND_FACETS : NONE;
    }
}
