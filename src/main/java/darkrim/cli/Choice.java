package darkrim.cli;

import darkrim.layout.form.Wording;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/**
 * Reads one of some words.
 *
 * @param <T> what the words stand for
 */
class Choice<T> implements ITypeConverter<T> {
    private final Map<String, T> meanings;

    /**
     * @param words the words, in the order of messages
     * @param meanings what they stand for, one each
     */
    Choice(List<String> words, List<T> meanings) {
        Map<String, T> all = new LinkedHashMap<>();
        for (int i = 0; i < words.size(); i++) {
            all.put(words.get(i), meanings.get(i));
        }
        this.meanings = Collections.unmodifiableMap(all);
    }

    @Override
    public T convert(String text) {
        T meaning = meanings.get(text);
        if (meaning == null) {
            throw new TypeConversionException(
                    "expected " + Wording.anyOf(meanings.keySet()) + ", got '" + Wording.shortened(text) + "'");
        }
        return meaning;
    }
}
