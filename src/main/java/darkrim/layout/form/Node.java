package darkrim.layout.form;

import darkrim.diagnostic.Place;
import java.util.List;
import java.util.Optional;

/** What a text file says: a tree of mappings, lists and scalars, each with its place. */
public sealed interface Node {
    /** Where it begins. */
    Place place();

    /** What it is, for messages: {@code a list}, {@code a number}. */
    String describe();

    /**
     * A single value.
     *
     * @param text what is written, without quotes
     * @param style what the text is by the rules of YAML 1.2
     * @param place where it begins
     * @param quote characters between the place and the text; -1 where the text does not stand in the file
     *     character by character
     */
    record Scalar(String text, Style style, Place place, int quote) implements Node {
        /** The place of a character of the text, counted from 0. */
        public Place placeOf(int index) {
            return quote < 0 ? place : new Place(place.file(), place.line(), place.column() + quote + index);
        }

        @Override
        public String describe() {
            return switch (style) {
                case NOTHING -> "nothing";
                case FLAG -> "'" + text + "'";
                case NUMBER -> "the number " + text;
                case UNREADABLE -> "unreadable";
                case WORDS -> "the text '" + Wording.shortened(text) + "'";
            };
        }
    }

    /** What a scalar is by the rules of YAML 1.2. */
    enum Style {
        /** Empty, {@code ~} or {@code null}. */
        NOTHING,
        /** {@code true} or {@code false}. */
        FLAG,
        /** A number. */
        NUMBER,
        /** Any other text. */
        WORDS,
        /** What stood here cannot be read and has been reported. */
        UNREADABLE
    }

    /**
     * A list.
     *
     * @param items its items
     * @param place where it begins
     */
    record Items(List<Node> items, Place place) implements Node {
        /** Copies the list. */
        public Items {
            items = List.copyOf(items);
        }

        @Override
        public String describe() {
            return "a list";
        }
    }

    /**
     * A mapping; every key occurs once.
     *
     * @param entries its entries, in the order of the file
     * @param place where it begins
     */
    record Mapping(List<Entry> entries, Place place) implements Node {
        /** Copies the list. */
        public Mapping {
            entries = List.copyOf(entries);
        }

        /** The value of a key, if there is one. */
        public Optional<Node> find(String key) {
            return entries.stream()
                    .filter(entry -> entry.key().equals(key))
                    .map(Entry::value)
                    .findFirst();
        }

        @Override
        public String describe() {
            return "a mapping with keys";
        }
    }

    /**
     * An entry of a mapping.
     *
     * @param key its key
     * @param keyPlace where the key stands
     * @param value its value
     */
    record Entry(String key, Place keyPlace, Node value) {}
}
