package darkrim.study.live;

/** How much is known of a position, from little to all. */
public enum LiveDetail {
    /** What proof says of direct light, and the share of the pupil; a proof that takes long is left undecided. */
    DIRECT,
    /** With margins, of some requirements or of all. */
    MARGINS,
    /** With the long proofs, and once-reflected light sampled in part: its bounds hold at every look. */
    REFLECTED,
    /** All is decided, or the budget of the layout is spent. */
    FINISHED
}
