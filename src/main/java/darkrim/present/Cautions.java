package darkrim.present;

import java.util.List;

/** What a result does not cover. Stands in every result; docs/cautions.md says more of each. */
public final class Cautions {
    /** What a check leaves out, and light paths show. */
    static final String REFLECTED_AGAIN = "light after more than one reflection ('darkrim paths' measures it)";

    /** Effects that a check does not model. */
    public static final List<String> NOT_MODELLED = List.of(
            "diffraction",
            "polarisation",
            "dependence on wavelength within the band",
            REFLECTED_AGAIN,
            "finishes that turn with the surface, such as brushed faces",
            "what passes through transparent bodies",
            "thermal contraction and motion of parts",
            "gaps between bond wires (a row of wires is one solid)",
            "dust and scratches",
            "thermal emission of the parts");

    /** What a reader of a result must know. */
    public static final List<String> CAUTIONS = List.of(
            "A verdict here does not replace measurement, the project's own review, local codes and licensed practice.",
            "It holds for the layout as written: nominal dimensions, the finishes stated, the beam stated.",
            "Reflectances are only as good as their source: measure your own coatings.",
            "Parts that run into one another are named in a warning: what lies inside another part counts as dark.");

    private Cautions() {}
}
