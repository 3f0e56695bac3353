package darkrim.present.review;

import darkrim.layout.Layout;
import darkrim.present.CheckSections;
import darkrim.present.Figures;
import darkrim.present.HeadCautions;
import darkrim.present.LayoutWords;
import darkrim.present.drawing.SectionSheet;
import darkrim.present.drawing.SvgSheet;
import darkrim.study.CheckResult;
import darkrim.study.irradiance.LightKind;
import darkrim.study.review.InputHash;
import darkrim.study.review.Review;
import darkrim.study.section.LayoutSection;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A review as one page of HTML that refers to nothing outside itself, for a browser and for paper. */
public final class ReviewPage {
    private static final String STYLE = "/darkrim/review/review.css";
    /** On paper all letters are of the one font that is embedded. */
    private static final String LETTERS_ON_PAPER = "code { font-family: \"Liberation Sans\"; }\n";

    private static final String SVG = "image/svg+xml";

    private final Review review;
    private final CheckResult result;
    private final Layout layout;
    private final Imprint imprint;
    private final Pictures pictures;
    private final boolean paper;

    private ReviewPage(Review review, Imprint imprint, int threads, boolean paper) {
        this.review = review;
        this.result = review.result();
        this.layout = result.layout();
        this.imprint = imprint;
        this.pictures = new Pictures(review, threads);
        this.paper = paper;
    }

    /**
     * The page.
     *
     * @param review what was found
     * @param imprint how it came about
     * @param threads threads that draw pictures; never changes a result
     */
    public static String of(Review review, Imprint imprint, int threads) {
        return new ReviewPage(review, imprint, threads, false).text();
    }

    /** The page with empty sheets where section drawings go, and bookmarks as the library knows them that sets it on paper. */
    static String forPaper(Review review, Imprint imprint, int threads) {
        return new ReviewPage(review, imprint, threads, true).text();
    }

    /** The section drawings, in the order of the sheets. */
    static List<SectionSheet> sheets(Review review, Imprint imprint) {
        return review.sections().stream()
                .map(section -> sheet(section, review, imprint))
                .toList();
    }

    private static SectionSheet sheet(LayoutSection section, Review review, Imprint imprint) {
        return SectionSheet.of(
                section,
                new SectionSheet.Imprint(
                        imprint.version(), review.result().effort().seed(), Optional.of(imprint.date())));
    }

    private record Chapter(String title, Runnable body) {}

    private final Markup page = new Markup();

    private String text() {
        List<Chapter> chapters = chapters();
        page.doctype().open("html", "xmlns", "http://www.w3.org/1999/xhtml", "lang", "en");
        page.open("head").single("meta", "charset", "utf-8");
        page.words(
                "title", LayoutWords.title(layout) + ": " + result.judgement().verdict());
        page.single("meta", "name", "viewport", "content", "width=device-width, initial-scale=1");
        page.style(paper ? style() + LETTERS_ON_PAPER : style());
        if (paper) {
            bookmarks(chapters);
        }
        page.close();
        page.open("body").open("main");
        first(chapters);
        int number = 0;
        for (Chapter chapter : chapters) {
            number++;
            page.open("section", "class", number == 1 ? "begins" : "goes-on");
            page.words("h2", number + "  " + chapter.title(), "id", "chapter-" + number);
            chapter.body().run();
            page.close();
        }
        return page.close().close().close().end();
    }

    private void bookmarks(List<Chapter> chapters) {
        page.open("bookmarks");
        for (int i = 0; i < chapters.size(); i++) {
            page.single("bookmark", "name", (i + 1) + "  " + chapters.get(i).title(), "href", "#chapter-" + (i + 1));
        }
        page.close();
    }

    private List<Chapter> chapters() {
        List<Chapter> chapters = new ArrayList<>();
        chapters.add(new Chapter("Evidence", () -> CheckSections.evidence(prose(true), result)));
        if (!result.feasibility().isEmpty()) {
            chapters.add(
                    new Chapter("Feasibility of the openings", () -> CheckSections.feasibility(prose(true), result)));
        }
        chapters.add(new Chapter("Margins", this::margins));
        chapters.add(new Chapter("Light paths", this::paths));
        chapters.add(new Chapter("Irradiance", this::irradiance));
        chapters.add(new Chapter("Section drawings", this::sections));
        chapters.add(new Chapter("Clearances", () -> CheckSections.clearances(prose(true), result)));
        chapters.add(new Chapter("Finishes", () -> CheckSections.finishes(prose(true), result)));
        review.comparison()
                .ifPresent(found -> chapters.add(new Chapter(
                        "Comparison with " + LayoutWords.title(found.before().layout()),
                        () -> CheckSections.comparison(
                                new HtmlProse(page, "compare", false), found, imprint.version()))));
        chapters.add(new Chapter("Warnings and limits", () -> CheckSections.limits(prose(false), result)));
        chapters.add(new Chapter("How to repeat it", this::repeat));
        return chapters;
    }

    private HtmlProse prose(boolean skipsFirst) {
        return new HtmlProse(page, "check", skipsFirst);
    }

    private void first(List<Chapter> chapters) {
        page.open("header");
        page.words("p", "Review of a baffle against unwanted light", "class", "kind");
        page.words("h1", layout.title());
        page.open("p", "class", "facts");
        fact("Revision", layout.revision().isEmpty() ? "none stated" : layout.revision());
        fact("Date", imprint.date());
        layout.cooldown()
                .ifPresent(each -> fact("Shape", LayoutWords.shape(layout).substring(2)));
        fact("Layout", layout.source().name());
        page.close();
        page.open("p", "class", "judgement");
        HtmlProse.verdict(page, result.judgement().verdict());
        page.text(" " + CheckSections.sentence(result)).close();
        page.close();
        HeadCautions.of(result).forEach(caution -> page.words("p", caution, "class", "caution"));
        page.open("div", "class", "cover");
        CheckSections.requirements(prose(false), result, review.margins());
        page.close();
        page.open("p", "class", "note")
                .text(
                        "Margins are in mm; those without a unit are relative irradiance. Sampled verdicts hold at a confidence of "
                                + Figures.confidence(result.effort().confidence())
                                + " over all of them together. This page does not replace measurement, the project's own review,"
                                + " local codes and licensed practice.")
                .close();
        page.open("nav").words("h2", "Contents").open("ol");
        for (int i = 0; i < chapters.size(); i++) {
            page.open("li")
                    .words("a", chapters.get(i).title(), "href", "#chapter-" + (i + 1))
                    .close();
        }
        page.close().close();
    }

    private void fact(String name, String value) {
        page.open("span", "class", "fact").words("b", name + ": ").text(value).close();
    }

    private void margins() {
        CheckSections.margins(prose(true), result);
        CheckSections.cooldown(prose(false), result);
        if (review.tolerance().isPresent()) {
            CheckSections.tolerance(prose(false), review.tolerance().get(), imprint.version());
        } else {
            page.words("h3", "Tolerances");
            page.words(
                    "p",
                    "The worst case within the tolerances was not looked for here: 'darkrim report --builds 200' or 'darkrim tolerance'"
                            + " does that, and takes several times as long as a check.");
        }
    }

    private void paths() {
        CheckSections.lightPaths(prose(true), result);
        if (review.paths().isEmpty()) {
            page.words(
                    "p",
                    "There is no line to draw: direct light breaks no requirement, and no path of reflected light was sampled.");
        }
        page.open("div", "class", "figures");
        review.paths().forEach(path -> pictures.path(path).write(page, "half"));
        page.close();
    }

    private void irradiance() {
        pictures.whole().write(page, "wide");
        CheckSections.surfaces(prose(false), result);
        for (LightKind kind : List.of(LightKind.DIRECT, LightKind.ONCE_REFLECTED)) {
            List<Figure> maps = pictures.maps(kind);
            if (!maps.isEmpty()) {
                page.words("h3", "Maps of " + kind.words());
                page.open("div", "class", "figures");
                maps.forEach(map -> map.write(page, "half"));
                page.close();
            }
        }
        page.words("p", pictures.reading());
        if (review.left() > 0) {
            page.words(
                    "p",
                    Figures.counted(review.left(), "more surface") + " could be mapped: 'darkrim draw --detector'.");
        }
    }

    private void sections() {
        if (review.sections().isEmpty()) {
            page.words("p", "The planes through the middle cut no part.");
        }
        if (!review.sections().isEmpty()) {
            page.words(
                    "p",
                    "Each drawing is a sheet of A3, true to scale where it is printed so: " + planes()
                            + ". They show the pupil, the chief ray and the two rays from its rim past each edge, where these land, and"
                            + " margins in mm.");
        }
        for (LayoutSection section : review.sections()) {
            String title = "Section " + section.plane().words();
            page.open("figure", "class", paper ? "sheet blank" : "sheet");
            if (paper) {
                // Without a word on it a sheet would not be made.
                page.words("p", title, "class", "under");
            } else {
                String drawn = SvgSheet.of(sheet(section, review, imprint), title);
                page.picture(drawn.getBytes(StandardCharsets.UTF_8), SVG, title);
            }
            page.close();
        }
    }

    private String planes() {
        return String.join(
                " and ",
                review.sections().stream()
                        .map(section -> section.plane().words())
                        .toList());
    }

    private void repeat() {
        page.words("p", "The same program, files and seed give the same numbers for any number of threads.");
        page.open("p").words("code", imprint.command()).close();
        page.open("p")
                .text("Darkrim " + imprint.version() + ", seed "
                        + result.effort().seed() + ", at most "
                        + Figures.counted(result.effort().mostSamples(), "sample") + ", "
                        + Figures.count(result.judgement().samples()) + " taken.")
                .close();
        page.open("table").open("thead").open("tr");
        page.words("th", "file", "scope", "col").words("th", "SHA-256", "scope", "col");
        page.close().close().open("tbody");
        for (InputHash input : review.inputs()) {
            page.open("tr").open("td", "class", "name").names(input.name()).close();
            page.open("td").words("code", input.sha256()).close().close();
        }
        page.close().close();
    }

    /** The style sheet of the page. */
    static String style() {
        try (InputStream stream = ReviewPage.class.getResourceAsStream(STYLE)) {
            if (stream == null) {
                throw new IllegalStateException("the program was built without " + STYLE);
            }
            return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException problem) {
            throw new UncheckedIOException(problem);
        }
    }
}
