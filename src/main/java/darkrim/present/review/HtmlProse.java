package darkrim.present.review;

import darkrim.present.Prose;
import darkrim.present.Table;
import darkrim.verdict.Verdict;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Writes a part of a report, as the terminal shows it, on a page for a browser. Lives while one page is written. */
final class HtmlProse implements Prose {
    /** Tables of no more rows are not cut by the end of a page. */
    private static final int SHORT = 12;

    private final Markup page;
    private final String command;
    private boolean skips;

    /**
     * @param page the page
     * @param command the command that shows long lists whole
     * @param skipsFirst whether the first heading is left out, as another one stands in its place
     */
    HtmlProse(Markup page, String command, boolean skipsFirst) {
        this.page = page;
        this.command = command;
        this.skips = skipsFirst;
    }

    @Override
    public void heading(String words) {
        if (!skips) {
            page.words("h3", words);
        }
        skips = false;
    }

    @Override
    public void line(String words) {
        if (!words.isBlank()) {
            page.open("p", "class", "line").names(words.strip()).close();
        }
    }

    @Override
    public void space() {
        // Paragraphs and tables stand apart by themselves.
    }

    @Override
    public void paragraph(String first, String next, String words) {
        if (!words.isBlank()) {
            String lead = first.strip().equals("-") ? "" : first.stripLeading();
            page.open("p", "class", next.isEmpty() ? "plain" : first.startsWith(" ") ? "in" : "hang")
                    .names(lead + words)
                    .close();
        }
    }

    @Override
    public void table(Table table) {
        List<Table.Head> heads = table.heads();
        page.open("table", "class", table.rows().size() <= SHORT ? "short" : "long")
                .open("thead")
                .open("tr");
        heads.forEach(this::head);
        page.close().close().open("tbody");
        for (List<String> row : table.rows()) {
            page.open("tr");
            for (int i = 0; i < row.size(); i++) {
                cell(heads.get(i), row.get(i).strip());
            }
            page.close();
        }
        page.close().close();
    }

    /** A column without words has no head: one that is empty would be read out as one. */
    private void head(Table.Head head) {
        String words = head.header().strip();
        if (words.isEmpty()) {
            page.words("td", "");
        } else {
            page.words("th", words, "scope", "col", "class", head.number() ? "number" : "plain");
        }
    }

    private void cell(Table.Head head, String words) {
        Optional<Verdict> verdict = verdict(words);
        if (verdict.isPresent()) {
            page.open("td");
            verdict(page, verdict.get());
            page.close();
        } else {
            page.open("td", "class", head.number() ? "number" : head.name() ? "name" : "plain")
                    .names(words)
                    .close();
        }
    }

    @Override
    public String whole() {
        return "'darkrim " + command + " --verbose' lists all";
    }

    private static Optional<Verdict> verdict(String words) {
        return Stream.of(Verdict.values())
                .filter(each -> each.name().equals(words))
                .findFirst();
    }

    /** A verdict as a word with a sign and a border of its own: it can be read without colour. */
    static void verdict(Markup page, Verdict verdict) {
        page.open("span", "class", "verdict " + verdict.name().toLowerCase(java.util.Locale.ROOT))
                .text(sign(verdict) + " " + verdict.name())
                .closeInLine();
    }

    /** Filled circle, triangle, empty circle. */
    private static String sign(Verdict verdict) {
        return switch (verdict) {
            case PASS -> "\u25cf";
            case FAIL -> "\u25b2";
            case UNDECIDED -> "\u25cb";
        };
    }
}
