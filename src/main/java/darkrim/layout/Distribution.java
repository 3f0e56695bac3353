package darkrim.layout;

/** How the deviations of many builds spread. */
public enum Distribution {
    /** Every deviation within the tolerance is as likely as any other. */
    UNIFORM,
    /** Bell-shaped about the middle of the tolerance; it goes on beyond the ends. */
    NORMAL,
    /** Most likely as drawn, falling off in straight lines to the ends of the tolerance. */
    TRIANGULAR
}
