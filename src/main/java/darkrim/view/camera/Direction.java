package darkrim.view.camera;

/** The six standard directions, named by the side that the viewer looks from. */
public enum Direction {
    /** From the incoming light: x to the right, y up. */
    TOP(1, "from +z (top)", -90, 90),
    /** Against the light: x to the right, y down. */
    BOTTOM(2, "from -z (bottom)", -90, -90),
    /** x to the right, z up. */
    FRONT(3, "from -y (front)", -90, 0),
    /** x to the left, z up. */
    BACK(4, "from +y (back)", 90, 0),
    /** y to the left, z up. */
    LEFT(5, "from -x (left)", 180, 0),
    /** y to the right, z up. */
    RIGHT(6, "from +x (right)", 0, 0);

    private final int number;
    private final String words;
    private final double azimuth;
    private final double elevation;

    Direction(int number, String words, double azimuth, double elevation) {
        this.number = number;
        this.words = words;
        this.azimuth = azimuth;
        this.elevation = elevation;
    }

    /** Its number, from 1: the digit that stands for it on the keyboard. */
    public int number() {
        return number;
    }

    /** Its name for people. */
    public String words() {
        return words;
    }

    /** Angle of the viewer about +z from +x, deg. */
    public double azimuth() {
        return azimuth;
    }

    /** Angle of the viewer above the plane of x and y, deg. */
    public double elevation() {
        return elevation;
    }
}
