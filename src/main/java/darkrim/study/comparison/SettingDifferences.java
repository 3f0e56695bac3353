package darkrim.study.comparison;

import darkrim.geom.Outline;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.layout.BeamSpec;
import darkrim.layout.BeamSpec.FieldSpec;
import darkrim.layout.BeamSpec.PupilSpec;
import darkrim.layout.Cooldown;
import darkrim.layout.FinishRule;
import darkrim.layout.Layout;
import darkrim.layout.Mounting;
import darkrim.layout.Part;
import darkrim.layout.Requirement;
import darkrim.layout.Requirement.LightClass;
import darkrim.layout.Shape;
import darkrim.layout.ThermalShape;
import darkrim.layout.form.Wording;
import darkrim.layout.mesh.MeshFile;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/** Finds what else two layouts differ in than parts: in their light, and in what is asked of them and how. Values in words. */
final class SettingDifferences {
    private static final int CORNERS_NAMED = 6;

    private final List<Changed<String>> changed = new ArrayList<>();

    private SettingDifferences() {}

    /** The beams: pupil, field, radiance and window. */
    static List<Changed<String>> beam(BeamSpec before, BeamSpec after) {
        SettingDifferences found = new SettingDifferences();
        PupilSpec one = before.pupil();
        PupilSpec two = after.pupil();
        found.compare("pupil", corners(one.outline()), corners(two.outline()), one.outline(), two.outline());
        found.compare("pupil centre", one.centre(), two.centre(), SettingDifferences::point);
        found.compare("pupil tilt about x", one.tiltAboutX(), two.tiltAboutX(), SettingDifferences::degrees);
        found.compare("pupil tilt about y", one.tiltAboutY(), two.tiltAboutY(), SettingDifferences::degrees);
        Optional<Outline> fieldOne = before.field().map(FieldSpec::outline);
        Optional<Outline> fieldTwo = after.field().map(FieldSpec::outline);
        found.compare(
                "field",
                fieldOne.map(SettingDifferences::corners),
                fieldTwo.map(SettingDifferences::corners),
                fieldOne.map(SettingDifferences::outline),
                fieldTwo.map(SettingDifferences::outline));
        found.compareOptional(
                "field centre",
                before.field().map(FieldSpec::centre),
                after.field().map(FieldSpec::centre),
                SettingDifferences::point);
        found.compareOptional(
                "radiance", before.radiance(), after.radiance(), value -> Wording.number(value) + " W/(m2 sr)");
        found.compareOptional("window", words(before), words(after), each -> each);
        return List.copyOf(found.changed);
    }

    private static Optional<String> words(BeamSpec beam) {
        return beam.window()
                .map(each -> each.name() + " at " + Wording.number(each.bottom()) + " mm, "
                        + Wording.number(each.thickness()) + " mm thick, index " + Wording.number(each.index())
                        + each.lower()
                                .map(r -> ", reflectance below " + Wording.number(r))
                                .orElse("")
                        + each.upper().map(r -> ", above " + Wording.number(r)).orElse("")
                        + ", internal transmittance " + Wording.number(each.internal()));
    }

    /** Placement error, tolerances, temperatures, sources beside the beam, requirements of the same name, rules for finishes, maps and sampling. */
    static List<Changed<String>> others(Layout before, Layout after) {
        SettingDifferences found = new SettingDifferences();
        found.compareOptional(
                "placement error",
                before.placementError(),
                after.placementError(),
                value -> Wording.number(value) + " mm");
        ToleranceDifferences.find(found, before, after);
        found.cooldown(before, after);
        WarmthDifferences.find(found, before.warmth(), after.warmth());
        SourceDifferences.find(found, before.sources(), after.sources());
        for (Requirement one : before.requirements()) {
            after.requirements().stream()
                    .filter(two -> two.name().equals(one.name()))
                    .findFirst()
                    .ifPresent(two -> {
                        found.compare("surfaces of " + one.name(), one.surfaces(), two.surfaces(), words -> words);
                        found.compare(
                                "what " + one.name() + " asks",
                                one.condition(),
                                two.condition(),
                                SettingDifferences::condition);
                    });
        }
        found.meshes(before, after);
        List<FinishRule> one = before.finishRules();
        List<FinishRule> two = after.finishRules();
        for (int i = 0; i < Math.max(one.size(), two.size()); i++) {
            found.compareOptional("finish rule " + (i + 1), rule(one, i), rule(two, i), words -> words);
        }
        found.compare(
                "surfaces with maps", before.maps().surfaces(), after.maps().surfaces(), words -> words);
        found.compare(
                "cells of a map",
                List.of(before.maps().columns(), before.maps().rows()),
                List.of(after.maps().columns(), after.maps().rows()),
                cells -> cells.get(0) + " by " + cells.get(1));
        found.compare(
                "confidence", before.sampling().confidence(), after.sampling().confidence(), Wording::number);
        found.compare(
                "most samples",
                before.sampling().mostSamples(),
                after.sampling().mostSamples(),
                String::valueOf);
        found.compare(
                "seed in the file", before.sampling().seed(), after.sampling().seed(), String::valueOf);
        return List.copyOf(found.changed);
    }

    /** The files of parts that are meshes in both, by their content. */
    private void meshes(Layout before, Layout after) {
        for (Part one : before.parts()) {
            for (Part two : after.parts()) {
                if (one.name().equals(two.name())
                        && one.shape() instanceof Shape.Mesh was
                        && two.shape() instanceof Shape.Mesh is) {
                    compare("mesh file of " + one.name(), content(was.file()), content(is.file()), words -> words);
                }
            }
        }
    }

    /** What is in a file, and by what it became facets; its name says nothing. */
    private static String content(MeshFile file) {
        return "SHA-256 " + file.sha256()
                + file.meshing()
                        .map(meshing -> ", facets by " + meshing.program() + " within "
                                + Wording.number(meshing.tolerance()) + " mm")
                        .orElse("");
    }

    private void compare(String name, Object one, Object two, Outline first, Outline second) {
        compare(name, Optional.of(one), Optional.of(two), Optional.of(outline(first)), Optional.of(outline(second)));
    }

    /** Adds a setting if it differs; its values in words. */
    <T> void compare(String name, T one, T two, Function<T, String> words) {
        compareOptional(name, Optional.of(one), Optional.of(two), words);
    }

    /** Likewise for what may be absent. */
    <T> void compareOptional(String name, Optional<T> one, Optional<T> two, Function<T, String> words) {
        compare(name, one, two, one.map(words), two.map(words));
    }

    /** Likewise for what is told apart by more than its words hold. */
    void compare(String name, Optional<?> one, Optional<?> two, Optional<String> wordsOne, Optional<String> wordsTwo) {
        if (!Objects.equals(one, two)) {
            boolean lookAlike = wordsOne.equals(wordsTwo);
            changed.add(new Changed<>(
                    name, wordsOne, wordsTwo.map(words -> lookAlike ? words + ", in detail another" : words)));
        }
    }

    /** What makes an outline: radii of a ring, corners of a polygon. */
    static Object corners(Outline outline) {
        return outline instanceof Polygon polygon ? polygon.corners() : outline;
    }

    static String outline(Outline outline) {
        if (outline instanceof Ring ring) {
            String disc = "disc, diameter " + Wording.number(2 * ring.radius()) + " mm";
            return ring.hole() == 0 ? disc : disc + ", hole " + Wording.number(2 * ring.hole()) + " mm";
        }
        List<Vector2D> corners = ((Polygon) outline).corners();
        return corners.size() > CORNERS_NAMED
                ? "polygon of " + corners.size() + " corners, area " + Wording.number(outline.area()) + " mm2"
                : "polygon "
                        + corners.stream()
                                .map(each ->
                                        "[" + Wording.number(each.getX()) + ", " + Wording.number(each.getY()) + "]")
                                .collect(Collectors.joining(", "))
                        + " mm";
    }

    static String point(Vector3D at) {
        return "[" + Wording.number(at.getX()) + ", " + Wording.number(at.getY()) + ", " + Wording.number(at.getZ())
                + "] mm";
    }

    private static String direction(Vector3D way) {
        return "[" + Wording.number(way.getX()) + ", " + Wording.number(way.getY()) + ", " + Wording.number(way.getZ())
                + "]";
    }

    /** Which temperatures there are, and in which shape the parts are. */
    private void cooldown(Layout before, Layout after) {
        compareOptional(
                "shape",
                before.cooldown().map(Cooldown::shape),
                after.cooldown().map(Cooldown::shape),
                shape -> shape == ThermalShape.COLD ? "cold" : "warm");
        compareOptional(
                "drawn at",
                before.cooldown().map(Cooldown::drawnAt),
                after.cooldown().map(Cooldown::drawnAt),
                value -> Wording.number(value) + " K");
        compareOptional(
                "works at",
                before.cooldown().map(Cooldown::worksAt),
                after.cooldown().map(Cooldown::worksAt),
                value -> Wording.number(value) + " K");
        for (Part one : before.parts()) {
            after.parts().stream()
                    .filter(two -> two.name().equals(one.name()))
                    .findFirst()
                    .ifPresent(two -> {
                        compareOptional(
                                "how " + one.name() + " contracts",
                                one.mounting(),
                                two.mounting(),
                                SettingDifferences::mounting);
                        compare(
                                "coating of " + one.name(),
                                one.coating(),
                                two.coating(),
                                value -> Wording.number(value) + " mm");
                    });
        }
    }

    private static String mounting(Mounting mounting) {
        return mounting.material().name() + ", held at " + point(mounting.heldAt())
                + mounting.heldBy().map(part -> " by " + part).orElse("");
    }

    static String degrees(double angle) {
        return Wording.number(angle) + " deg";
    }

    private static String condition(Requirement.Condition condition) {
        if (condition instanceof Requirement.AtMost most) {
            return (most.light() == LightClass.DIRECT ? "direct" : "once-reflected") + " light at most "
                    + Wording.number(most.limit())
                    + (most.per() == Requirement.Per.CELL ? " over a cell" : " over a surface");
        }
        if (condition instanceof Requirement.Clearance clearance) {
            return "at least " + Wording.number(clearance.atLeast()) + " mm from " + clearance.other()
                    + (clearance.shapes() == Requirement.Shapes.BOTH
                            ? ""
                            : ", " + clearance.shapes().name().toLowerCase(Locale.ROOT))
                    + clearance
                            .lowering()
                            .map(way -> ", while " + way.moved() + " is brought in over " + Wording.number(way.from())
                                    + " mm along " + direction(way.direction()))
                            .orElse("");
        }
        return condition instanceof Requirement.PupilSeen seen
                ? "at least " + Wording.number(seen.share()) + " of the pupil seen"
                : "no direct light";
    }

    private static Optional<String> rule(List<FinishRule> rules, int index) {
        return index < rules.size()
                ? Optional.of(
                        rules.get(index).surfaces() + " get " + rules.get(index).finish())
                : Optional.empty();
    }
}
