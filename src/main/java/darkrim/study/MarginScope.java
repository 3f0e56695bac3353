package darkrim.study;

/** Which margins of direct light are looked for. */
public enum MarginScope {
    /** None. */
    NONE,
    /** Of each requirement the least; of openings none. */
    REQUIREMENTS,
    /** Of each requirement the least; of each opening all. */
    LEAST,
    /** Of each surface its own; of each opening all. */
    ALL
}
