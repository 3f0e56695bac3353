package darkrim.assembly;

import darkrim.diagnostic.Place;
import darkrim.layout.Shape.Openings;
import darkrim.layout.Shape.Plate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/** A plate with its openings as one closed solid. */
final class PlatePieces {
    /** Corners of all openings together that can be triangulated within seconds. */
    private static final int MOST_CORNERS = 200_000;

    private PlatePieces() {}

    /** A hole in its place: the name of the opening and its cross-sections from the top of the plate down. */
    private record Hole(String name, List<CrossSection> sections) {
        List<Vector2D> atTop() {
            return sections.get(0).border().loop();
        }

        List<Vector2D> atBottom() {
            return sections.get(sections.size() - 1).border().loop();
        }
    }

    /**
     * The pieces of a plate.
     *
     * @throws IllegalArgumentException if openings meet each other or the rim, share a name, or cannot be widened as asked
     */
    static Pieces of(Plate plate) {
        double bottom = plate.height();
        double top = plate.height() + plate.thickness();
        Border rim = Border.ofMaterial(plate.outer());
        List<Hole> holes = holes(plate);
        Mesh mesh = Mesh.solid("");
        addFace(mesh, "top", top, rim, holes.stream().map(Hole::atTop).toList(), true);
        addFace(
                mesh,
                "underside",
                bottom,
                rim,
                holes.stream().map(Hole::atBottom).toList(),
                false);
        mesh.band(i -> "rim" + rim.steps().get(i), Mesh.at(bottom, rim.loop()), Mesh.at(top, rim.loop()));
        double chordError = rim.chordError();
        List<Opening> openings = new ArrayList<>();
        for (Hole hole : holes) {
            addWalls(mesh, hole);
            openings.add(opening(hole));
            for (CrossSection section : hole.sections()) {
                chordError = Math.max(chordError, section.border().chordError());
            }
        }
        return new Pieces(List.of(mesh), openings, List.of(), chordError);
    }

    private static void addFace(
            Mesh mesh, String face, double z, Border rim, List<List<Vector2D>> holes, boolean facesUp) {
        try {
            mesh.level(face, z, rim.loop(), holes, facesUp);
        } catch (IllegalArgumentException problem) {
            throw new IllegalArgumentException(
                    "its openings meet each other or its rim at its " + face + " (" + problem.getMessage() + ")",
                    problem);
        }
    }

    private static List<Hole> holes(Plate plate) {
        List<Hole> holes = new ArrayList<>();
        Set<String> names = new HashSet<>();
        long corners = 0;
        for (Openings group : plate.openings()) {
            if (!names.add(group.name())) {
                throw new IllegalArgumentException(
                        "two of its openings are named " + group.name() + ": give one of them another name");
            }
            List<CrossSection> about = CrossSection.of(plate, group);
            for (GridSteps.Step step : GridSteps.of(group.columns(), group.rows(), group.pitchX(), group.pitchY())) {
                corners += (long) about.size() * about.get(0).border().loop().size();
                if (corners > MOST_CORNERS) {
                    throw new IllegalArgumentException(
                            "its openings have more than the " + MOST_CORNERS + " corners that can be handled");
                }
                Vector2D centre = group.centre().add(step.offset());
                holes.add(new Hole(
                        group.name() + step.number(),
                        about.stream().map(section -> section.moved(centre)).toList()));
            }
        }
        return holes;
    }

    private static void addWalls(Mesh mesh, Hole hole) {
        for (int i = 0; i + 1 < hole.sections().size(); i++) {
            CrossSection upper = hole.sections().get(i);
            CrossSection lower = hole.sections().get(i + 1);
            List<String> steps = upper.border().steps();
            mesh.band(
                    side -> hole.name() + "/" + upper.wallBelow() + steps.get(side), upper.corners(), lower.corners());
        }
    }

    private static Opening opening(Hole hole) {
        List<CrossSection> sections = hole.sections();
        List<CrossSection> land =
                sections.stream().filter(CrossSection::smallest).toList();
        return new Opening(
                hole.name(),
                Place.IN_CODE,
                sections.get(0).border().steps().stream()
                        .map(step -> step.isEmpty() ? "" : step.substring(1))
                        .toList(),
                sections.get(0).corners(),
                land.get(0).corners(),
                land.get(land.size() - 1).corners(),
                sections.get(sections.size() - 1).corners());
    }
}
