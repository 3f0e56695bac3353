package darkrim.layout;

/** Which of two shapes the parts of a layout have. */
public enum ThermalShape {
    /** As drawn. */
    WARM,
    /** At the temperature at which the layout works. */
    COLD
}
