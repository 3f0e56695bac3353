package darkrim.light;

/**
 * By what light comes to a receiver: a surface and the part of its finish.
 *
 * @param surface number of the reflecting surface
 * @param part which part of its finish
 */
public record Reflector(int surface, Part part) implements Comparable<Reflector> {
    /** A part of a finish. */
    public enum Part {
        /** What scatters to all sides. */
        DIFFUSE,
        /** The mirror. */
        MIRROR,
        /** The lobes about the mirror direction. */
        LOBE;

        /** The word for it, as in tables. */
        public String word() {
            return switch (this) {
                case DIFFUSE -> "diffuse";
                case MIRROR -> "mirror";
                case LOBE -> "lobe";
            };
        }
    }

    @Override
    public int compareTo(Reflector other) {
        int bySurface = Integer.compare(surface, other.surface);
        return bySurface != 0 ? bySurface : part.compareTo(other.part);
    }
}
