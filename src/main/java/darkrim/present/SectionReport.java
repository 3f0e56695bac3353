package darkrim.present;

import darkrim.study.section.CutBody;
import darkrim.study.section.LayoutSection;
import darkrim.study.section.SectionPlane;
import darkrim.study.section.SectionRay;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/**
 * What a section shows, as text: what is cut, and the rays with where they land.
 *
 * @param version version of the program
 */
public record SectionReport(String version) {
    /**
     * The report.
     *
     * @param section the section
     * @param files the files it was drawn into
     */
    public String of(LayoutSection section, List<Path> files) {
        Page page = new Page();
        page.paragraph(LayoutWords.title(section.layout()));
        page.paragraph("Section " + section.plane().words() + ", drawn into "
                + String.join(
                        ", ",
                        files.stream()
                                .map(file -> Printable.of(file.toString()))
                                .toList()) + ".");
        page.space();
        page.line("file     " + LayoutWords.file(section.layout()));
        page.line("program  Darkrim " + version);
        page.heading("What is cut");
        Table cut = new Table().names("part").numbers("area, mm2").numbers("bodies");
        Map<String, double[]> byPart = new LinkedHashMap<>();
        for (CutBody body : section.bodies()) {
            double[] sums = byPart.computeIfAbsent(body.part(), part -> new double[2]);
            sums[0] += body.area();
            sums[1]++;
        }
        byPart.forEach(
                (part, sums) -> cut.row(Printable.of(part), Figures.limit(sums[0]), String.valueOf((long) sums[1])));
        page.block(cut.text());
        rays(page, section);
        return page.text();
    }

    private static void rays(Page page, LayoutSection section) {
        page.heading("Rays past edges, and where they land (mm)");
        if (section.pupil().isEmpty()) {
            page.paragraph("The plane lies across the light: no ray is drawn in it.");
            return;
        }
        if (section.edges().isEmpty()) {
            page.paragraph("Past no edge that is cut here light comes that lands in this plane.");
            return;
        }
        SectionPlane plane = section.plane();
        Table table = new Table()
                .names("edge")
                .words("ray")
                .numbers(plane.across())
                .numbers(plane.up())
                .names("lands on");
        for (SectionRay ray : section.rays()) {
            Vector2D to = plane.seen(ray.to());
            table.row(
                    Printable.of(ray.edge().words()),
                    ray.kind().words(),
                    Figures.length(to.getX()),
                    Figures.length(to.getY()),
                    Printable.of(ray.surface()));
        }
        section.stopped()
                .forEach(each -> table.row(
                        Printable.of(each.edge().words()), each.kind().words(), "-", "-", Printable.of(each.reason())));
        page.block(table.text());
    }
}
