package darkrim.light;

/**
 * By what light comes to a receiver: a surface and the part of its finish.
 *
 * @param surface number of the reflecting surface
 * @param mirror whether by the mirror part; otherwise by the Lambertian part
 */
public record Reflector(int surface, boolean mirror) implements Comparable<Reflector> {
    @Override
    public int compareTo(Reflector other) {
        int bySurface = Integer.compare(surface, other.surface);
        return bySurface != 0 ? bySurface : Boolean.compare(mirror, other.mirror);
    }
}
