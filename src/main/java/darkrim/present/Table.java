package darkrim.present;

import com.github.freva.asciitable.AsciiTable;
import com.github.freva.asciitable.Column;
import com.github.freva.asciitable.HorizontalAlign;
import com.github.freva.asciitable.Styler;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;

/**
 * A table. As text it has a fixed width and no lines but one below the header; columns of surface names are shortened where the page is too narrow, as
 * far as different names stay different.
 */
public final class Table {
    private static final Character[] RULE_BELOW_HEADER = rule();
    /** The library cuts cells at this width; no cell of ours is as wide. */
    private static final int UNLIMITED = 10_000;
    /** Names are not shortened below this. */
    private static final int LEAST_NAME = 24;

    private static final int GAP = 2;

    private record Col(String header, HorizontalAlign align, boolean name, UnaryOperator<String> dye) {}

    /**
     * The head of a column.
     *
     * @param header its words
     * @param number whether it holds numbers, which stand to the right
     * @param name whether it holds names of surfaces or the like, which may be long
     */
    public record Head(String header, boolean number, boolean name) {}

    private final List<Col> columns = new ArrayList<>();
    private final List<String[]> rows = new ArrayList<>();

    /** A column of words. */
    public Table words(String header) {
        columns.add(new Col(header, HorizontalAlign.LEFT, false, UnaryOperator.identity()));
        return this;
    }

    /** A column of words that are dyed after the widths are known. */
    public Table words(String header, UnaryOperator<String> dye) {
        columns.add(new Col(header, HorizontalAlign.LEFT, false, dye));
        return this;
    }

    /** A column of names, which may be shortened in the middle. */
    public Table names(String header) {
        columns.add(new Col(header, HorizontalAlign.LEFT, true, UnaryOperator.identity()));
        return this;
    }

    /** A column of numbers, right-aligned. */
    public Table numbers(String header) {
        columns.add(new Col(header, HorizontalAlign.RIGHT, false, UnaryOperator.identity()));
        return this;
    }

    /** A row, as many cells as columns. */
    public void row(String... cells) {
        if (cells.length != columns.size()) {
            throw new IllegalArgumentException(cells.length + " cells for " + columns.size() + " columns");
        }
        rows.add(cells);
    }

    /** The heads of the columns. */
    public List<Head> heads() {
        return columns.stream()
                .map(column -> new Head(column.header(), column.align() == HorizontalAlign.RIGHT, column.name()))
                .toList();
    }

    /** The cells, row by row, in full. */
    public List<List<String>> rows() {
        return rows.stream().map(List::of).toList();
    }

    /** The table as lines, at most as wide as the page if shortening names can do it and leaves them different. */
    String text() {
        int[] widths = fit(widths());
        for (int i = 0; i < widths.length; i++) {
            while (columns.get(i).name() && confuses(i, widths[i])) {
                widths[i]++;
            }
        }
        String[][] cells = rows.stream().map(row -> shortened(row, widths)).toArray(String[][]::new);
        Column[] shape = columns.stream()
                .map(column -> new Column()
                        .header(column.header())
                        .headerAlign(column.align())
                        .dataAlign(column.align())
                        .maxWidth(UNLIMITED))
                .toArray(Column[]::new);
        return AsciiTable.builder()
                .lineSeparator("\n")
                .border(RULE_BELOW_HEADER)
                .styler(new Dyes())
                .data(shape, cells)
                .asString()
                .lines()
                // The library puts a space before the first column.
                .map(line -> line.substring(1))
                .collect(Collectors.joining("\n"));
    }

    private int[] widths() {
        int[] widths = new int[columns.size()];
        for (int i = 0; i < widths.length; i++) {
            int at = i;
            widths[i] = Math.max(
                    columns.get(i).header().length(),
                    rows.stream().mapToInt(row -> row[at].length()).max().orElse(0));
        }
        return widths;
    }

    /** Takes width from the widest column of names until the page is wide enough, or no name can be shortened further. */
    private int[] fit(int[] widths) {
        int over = GAP * widths.length - 1 - Page.WIDTH;
        for (int width : widths) {
            over += width;
        }
        while (over > 0) {
            int widest = -1;
            for (int i = 0; i < widths.length; i++) {
                boolean can = columns.get(i).name() && widths[i] > LEAST_NAME;
                if (can && (widest < 0 || widths[i] > widths[widest])) {
                    widest = i;
                }
            }
            if (widest < 0) {
                return widths;
            }
            widths[widest]--;
            over--;
        }
        return widths;
    }

    /** Whether different names of a column would read alike at a width. */
    private boolean confuses(int column, int width) {
        Set<String> names = rows.stream().map(row -> row[column]).collect(Collectors.toSet());
        return names.stream()
                        .map(name -> Printable.within(width, name))
                        .distinct()
                        .count()
                < names.size();
    }

    private String[] shortened(String[] row, int[] widths) {
        String[] cells = row.clone();
        for (int i = 0; i < cells.length; i++) {
            if (columns.get(i).name()) {
                cells[i] = Printable.within(widths[i], cells[i]);
            }
        }
        return cells;
    }

    /** Dyes whole cells, padding and all, once the library has laid them out. */
    private final class Dyes implements Styler {
        @Override
        public List<String> styleCell(Column column, int row, int col, List<String> lines) {
            return lines.stream().map(columns.get(col).dye()).toList();
        }
    }

    private static Character[] rule() {
        Character[] none = AsciiTable.NO_BORDERS.clone();
        Character[] basic = AsciiTable.BASIC_ASCII_NO_DATA_SEPARATORS_NO_OUTSIDE_BORDER;
        for (int i = 0; i < none.length; i++) {
            if (basic[i] != null && basic[i] == '-') {
                none[i] = basic[i];
            }
        }
        return none;
    }
}
