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
        DIFFUSE("diffuse", 0),
        /** The mirror. */
        MIRROR("mirror", 1),
        /** The lobes about the mirror direction. */
        LOBE("lobe", 2);

        /** How many there are. */
        static final int SLOTS = 3;

        private static final Part[] BY_SLOT = values();

        private final String word;
        private final int slot;

        Part(String word, int slot) {
            this.word = word;
            this.slot = slot;
        }

        /** The word for it, as in tables. */
        public String word() {
            return word;
        }

        /** Its place in arrays that have one for each part. */
        int slot() {
            return slot;
        }

        /** The part that has a place. */
        static Part at(int slot) {
            return BY_SLOT[slot];
        }
    }

    @Override
    public int compareTo(Reflector other) {
        int bySurface = Integer.compare(surface, other.surface);
        return bySurface != 0 ? bySurface : part.compareTo(other.part);
    }
}
