package darkrim.layout.form;

import darkrim.diagnostic.Place;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** The values of a mapping with fixed keys, defaults filled in. The typed methods may be called only where it {@link #isWhole}. */
public final class Fields implements Value {
    private final String variant;
    private final Map<String, Value> values;
    private final boolean complete;
    private final Place place;

    Fields(String variant, Map<String, Value> values, boolean complete, Place place) {
        this.variant = variant;
        this.values = Collections.unmodifiableMap(new LinkedHashMap<>(values));
        this.complete = complete;
        this.place = place;
    }

    /** The word that selected the keys, such as {@code plate}; empty where the keys are always the same. */
    public String variant() {
        return variant;
    }

    @Override
    public Place place() {
        return place;
    }

    @Override
    public boolean isWhole() {
        return complete && values.values().stream().allMatch(Value::isWhole);
    }

    /** Whether a key has a value. */
    public boolean has(String key) {
        return values.containsKey(key);
    }

    /** The value of a key, if there is one. */
    public Optional<Value> find(String key) {
        return Optional.ofNullable(values.get(key));
    }

    /** Where the value of a key stands; where the mapping stands if there is none. */
    public Place place(String key) {
        return find(key).map(Value::place).orElse(place);
    }

    /** A number in mm, degrees, or plain. */
    public double number(String key) {
        return number(of(key));
    }

    /** One number, or a list of numbers. */
    public List<Double> numbers(String key) {
        return of(key) instanceof Items list
                ? list.items().stream().map(Fields::number).toList()
                : List.of(number(key));
    }

    /** A whole number. */
    public int count(String key) {
        return Math.toIntExact(longCount(of(key)));
    }

    /** A whole number that may be large. */
    public long longCount(String key) {
        return longCount(of(key));
    }

    /** One whole number, or a list of them. */
    public List<Integer> counts(String key) {
        List<Integer> counts = new ArrayList<>();
        for (Value item : listed(of(key))) {
            counts.add(Math.toIntExact(longCount(item)));
        }
        return counts;
    }

    /** A text. */
    public String text(String key) {
        return text(of(key));
    }

    /** A list of texts. */
    public List<String> texts(String key) {
        return listed(of(key)).stream().map(Fields::text).toList();
    }

    /** Yes or no. */
    public boolean flag(String key) {
        return ((Flag) of(key)).yes();
    }

    /** A mapping. */
    public Fields fields(String key) {
        return (Fields) of(key);
    }

    /** The value itself or, where it is a list, its items. */
    public List<Value> list(String key) {
        return find(key).map(Fields::listed).orElse(List.of());
    }

    /** A mapping that may be absent, turned into something. */
    public <T> Optional<T> ifGiven(String key, Function<Fields, T> reader) {
        return find(key).map(value -> reader.apply((Fields) value));
    }

    private Value of(String key) {
        Value value = values.get(key);
        if (value == null) {
            throw new IllegalStateException("the key '" + key + "' has no value at " + place);
        }
        return value;
    }

    private static List<Value> listed(Value value) {
        return value instanceof Items list ? list.items() : List.of(value);
    }

    /** A number in mm, degrees, or plain. */
    public static double number(Value value) {
        return ((Amount) value).value();
    }

    /** A text. */
    public static String text(Value value) {
        return ((Words) value).text();
    }

    private static long longCount(Value value) {
        return ((Count) value).number();
    }
}
