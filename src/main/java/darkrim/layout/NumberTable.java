package darkrim.layout;

import darkrim.diagnostic.Findings;
import darkrim.diagnostic.Place;
import darkrim.layout.form.Fields;
import darkrim.layout.form.Value;
import darkrim.layout.form.Wording;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Numbers from a text file of comma-separated values: lines that begin with # are notes, the first other line names the columns, every further one
 * has a number for each. No quotation marks: a number needs none, and so each error has its column.
 */
final class NumberTable {
    /** A file with more is wrong from top to bottom. */
    private static final int MOST_FINDINGS = 20;

    private static final int MOST_ROWS = 100_000;
    private static final String CODE = "table";

    private final String file;
    private final List<String> columns;
    private final Findings findings;
    private int errors;

    private NumberTable(String file, List<String> columns, Findings findings) {
        this.file = file;
        this.columns = columns;
        this.findings = findings;
    }

    /**
     * A row.
     *
     * @param numbers one for each column
     * @param places where each stands
     */
    record Row(List<Double> numbers, List<Place> places) {}

    /**
     * Reads a file that a layout names.
     *
     * @param files the files that the layout names
     * @param name the name as the layout has it
     * @param columns names of the columns that it must have, in this order
     * @param findings receives what is wrong with it
     * @return the rows; of use only where nothing is wrong
     */
    static List<Row> read(SideFiles files, Value name, List<String> columns, Findings findings) {
        String text = Fields.text(name);
        try {
            return read(files.shown(text), files.read(text), columns, findings);
        } catch (SideFiles.Unusable problem) {
            findings.error(
                    "file",
                    name.place(),
                    "'" + Wording.shortened(text) + "': " + problem.why()
                            + ", expected a CSV file in the layout's folder or below");
            return List.of();
        }
    }

    /** A list of numbers in the layout itself as a row. */
    static Row inline(Value list) {
        List<Value> items = ((Value.Items) list).items();
        return new Row(
                items.stream().map(Fields::number).toList(),
                items.stream().map(Value::place).toList());
    }

    /**
     * Reads a file.
     *
     * @param file its name, for messages
     * @param content its bytes, UTF-8
     * @param columns names of the columns that it must have, in this order
     * @param findings receives what is wrong with it
     * @return the rows; of use only where nothing is wrong
     */
    static List<Row> read(String file, byte[] content, List<String> columns, Findings findings) {
        NumberTable table = new NumberTable(file, columns, findings);
        try {
            return table.rows(StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(content))
                    .toString());
        } catch (CharacterCodingException notText) {
            findings.error(CODE, new Place(file, 1, 1), "the file is not text in UTF-8, expected it saved as UTF-8");
            return List.of();
        }
    }

    private List<Row> rows(String text) {
        List<Row> rows = new ArrayList<>();
        boolean named = false;
        int number = 0;
        for (String line : text.split("\\R", -1)) {
            number++;
            String bare = number == 1 && line.startsWith("\uFEFF") ? line.substring(1) : line;
            if (bare.isBlank() || bare.stripLeading().startsWith("#")) {
                continue;
            }
            if (!named) {
                named = true;
                if (!names(bare).equals(columns)) {
                    error(
                            new Place(file, number, 1),
                            "the columns are '" + Wording.shortened(bare.strip()) + "', expected '"
                                    + String.join(",", columns) + "'");
                    return rows;
                }
                continue;
            }
            row(bare, number, rows);
            if (errors >= MOST_FINDINGS || rows.size() > MOST_ROWS) {
                error(
                        new Place(file, number, 1),
                        "too many "
                                + (errors >= MOST_FINDINGS
                                        ? "errors, what follows was not read"
                                        : "rows, expected at most " + MOST_ROWS));
                return rows;
            }
        }
        if (rows.isEmpty() && errors == 0) {
            error(
                    new Place(file, number, 1),
                    "the file has no row of numbers, expected a line '" + String.join(",", columns)
                            + "' and numbers below it");
        }
        return rows;
    }

    private static List<String> names(String line) {
        return List.of(line.split(",", -1)).stream().map(String::strip).toList();
    }

    private void row(String line, int number, List<Row> rows) {
        String[] fields = line.split(",", -1);
        if (fields.length != columns.size()) {
            error(new Place(file, number, 1), "the row has " + fields.length + " values, expected " + columns.size());
            return;
        }
        double[] numbers = new double[fields.length];
        Place[] places = new Place[fields.length];
        int column = 1;
        boolean sound = true;
        for (int i = 0; i < fields.length; i++) {
            String field = fields[i].strip();
            places[i] = new Place(file, number, column + Math.max(0, fields[i].indexOf(field)));
            column += fields[i].length() + 1;
            try {
                // No hexadecimal numbers and no letters behind, which Double takes.
                boolean decimal = field.matches("[-+]?[0-9.]{1,40}([eE][-+]?[0-9]{1,4})?");
                numbers[i] = decimal ? Double.parseDouble(field) : Double.NaN;
            } catch (NumberFormatException noNumber) {
                numbers[i] = Double.NaN;
            }
            if (!Double.isFinite(numbers[i])) {
                error(
                        places[i],
                        "'" + Wording.shortened(field) + "' is not a number, expected one for " + columns.get(i));
                sound = false;
            }
        }
        if (sound) {
            rows.add(new Row(Arrays.stream(numbers).boxed().toList(), List.of(places)));
        }
    }

    private void error(Place place, String message) {
        errors++;
        findings.error(CODE, place, message);
    }
}
