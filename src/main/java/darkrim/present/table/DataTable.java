package darkrim.present.table;

import darkrim.layout.Layout;
import darkrim.study.journal.CsvLine;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;

/**
 * A table for other programs. Fields are words, numbers, yes or no, or null for what is not there; numbers keep all their digits, and one that is not finite
 * counts as not there.
 *
 * @param name what it lists, such as {@code faces}
 * @param about what the whole of it is about, by name
 * @param columns the columns
 * @param rows the rows, each with a field for every column
 */
public record DataTable(String name, Map<String, Object> about, List<Column> columns, List<List<Object>> rows) {
    private static final int FORMAT = 1;
    private static final JsonMapper MAPPER =
            JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();

    /**
     * A column.
     *
     * @param name its name in words
     * @param unit unit of its numbers, such as {@code mm2}; empty where there is none
     */
    public record Column(String name, String unit) {
        /** The head of the column in comma-separated values. */
        String head() {
            return unit.isEmpty() ? name : name + " [" + unit + "]";
        }

        /** The key of the field in JSON. */
        String key() {
            return (unit.isEmpty() ? name : name + "_" + unit)
                    .replace("/", "_per_")
                    .replace(' ', '_')
                    .replace("-", "_");
        }
    }

    /** Copies the collections; rows may hold null. */
    public DataTable {
        about = Collections.unmodifiableMap(new LinkedHashMap<>(about));
        columns = List.copyOf(columns);
        rows = rows.stream()
                .map(row -> Collections.unmodifiableList(new ArrayList<>(row)))
                .toList();
        for (List<Object> row : rows) {
            if (row.size() != columns.size()) {
                throw new IllegalArgumentException(row.size() + " fields for " + columns.size() + " columns");
            }
        }
    }

    /** A column without a unit. */
    static Column column(String name) {
        return new Column(name, "");
    }

    /** A column of numbers in a unit. */
    static Column column(String name, String unit) {
        return new Column(name, unit);
    }

    /** A row; fields may be null. */
    static List<Object> row(Object... fields) {
        return new ArrayList<>(Arrays.asList(fields));
    }

    /** What a table of a layout says of it. */
    static Map<String, Object> about(Layout layout, String version) {
        Map<String, Object> about = new LinkedHashMap<>();
        about.put("program", "Darkrim " + version);
        about.put("layout", layout.source().name());
        about.put("sha256", layout.source().sha256());
        about.put("title", layout.title());
        about.put("revision", layout.revision());
        return about;
    }

    /** The table as comma-separated values (RFC 4180), with units in the head. */
    public String csv() {
        StringBuilder text =
                new StringBuilder(CsvLine.of(columns.stream().map(Column::head).toList()));
        for (List<Object> row : rows) {
            text.append(CsvLine.of(row.stream().map(DataTable::field).toList()));
        }
        return text.toString();
    }

    private static String field(Object value) {
        if (value instanceof Double number) {
            return Double.isFinite(number) ? CsvLine.number(number) : "";
        }
        if (value instanceof Boolean yes) {
            return CsvLine.answer(yes);
        }
        return value == null ? "" : value.toString();
    }

    /** The table as JSON, with units in the keys; an object for each row. */
    public String json() {
        Map<String, Object> document = new LinkedHashMap<>();
        document.put("format_version", FORMAT);
        document.put("table", name);
        document.putAll(about);
        List<Map<String, Object>> objects = new ArrayList<>();
        for (List<Object> row : rows) {
            Map<String, Object> object = new LinkedHashMap<>();
            for (int i = 0; i < columns.size(); i++) {
                object.put(columns.get(i).key(), known(row.get(i)));
            }
            objects.add(object);
        }
        document.put("rows", objects);
        return MAPPER.writeValueAsString(document) + "\n";
    }

    private static Object known(Object value) {
        return value instanceof Double number && !Double.isFinite(number) ? null : value;
    }
}
