package darkrim.present.review;

import darkrim.present.EvidenceWords;
import darkrim.present.Figures;
import darkrim.present.picture.ColourScale;
import darkrim.present.picture.ColourScale.Spacing;
import darkrim.present.picture.LightChoice;
import darkrim.present.picture.LightUnit;
import darkrim.present.picture.MapPicture;
import darkrim.present.picture.PictureText;
import darkrim.present.picture.ScenePicture;
import darkrim.present.picture.Section;
import darkrim.present.picture.Subject;
import darkrim.present.picture.View;
import darkrim.present.picture.ViewDirection;
import darkrim.scene.Scene;
import darkrim.study.irradiance.LightKind;
import darkrim.study.irradiance.LitLayout;
import darkrim.study.irradiance.SurfaceMap;
import darkrim.study.review.DrawnPath;
import darkrim.study.review.Review;
import darkrim.verdict.Verdict;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** Draws the pictures of a review. Their letters are large, since pictures are printed small. */
final class Pictures {
    private static final PictureText NO_WORDS = new PictureText("", "", List.of());
    private static final int WIDTH = 1400;
    private static final int HEIGHT = 900;
    private static final double LETTERS = 1.7;
    private static final int MAP_WIDTH = 900;
    private static final int MAP_HEIGHT = 700;
    private static final double MAP_LETTERS = 2;
    private static final int PATH_WIDTH = 1000;
    private static final int PATH_HEIGHT = 620;
    private static final double PATH_LETTERS = 2;
    /** What of the surroundings of a path is shown at the least, mm to each side. */
    private static final double LEAST_AROUND = 1.5;

    private final LitLayout lit;
    private final Scene scene;
    private final Review review;
    private final LightUnit unit;
    private final int threads;

    Pictures(Review review, int threads) {
        this.review = review;
        this.lit = review.lit();
        this.scene = lit.scene();
        this.unit = LightUnit.ofBeam(scene);
        this.threads = threads;
    }

    /** All parts with the direct light on them, and the verdicts on the surfaces. */
    Figure whole() {
        LightChoice choice = new LightChoice(Optional.of(LightKind.DIRECT), Spacing.LOGARITHMIC, Optional.empty());
        Subject subject = subject(
                Optional.of(LightKind.DIRECT),
                choice.scale(unit, lit.maps()),
                lit.checked().verdicts(),
                Optional.empty(),
                List.of());
        View view = new View(ViewDirection.CORNER, false, subject.corners(), 1);
        return new Figure(
                new ScenePicture(subject, NO_WORDS).png(view, WIDTH, HEIGHT, LETTERS, threads),
                "Direct light on the parts, in " + in() + ", seen from above over a corner. " + reading());
    }

    /** A map of each surface that is mapped, all with one scale of colours. */
    List<Figure> maps(LightKind kind) {
        List<SurfaceMap> maps = review.mapped().stream()
                .map(surface -> lit.maps().get(surface.index()))
                .filter(map -> map.cells().grid().isPresent())
                .toList();
        LightChoice choice = new LightChoice(Optional.of(kind), Spacing.LOGARITHMIC, Optional.empty());
        ColourScale scale = choice.scale(unit, maps);
        List<Figure> figures = new ArrayList<>();
        for (SurfaceMap map : maps) {
            MapPicture picture = new MapPicture(map, kind, scale, unit.perRelative());
            String stretched = picture.stretch().words();
            figures.add(new Figure(
                    picture.png(NO_WORDS, MAP_WIDTH, MAP_HEIGHT, MAP_LETTERS),
                    map.cells().surface().name() + ", " + kind.words() + ": " + picture.summary()
                            + (stretched.isEmpty() ? "." : ". " + stretched)));
        }
        return figures;
    }

    /** A way of light near the surface where it arrives, with the parts cut there. */
    Figure path(DrawnPath path) {
        List<Vector3D> points = path.points();
        Vector3D end = points.get(points.size() - 1);
        Vector3D before = points.get(points.size() - 2);
        Vector3D near = path.via().isPresent() ? before : end;
        double across = Math.abs(near.getX() - end.getX());
        double along = Math.abs(near.getY() - end.getY());
        Vector3D way = path.via().isPresent() ? near.subtract(end) : before.subtract(end);
        boolean fromFront = path.via().isPresent() ? across >= along : Math.abs(way.getX()) >= Math.abs(way.getY());
        ViewDirection from = fromFront ? ViewDirection.FRONT : ViewDirection.RIGHT;
        // A hair to the eye's far side of the nearer point, so that neither end is cut away.
        double place = fromFront ? Math.min(near.getY(), end.getY()) : Math.max(near.getX(), end.getX());
        Subject subject = subject(
                Optional.empty(),
                new LightChoice(Optional.empty(), Spacing.LOGARITHMIC, Optional.empty()).scale(unit, lit.maps()),
                Map.of(),
                Optional.of(Section.towards(fromFront ? 1 : 0, place, from)),
                List.of(points));
        double around = Math.max(LEAST_AROUND, 0.35 * near.distance(end));
        List<Vector3D> seen = new ArrayList<>();
        for (Vector3D point : List.of(near, end)) {
            seen.add(point.add(Vector3D.of(around, around, around)));
            seen.add(point.subtract(Vector3D.of(around, around, around)));
        }
        return new Figure(
                new ScenePicture(subject, NO_WORDS)
                        .png(new View(from, false, seen, 1), PATH_WIDTH, PATH_HEIGHT, PATH_LETTERS, threads),
                words(path, fromFront, place));
    }

    private static String words(DrawnPath path, boolean fromFront, double place) {
        StringBuilder line = new StringBuilder();
        for (Vector3D point : path.points()) {
            line.append(line.length() == 0 ? "" : " to ").append(EvidenceWords.point(point));
        }
        String way = path.via()
                .map(via -> "Once-reflected light on " + path.receiver().name() + " by " + via.name() + " ("
                        + path.part().orElseThrow().word() + "), " + Figures.percent(path.share())
                        + " of what it gets so")
                .orElse("Direct light on " + path.receiver().name());
        return way + ". One line of many, mm: " + line + ". Parts are cut at " + (fromFront ? "y" : "x") + " = "
                + Figures.length(place) + " mm, seen from " + (fromFront ? "-y" : "+x") + ".";
    }

    private String in() {
        return unit.quantity() + (unit.unit().isEmpty() ? "" : ", " + unit.unit());
    }

    /** How colours are read. */
    String reading() {
        return (unit.words()
                        + " Black: below the scale, or no light found; only a proof shows darkness. Colours are means over"
                        + " a face or a cell, sampled.")
                .strip();
    }

    private Subject subject(
            Optional<LightKind> light,
            ColourScale scale,
            Map<Integer, Verdict> verdicts,
            Optional<Section> section,
            List<List<Vector3D>> paths) {
        BitSet shown = new BitSet();
        shown.set(0, scene.surfaces().size());
        return new Subject(scene, shown, light, lit.maps(), scale, unit.perRelative(), verdicts, section, paths);
    }
}
