package darkrim.layout.form;

import darkrim.diagnostic.Place;
import java.util.List;
import java.util.Map;

/** What was read at a place of the file, by the kind that the table asks for there. */
public sealed interface Value permits Amount, Fields, Value.Words, Value.Count, Value.Flag, Value.Items, Value.Named {
    /** Where it stands; the place of the mapping around it where a default holds. */
    Place place();

    /** Whether it and all in it were read without an error that leaves a gap. Of use when the quantities are settled. */
    boolean isWhole();

    /** A text. */
    record Words(String text, Place place) implements Value {
        @Override
        public boolean isWhole() {
            return true;
        }
    }

    /** A whole number. */
    record Count(long number, Place place) implements Value {
        @Override
        public boolean isWhole() {
            return true;
        }
    }

    /** Yes or no. */
    record Flag(boolean yes, Place place) implements Value {
        @Override
        public boolean isWhole() {
            return true;
        }
    }

    /**
     * A list.
     *
     * @param items what could be read of it
     * @param complete whether every item could be read
     * @param place where it stands
     */
    record Items(List<Value> items, boolean complete, Place place) implements Value {
        /** Copies the list. */
        public Items {
            items = List.copyOf(items);
        }

        @Override
        public boolean isWhole() {
            return complete && items.stream().allMatch(Value::isWhole);
        }
    }

    /**
     * Values by names that the designer chose, in the order of the file.
     *
     * @param values what could be read of them
     * @param places where the names stand
     * @param complete whether every entry could be read
     * @param place where the mapping stands
     */
    record Named(Map<String, Value> values, Map<String, Place> places, boolean complete, Place place) implements Value {
        @Override
        public boolean isWhole() {
            return complete && values.values().stream().allMatch(Value::isWhole);
        }
    }
}
