package darkrim.present;

import java.util.List;
import org.apache.commons.text.WordUtils;

/** Text that grows from top to bottom, wrapped to a width. Mutable, for one report. */
final class Page implements Prose {
    /** Columns of a page. */
    static final int WIDTH = 100;

    private final StringBuilder text = new StringBuilder();

    /** A heading with space above it and a rule below. */
    @Override
    public void heading(String words) {
        text.append('\n').append(words).append('\n');
        text.append("-".repeat(words.length())).append('\n');
    }

    @Override
    public void line(String words) {
        text.append(words.stripTrailing()).append('\n');
    }

    @Override
    public void space() {
        text.append('\n');
    }

    @Override
    public void paragraph(String first, String next, String words) {
        int width = WIDTH - Math.max(first.length(), next.length());
        List<String> lines = WordUtils.wrap(words, width, "\n", false).lines().toList();
        for (int i = 0; i < lines.size(); i++) {
            line((i == 0 ? first : next) + lines.get(i));
        }
    }

    @Override
    public void table(Table table) {
        block(table.text());
    }

    @Override
    public String whole() {
        return "all with --verbose";
    }

    /** Text of several lines. */
    void block(String lines) {
        lines.lines().forEach(this::line);
    }

    /** All of it. */
    String text() {
        return text.toString();
    }
}
