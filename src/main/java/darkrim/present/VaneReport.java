package darkrim.present;

import darkrim.shadow.LitAndSeen;
import darkrim.shadow.WitnessRay;
import darkrim.study.vanes.FaceAnswer;
import darkrim.study.vanes.VaneConstruction;
import darkrim.study.vanes.VaneProof;
import darkrim.study.vanes.VaneTask;
import darkrim.study.vanes.VaneText;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** Vanes that were placed, as plain text: where they stand, what is proved, and the part to paste. */
public final class VaneReport {
    /** An edge that reaches in by less only touches, but for rounding, mm. */
    private static final double ROUNDING = 1e-9;

    private VaneReport() {}

    /** The report, lines ended by a line feed. */
    public static String of(VaneText text, VaneConstruction construction, VaneProof proof) {
        VaneTask task = text.task();
        Page page = new Page();
        page.paragraph(verdict(task, proof));
        heights(page, text, construction);
        field(page, text);
        basis(page, task, proof);
        walls(page, proof);
        others(page, text, proof);
        page.heading("Part, to paste below 'parts:'");
        return page.text() + text.part();
    }

    private static String light(VaneTask task) {
        return task.offAxis().isPresent()
                ? "lit at or beyond " + VaneText.number(task.offAxis().getAsDouble()) + " deg off axis"
                : "lit at any angle";
    }

    private static String verdict(VaneTask task, VaneProof proof) {
        String scope = task.first().isPresent() ? "wall point above the first vane" : "wall point";
        if (proof.holds()) {
            return "PASS: no " + scope + " that the detector sees is " + light(task) + ": proved.";
        }
        return proof.fails()
                ? "FAIL: a " + scope + " that the detector sees is " + light(task) + "."
                : "UNDECIDED: it is not proved that no " + scope + " that the detector sees is " + light(task) + ".";
    }

    private static void heights(Page page, VaneText text, VaneConstruction construction) {
        VaneTask task = text.task();
        page.heading("Vanes (mm above the detector)");
        if (task.offAxis().isPresent()) {
            page.paragraph("Below " + Figures.length(construction.firstLit()) + " mm no wall point is " + light(task)
                    + ", vanes or none.");
        }
        Table table = new Table()
                .numbers("vane")
                .numbers("edge at")
                .numbers("edge diameter")
                .numbers("hides the wall up to");
        for (int i = 0; i < text.heights().size(); i++) {
            double z = text.heights().get(i);
            double hidden = construction.hiddenUpTo().get(i);
            double edge = task.edgeAt(z);
            table.row(
                    String.valueOf(i + 1),
                    VaneText.number(z),
                    VaneText.number(2 * edge),
                    hidden < task.entranceHeight() ? VaneText.number(hidden) : "the entrance");
        }
        page.block(table.text());
    }

    /** Edges that reach into the light from the entrance to the detector cut it. */
    private static void field(Page page, VaneText text) {
        VaneTask task = text.task();
        double worst = 0;
        int vane = 0;
        for (int i = 0; i < text.heights().size(); i++) {
            double z = text.heights().get(i);
            double edge = task.edgeAt(z);
            double needed =
                    task.detectorRadius() + (task.entranceRadius() - task.detectorRadius()) * z / task.entranceHeight();
            if (needed - edge > Math.max(worst, ROUNDING)) {
                worst = needed - edge;
                vane = i + 1;
            }
        }
        if (vane > 0) {
            page.paragraph("Vane " + vane + " reaches " + Figures.length(worst)
                    + " mm into the line from the edge of the detector to the edge of the entrance, and more than any other: the detector does"
                    + " not see the whole entrance everywhere.");
        }
    }

    private static void basis(Page page, VaneTask task, VaneProof proof) {
        page.heading("Proof");
        page.paragraph("Of what is written below, for all azimuths, for every point of the detector (diameter "
                + VaneText.number(2 * task.detectorRadius()) + " mm at 0 mm) and of the entrance (diameter "
                + VaneText.number(2 * task.entranceRadius()) + " mm at " + VaneText.number(task.entranceHeight())
                + " mm); light comes in through the entrance alone. The circles of the part have "
                + proof.sides() + " sides; a turn by one side maps it on itself to within "
                + Figures.three(proof.mismatch()) + " mm, so one side stands for all.");
    }

    private static void walls(Page page, VaneProof proof) {
        Table table = new Table().words("wall").words("lit and seen").words("how it is known");
        page.space();
        for (FaceAnswer answer : proof.walls()) {
            table.row(Printable.of(answer.surface()), word(answer.found()), how(answer.found()));
        }
        page.block(table.text());
    }

    private static String word(LitAndSeen.Found found) {
        if (found instanceof LitAndSeen.Apart) {
            return "nowhere";
        }
        return found instanceof LitAndSeen.Both ? "somewhere" : "not decided";
    }

    private static String how(LitAndSeen.Found found) {
        if (found instanceof LitAndSeen.Apart apart) {
            return "proof, " + Figures.counted(apart.pieces(), "piece");
        }
        if (found instanceof LitAndSeen.Both both) {
            return "light from " + point(both.lit()) + " to " + at(both.lit().to()) + ", seen from "
                    + point(both.seen());
        }
        return Figures.three(((LitAndSeen.Open) found).area()) + " mm2 open";
    }

    private static String point(WitnessRay ray) {
        return at(ray.from());
    }

    private static String at(Vector3D p) {
        return "(" + Figures.length(p.getX()) + ", " + Figures.length(p.getY()) + ", " + Figures.length(p.getZ()) + ")";
    }

    /** Faces of the vanes themselves, by kind: an edge is lit and seen wherever it does any work. */
    private static void others(Page page, VaneText text, VaneProof proof) {
        Map<String, List<FaceAnswer>> kinds = new LinkedHashMap<>();
        for (FaceAnswer answer : proof.answers()) {
            String[] steps = answer.surface().split("/", -1);
            if (steps.length == 3 && !steps[1].equals("inside")) {
                kinds.computeIfAbsent(text.form().name() + "/*/" + steps[2], kind -> new ArrayList<>())
                        .add(answer);
            }
        }
        page.space();
        Table table = new Table()
                .words("on the vanes")
                .numbers("faces")
                .numbers("lit and seen")
                .numbers("area of these (mm2)");
        kinds.forEach((kind, answers) -> {
            List<FaceAnswer> both = answers.stream()
                    .filter(answer -> !(answer.found() instanceof LitAndSeen.Apart))
                    .toList();
            table.row(
                    Printable.of(kind),
                    String.valueOf(answers.size()),
                    String.valueOf(both.size()),
                    Figures.three(both.stream().mapToDouble(FaceAnswer::area).sum()));
        });
        page.block(table.text());
        page.paragraph("The edges that the detector sees scatter light whatever the vanes: keep them sharp and few.");
    }
}
