package darkrim.layout;

/** What a number measures. */
public enum Quantity {
    /** A length, mm inside the program. */
    LENGTH,
    /** An angle, degrees inside the program. */
    ANGLE,
    /** A number without a unit. */
    NUMBER
}
