package darkrim.light;

import java.util.List;

/**
 * The surfaces that reflect light on its way from the pupil to a receiver, in the order in which light meets them.
 *
 * @param reflectors the surfaces with the parts of their finishes, at least one
 */
public record ReflectionPath(List<Reflector> reflectors) implements Comparable<ReflectionPath> {
    /** Copies the list. */
    public ReflectionPath {
        reflectors = List.copyOf(reflectors);
        if (reflectors.isEmpty()) {
            throw new IllegalArgumentException("no surface reflects");
        }
    }

    /** How often light is reflected on it. */
    public int order() {
        return reflectors.size();
    }

    /** The surface that light meets last before the receiver, and the part of its finish. */
    public Reflector last() {
        return reflectors.get(reflectors.size() - 1);
    }

    /** Whether light is thrown by mirrors or lobes only: a glint. Otherwise some surface scatters it to all sides. */
    public boolean isGlint() {
        return reflectors.stream().noneMatch(each -> each.part() == Reflector.Part.DIFFUSE);
    }

    @Override
    public int compareTo(ReflectionPath other) {
        int byOrder = Integer.compare(order(), other.order());
        for (int i = 0; i < order() && byOrder == 0; i++) {
            byOrder = reflectors.get(i).compareTo(other.reflectors.get(i));
        }
        return byOrder;
    }
}
