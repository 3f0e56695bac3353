package darkrim.layout.form;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Iterator;
import java.util.Optional;
import java.util.Set;

/**
 * The mappings with fixed keys around the one that is being read: a key that is unknown there may belong to one of them and stand too deep. For
 * use by one thread.
 */
final class EnclosingKeys {
    /** The innermost first. */
    private final Deque<Level> levels = new ArrayDeque<>();

    /** A mapping: its keys, which part of the file it is, and which keys it has. */
    private record Level(Kind.Structure structure, String where, Set<String> present) {
        boolean lacks(String key) {
            return structure.key(key).isPresent() && !present.contains(key);
        }
    }

    /** Goes into a mapping. */
    void enter(Kind.Structure structure, String where, Set<String> present) {
        levels.push(new Level(structure, where, present));
    }

    /** Goes out of the innermost mapping. */
    void leave() {
        levels.pop();
    }

    /**
     * The innermost mapping around the present one that has room for a key.
     *
     * @return which part of the file it is, such as {@code parts.lid}; empty if there is none
     */
    Optional<String> holderOf(String key) {
        Iterator<Level> outward = levels.iterator();
        if (outward.hasNext()) {
            outward.next();
        }
        while (outward.hasNext()) {
            Level level = outward.next();
            if (level.lacks(key)) {
                return Optional.of(level.where());
            }
        }
        return Optional.empty();
    }

    /** What the innermost mapping itself takes for a key that it lacks: the entry of a mapping of names in it may be meant for it. */
    Optional<Kind> takenFor(String key) {
        return Optional.ofNullable(levels.peek())
                .filter(level -> level.lacks(key))
                .flatMap(level -> level.structure().key(key))
                .map(Key::kind);
    }

    /** Which part of the file the innermost mapping is. */
    String where() {
        return levels.element().where();
    }
}
