package darkrim.cli;

import darkrim.layout.form.Wording;
import darkrim.present.picture.Section;
import darkrim.present.picture.View;
import darkrim.present.picture.ViewDirection;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What a picture of parts can be told: from where they are looked at, which are drawn, where they are cut. */
final class DrawnParts {
    @Option(
            names = "--from",
            paramLabel = "DIRECTION",
            order = -30,
            converter = DirectionOption.class,
            defaultValue = "corner",
            description =
                    "From where: corner (default), top, bottom, front (from -y), back, left (from -x), right, or azimuth"
                            + " from +x and elevation in degrees, such as -60,40.")
    private ViewDirection from;

    @Option(
            names = "--perspective",
            order = -29,
            description = "Draw near parts larger; otherwise lines of sight are parallel, and lengths can be measured.")
    private boolean perspective;

    @Option(
            names = "--section",
            paramLabel = "AXIS=PLACE",
            order = -28,
            converter = SectionOption.Reader.class,
            description =
                    "Cut the parts at a plane, such as y=0 or z=4.4 (mm), and take away what is nearer to the eye.")
    private SectionOption section;

    @Mixin
    private ChosenSurfaces chosen;

    @Option(
            names = "--about",
            paramLabel = "PATTERN",
            order = -25,
            description = "Show the place of these surfaces as large as they fit; may be repeated.")
    private List<String> about;

    @Option(
            names = "--magnify",
            paramLabel = "FACTOR",
            order = -24,
            converter = RealNumber.Magnification.class,
            defaultValue = "1",
            description = "Show it so many times as large as it fits, about its middle; default: 1.")
    private double magnification;

    @Option(
            names = "--path",
            paramLabel = "SURFACE",
            order = -23,
            description =
                    "Also draw a ray that carries light to this surface, with the point where it is reflected: for"
                            + " reflected light by the strongest way.")
    private String path;

    @Option(
            names = "--no-outlines",
            order = -22,
            description = "Leave out the outlines that tell verdicts by line and letter.")
    private boolean noOutlines;

    /** What is wrong with the patterns. */
    List<String> problems(Scene scene) {
        List<String> problems = new ArrayList<>(chosen.problems(scene));
        patterns("--about", about).flatMap(all -> all.problem(scene)).ifPresent(problems::add);
        return problems;
    }

    /** The surface to which a ray is drawn. */
    Optional<String> path() {
        return Optional.ofNullable(path);
    }

    /** Whether verdicts are told. */
    boolean outlines() {
        return !noOutlines;
    }

    /** Numbers of the surfaces that are drawn. */
    BitSet shown(Scene scene) {
        BitSet shown = new BitSet();
        for (Surface surface : scene.surfaces()) {
            shown.set(surface.index(), chosen.holds(surface.name()));
        }
        return shown;
    }

    /** Where the parts are cut. */
    Optional<Section> section() {
        return Optional.ofNullable(section).map(plane -> Section.towards(plane.axis(), plane.place(), from));
    }

    /** Whether the section leaves nothing of what is drawn. */
    boolean isCutAway(Scene scene) {
        Optional<Section> cut = section();
        return cut.isPresent()
                && shown(scene).stream()
                        .mapToObj(scene.surfaces()::get)
                        .noneMatch(surface -> isLeft(scene, surface, cut.get()));
    }

    private static boolean isLeft(Scene scene, Surface surface, Section cut) {
        for (int corner = 3 * surface.firstFacet();
                corner < 3 * (surface.firstFacet() + surface.facetCount());
                corner++) {
            double place = scene.corner(corner / 3, corner % 3).toArray()[cut.axis()];
            if (cut.keepsLess() ? place < cut.place() : place > cut.place()) {
                return true;
            }
        }
        return false;
    }

    /**
     * From where they are looked at.
     *
     * @param corners of what is drawn, mm
     */
    View view(Scene scene, List<Vector3D> corners) {
        Optional<SurfacePatterns> place = patterns("--about", about);
        if (place.isEmpty()) {
            return new View(from, perspective, corners, magnification);
        }
        List<Vector3D> seen = new ArrayList<>();
        for (Surface surface : scene.surfaces()) {
            if (place.get().selects(surface.name())) {
                for (int f = surface.firstFacet(); f < surface.firstFacet() + surface.facetCount(); f++) {
                    seen.addAll(List.of(scene.corner(f, 0), scene.corner(f, 1), scene.corner(f, 2)));
                }
            }
        }
        return new View(from, perspective, seen, magnification);
    }

    /** From where, in words, with the section. */
    String words() {
        String cut = section == null
                ? ""
                : ", cut at " + "xyz".charAt(section.axis()) + " = " + Wording.number(section.place()) + " mm";
        return "Seen from " + DirectionOption.words(from) + (perspective ? ", in perspective" : "") + cut + ".";
    }

    private static Optional<SurfacePatterns> patterns(String option, List<String> patterns) {
        return Optional.ofNullable(patterns).map(all -> new SurfacePatterns(option, all));
    }
}
