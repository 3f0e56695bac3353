package darkrim.present.picture;

/** A line of sight in plain numbers. Mutable and used over and over, one for each thread. */
final class SightLine {
    /** Where it starts, mm. */
    double x;

    double y;
    double z;
    /** Its direction, unit length. */
    double dx;

    double dy;
    double dz;
}
