package darkrim.layout.form;

import java.util.Collections;
import java.util.List;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;

/** The kinds of values that a key can have. Both the reading and the JSON Schema follow from it. */
public sealed interface Kind {
    /** What is expected, for messages: {@code a length}, {@code a list of 2}. */
    String expected();

    /**
     * One line of text.
     *
     * @param letters which texts are allowed
     * @param numberToo whether a number is taken as text
     */
    record Text(Letters letters, boolean numberToo) implements Kind {
        @Override
        public String expected() {
            return letters.expected();
        }
    }

    /**
     * A number, a number with a unit, or a formula over named dimensions.
     *
     * @param name short name of this kind, unique
     * @param measure what it measures; empty where any is allowed
     * @param range what is allowed, in mm, degrees, or plain
     */
    record Numeric(String name, Optional<Measure> measure, Range range) implements Kind {
        @Override
        public String expected() {
            return measure.map(Measure::toString).orElse("a length, an angle or a plain number");
        }
    }

    /**
     * A whole number.
     *
     * @param least least allowed
     * @param most most allowed
     */
    record Whole(long least, long most) implements Kind {
        @Override
        public String expected() {
            return "a whole number from " + least + " to " + most;
        }
    }

    /** Yes or no. */
    record Flag() implements Kind {
        @Override
        public String expected() {
            return "true or false";
        }
    }

    /**
     * One of some words.
     *
     * @param words the words
     */
    record Choice(List<String> words) implements Kind {
        /** Copies the list. */
        public Choice {
            words = List.copyOf(words);
        }

        @Override
        public String expected() {
            return Wording.anyOf(words);
        }
    }

    /**
     * A list.
     *
     * @param item what each item is
     * @param least least number of items
     * @param most most items
     */
    record ListOf(Kind item, int least, int most) implements Kind {
        @Override
        public String expected() {
            return "a list of " + count() + " values" + example();
        }

        /** How many items it has: {@code 2}, {@code 1 to 4}. */
        public String count() {
            return least == most ? String.valueOf(least) : least + " to " + most;
        }

        /** Of a few numbers: whoever writes one number or {@code 2x1} sees the form. */
        private String example() {
            return isOfNumbers() && least == most && most <= 3
                    ? ", such as " + List.of(1, 2, 3).subList(0, most)
                    : "";
        }

        /** Whether its items are numbers, which stand in brackets on one line. */
        boolean isOfNumbers() {
            return item instanceof Numeric || item instanceof Whole;
        }
    }

    /**
     * A mapping whose keys are names that the designer chooses.
     *
     * @param letters which names are allowed
     * @param item what each value is
     * @param least least number of entries
     * @param most most entries
     */
    record Named(Letters letters, Kind item, int least, int most) implements Kind {
        @Override
        public String expected() {
            return "a mapping from names to values";
        }
    }

    /**
     * A mapping with fixed keys.
     *
     * @param name what it describes, such as {@code plate}; unique
     * @param keys its keys
     * @param exactlyOneOf keys of which exactly one must be given; empty where there is no such choice
     * @param needed by key, another that must be given with it
     */
    record Structure(String name, List<Key> keys, List<String> exactlyOneOf, NavigableMap<String, String> needed)
            implements Kind {
        /** Copies the collections. */
        public Structure {
            keys = List.copyOf(keys);
            exactlyOneOf = List.copyOf(exactlyOneOf);
            needed = Collections.unmodifiableNavigableMap(new TreeMap<>(needed));
        }

        /** A mapping of which no key needs another. */
        public Structure(String name, List<Key> keys, List<String> exactlyOneOf) {
            this(name, keys, exactlyOneOf, Collections.emptyNavigableMap());
        }

        /** A mapping without a choice of keys. */
        public static Structure of(String name, Key... keys) {
            return new Structure(name, List.of(keys), List.of());
        }

        /** The key of this name. */
        public Optional<Key> key(String wanted) {
            return keys.stream().filter(key -> key.name().equals(wanted)).findFirst();
        }

        @Override
        public String expected() {
            List<String> needed =
                    keys.stream().filter(Key::required).map(Key::name).toList();
            List<String> shown = needed.isEmpty() ? keys.stream().map(Key::name).toList() : needed;
            return "a mapping with the key" + (shown.size() == 1 ? " " : "s ") + String.join(", ", shown);
        }
    }

    /**
     * A mapping whose keys depend on one of them.
     *
     * @param name what it describes; unique
     * @param selector the key that decides, such as {@code kind}
     * @param sentence what the selector means
     * @param fallback the case that holds where the selector is not given; empty where it must be given
     * @param cases the cases by the word that the selector has, as a list of structures whose names begin with the word
     */
    record Variants(String name, String selector, String sentence, Optional<String> fallback, List<Case> cases)
            implements Kind {
        /** Copies the list. */
        public Variants {
            cases = List.copyOf(cases);
        }

        /** The words that the selector can have. */
        public List<String> words() {
            return cases.stream().map(Case::word).toList();
        }

        @Override
        public String expected() {
            return "a mapping with the key '" + selector + "'";
        }
    }

    /**
     * A case of {@link Variants}.
     *
     * @param word the word that selects it
     * @param structure the other keys
     */
    record Case(String word, Structure structure) {}

    /**
     * One of several kinds, told apart by their form: scalar, list or mapping; among scalars the first choice whose
     * word is met.
     *
     * @param kinds the kinds
     */
    record Either(List<Kind> kinds) implements Kind {
        /** Copies the list. */
        public Either {
            kinds = List.copyOf(kinds);
        }

        @Override
        public String expected() {
            return String.join(" or ", kinds.stream().map(Kind::expected).toList());
        }
    }
}
