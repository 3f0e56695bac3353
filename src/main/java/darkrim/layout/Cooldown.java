package darkrim.layout;

/**
 * The temperatures between which a layout is cooled.
 *
 * @param drawnAt temperature at which the dimensions hold, K
 * @param worksAt temperature at which the parts work, K, at most the first
 * @param shape which of the two shapes the parts have
 */
public record Cooldown(double drawnAt, double worksAt, ThermalShape shape) {
    /** The same in another shape. */
    public Cooldown in(ThermalShape other) {
        return new Cooldown(drawnAt, worksAt, other);
    }

    /** Whether the parts have their shape at the temperature at which they work. */
    public boolean isCold() {
        return shape == ThermalShape.COLD;
    }

    /** The temperature of the parts in the shape that they have, K. */
    public double temperature() {
        return isCold() ? worksAt : drawnAt;
    }
}
