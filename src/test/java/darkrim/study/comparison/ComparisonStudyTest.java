package darkrim.study.comparison;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.study.Effort;
import darkrim.verdict.Watch;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Comparison of two layouts. */
class ComparisonStudyTest {
    private static final String TEXT = """
            title: Two walls and a screen
            dimensions:
              gap: 12 mm
            beam:
              pupil: {shape: disc, diameter: 40, distance: 200}
            finishes:
              grey: {diffuse: 0.1}
            parts:
              screen: {kind: rectangle, width: 10, depth: 10}
              wall: {kind: block, width: 2, depth: 20, height: 20, at: [gap, 0, 0], turn: {about: y, by: 10}, finish: grey}
            requirements:
              screen-clean: {surfaces: "screen/front", once_reflected: {at_most: 5.0e-3}}
            """;

    @TempDir
    private Path folder;

    private Comparison compare(String before, String after) throws Exception {
        Path one = Files.writeString(folder.resolve("one.yaml"), before);
        Path two = Files.writeString(folder.resolve("two.yaml"), after);
        return ComparisonStudy.of(one, two, Effort.asAsked(), Watch.NONE);
    }

    @Test
    void aLayoutDoesNotDifferFromItself() throws Exception {
        Comparison same = compare(TEXT, TEXT);
        assertThat(same.judgement()).isEqualTo(RequirementChange.Judgement.NOT_WORSE);
        assertThat(same.dimensions()).isEmpty();
        assertThat(same.finishes()).isEmpty();
        assertThat(same.surfaces()).isEmpty();
        // The same random numbers: every pair differs by nothing at all.
        assertThat(same.paths()).isNotEmpty().allSatisfy(path -> {
            assertThat(path.kind()).isEqualTo(PathChange.Kind.ALIKE);
            assertThat(path.difference()).isZero();
        });
    }

    @Test
    void aFinishOfTwiceTheReflectanceDoublesItsPaths() throws Exception {
        Comparison twice = compare(TEXT, TEXT.replace("diffuse: 0.1", "diffuse: 0.2"));
        assertThat(twice.finishes()).extracting(Changed::name).containsExactly("grey");
        // Once-reflected light is linear in the reflectance, and the random numbers are the same.
        PathChange path = twice.paths().get(0);
        assertThat(path.kind()).isEqualTo(PathChange.Kind.STRONGER);
        assertThat(path.after() / path.before()).isCloseTo(2, within(1e-9));
        assertThat(path.chance()).isLessThan(1e-3);
    }

    @Test
    void aPartThatIsAddedBringsNewPathsAndASurfaceThatMovesSaysHowFar() throws Exception {
        String more = TEXT.replace(
                "requirements:",
                "  other: {kind: block, width: 2, depth: 20, height: 20, at: [-15, 0, 0], turn: {about: y, by: -10}, finish: grey}\nrequirements:");
        Comparison added = compare(TEXT, more.replace("gap: 12", "gap: 14"));
        assertThat(added.partsAdded()).containsExactly("other");
        assertThat(added.partsGone()).isEmpty();
        // The wall moves as a whole, all six faces of it; the screen stays.
        assertThat(added.partsChanged()).containsExactly(new PartChange("wall", 6, 0, 0));
        assertThat(added.paths())
                .filteredOn(path -> path.kind() == PathChange.Kind.NEW)
                .isNotEmpty()
                .allMatch(path -> path.via().startsWith("other/"));
        assertThat(added.surfaces())
                .filteredOn(change -> !change.added())
                .isNotEmpty()
                .allSatisfy(change -> assertThat(change.moved()).isCloseTo(2, within(1e-9)));
        Comparison gone = compare(more, TEXT);
        assertThat(gone.partsGone()).containsExactly("other");
        assertThat(gone.paths())
                .filteredOn(path -> path.kind() == PathChange.Kind.GONE)
                .isNotEmpty();
    }

    @Test
    void moreLightIsWorseWhereTheSurfaceIsLitAllOverInBoth() throws Exception {
        String half = """
                title: A strip under half a pupil
                beam:
                  pupil: {shape: disc, diameter: 40, distance: 200}
                parts:
                  strip: {kind: rectangle, width: 10, depth: 0.2}
                  flag: {kind: block, width: 100, depth: 100, height: 1, at: [0, edge, 100]}
                dimensions: {edge: 50}
                requirements:
                  dark: {surfaces: strip/front, direct: none}
                """;
        Comparison more = compare(half, half.replace("edge: 50", "edge: 90"));
        RequirementChange dark = more.requirements().get(0);
        // Every point is lit in both, so that neither margin can be less.
        assertThat(dark.after().orElseThrow().margin())
                .isCloseTo(dark.before().orElseThrow().margin(), within(1e-9));
        double before =
                dark.failingBefore().orElseThrow().amounts().get("strip/front").value();
        double after =
                dark.failingAfter().orElseThrow().amounts().get("strip/front").value();
        // From the middle of the strip the flag hides half of the pupil; a strip of 0.2 mm sees half of it to 0.1 mm of
        // 40.
        assertThat(before / after).isCloseTo(0.5, within(0.02));
        assertThat(more.judgement()).isEqualTo(RequirementChange.Judgement.WORSE);
        assertThat(compare(half.replace("edge: 50", "edge: 90"), half).judgement())
                .isEqualTo(RequirementChange.Judgement.NOT_WORSE);
    }

    @Test
    void temperaturesEmissivitiesAndSourcesAreNamedThoughNoVerdictChanges() throws Exception {
        String warm = TEXT.replace("{diffuse: 0.1}", "{diffuse: 0.1, emissivity: 0.5}")
                        .replace("finish: grey}", "finish: grey, temperature: 120}")
                + """
                warmth:
                  temperature: 80
                  band: [1, 2.5]
                  surroundings: 150
                  pupil: {temperature: 200, emissivity: 0.05}
                  temperature_rules: [{surfaces: "wall/-y", temperature: 90}]
                sources:
                  guide: {kind: star, at: [21, -3.5], flux: 1.0e-12}
                  moon: {kind: distant, off_axis: 35, azimuth: 20, diameter: 0.53}
                """;
        String other = warm.replace("emissivity: 0.5", "emissivity: 0.6")
                .replace("temperature: 120", "temperature: 125")
                .replace("temperature: 80", "temperature: 85")
                .replace("2.5]", "2.6]")
                .replace("surroundings: 150", "surroundings: 160")
                .replace("0.05", "0.06")
                .replace("temperature: 90", "temperature: 95")
                .replace("-3.5", "-3.6")
                .replace("off_axis: 35", "off_axis: 36");
        Comparison changed = compare(warm, other);
        assertThat(changed.judgement()).isEqualTo(RequirementChange.Judgement.NOT_WORSE);
        assertThat(changed.finishes()).extracting(Changed::name).containsExactly("grey");
        assertThat(changed.others())
                .containsExactly(
                        pair("temperature of all that states none", "80 K", "85 K"),
                        pair("band of warm light", "1 to 2.5 um", "1 to 2.6 um"),
                        pair("temperature of the surroundings", "150 K", "160 K"),
                        pair("warmth of the pupil", "200 K, emissivity 0.05", "200 K, emissivity 0.06"),
                        pair("temperature of wall", "120 K", "125 K"),
                        pair("temperature rule 1", "wall/-y at 90 K", "wall/-y at 95 K"),
                        pair("source guide", "star at [21, -3.5, 0] mm, 1e-12 W", "star at [21, -3.6, 0] mm, 1e-12 W"),
                        pair(
                                "source moon",
                                "body 35 deg off axis, azimuth 20 deg, 0.53 deg wide",
                                "body 36 deg off axis, azimuth 20 deg, 0.53 deg wide"));
        assertThat(compare(warm, "# The same, one line further down.\n" + warm).others())
                .isEmpty();
        assertThat(compare(TEXT, warm).others()).hasSize(9);
    }

    @Test
    void otherLightAndOtherQuestionsAreNamed() throws Exception {
        String other = TEXT.replace("diameter: 40", "diameter: 44")
                        .replace("distance: 200}", "distance: 210}\n  radiance: 3")
                        .replace("5.0e-3", "6.0e-3")
                + "  back-dark: {surfaces: \"screen/back\", direct: none}\nplacement_error: 0.1\nsampling: {confidence: 0.99}\n";
        Comparison changed = compare(TEXT, other);
        assertThat(changed.beam())
                .containsExactly(
                        pair("pupil", "disc, diameter 40 mm", "disc, diameter 44 mm"),
                        pair("pupil centre", "[0, 0, 200] mm", "[0, 0, 210] mm"),
                        new Changed<>("radiance", Optional.empty(), Optional.of("3 W/(m2 sr)")));
        assertThat(changed.others())
                .containsExactly(
                        new Changed<>("placement error", Optional.empty(), Optional.of("0.1 mm")),
                        pair(
                                "what screen-clean asks",
                                "once-reflected light at most 0.005 over a surface",
                                "once-reflected light at most 0.006 over a surface"),
                        pair("confidence", "0.999", "0.99"));
        assertThat(compare(TEXT, TEXT).beam()).isEmpty();
        assertThat(compare(TEXT, TEXT).others()).isEmpty();
    }

    private static Changed<String> pair(String name, String before, String after) {
        return new Changed<>(name, Optional.of(before), Optional.of(after));
    }

    @Test
    void aRequirementThatBreaksIsWorseAndOneThatIsDroppedOrLoosenedCannotBeTold() throws Exception {
        String bright = TEXT.replace("diffuse: 0.1", "diffuse: 0.9");
        assertThat(compare(TEXT, bright).judgement()).isEqualTo(RequirementChange.Judgement.WORSE);
        assertThat(compare(bright, TEXT).judgement()).isEqualTo(RequirementChange.Judgement.NOT_WORSE);
        assertThat(compare(TEXT, TEXT.replace("5.0e-3", "6.0e-3")).judgement())
                .isEqualTo(RequirementChange.Judgement.CANNOT_TELL);
        String renamed = TEXT.replace("screen-clean:", "screen-dim:");
        assertThat(compare(TEXT, renamed).requirements())
                .extracting(RequirementChange::judgement)
                .isEqualTo(List.of(RequirementChange.Judgement.CANNOT_TELL, RequirementChange.Judgement.NOT_WORSE));
    }

    @Test
    void copiesOfAPartThatIsNewAreNoChangeOfAPart() throws Exception {
        String pins = "  pin: {kind: block, width: 1, depth: 1, height: 1, at: [-30, 0, 0],"
                + " repeat: {count: [2, 1], step: [3, 3]}}\nrequirements:\n";
        Comparison more = compare(TEXT, TEXT.replace("requirements:\n", pins));
        assertThat(more.partsAdded()).containsExactly("pin");
        assertThat(more.partsChanged()).isEmpty();
        Comparison moved = compare(
                TEXT.replace("requirements:\n", pins), TEXT.replace("requirements:\n", pins.replace("-30", "-31")));
        assertThat(moved.partsChanged()).containsExactly(new PartChange("pin", 12, 0, 0));
    }

    @Test
    void aPartThatIsTurnedAboutItsMiddleDiffers() throws Exception {
        String flag = """
                title: A flag
                beam:
                  pupil: {shape: disc, diameter: 40, distance: 200}
                parts:
                  screen: {kind: rectangle, width: 10, depth: 10}
                  flag: {kind: rectangle, width: 60, depth: 60, at: [0, 0, 60], turn: {about: x, by: 0}}
                requirements:
                  dark: {surfaces: screen/front, direct: none}
                """;
        Comparison turned = compare(flag, flag.replace("by: 0", "by: 70"));
        assertThat(turned.judgement()).isEqualTo(RequirementChange.Judgement.WORSE);
        assertThat(turned.partsChanged()).containsExactly(new PartChange("flag", 2, 0, 0));
        // The edges along x are 30 mm from the axis: the chord of 70 deg.
        assertThat(turned.surfaces()).hasSize(2).allSatisfy(surface -> {
            assertThat(surface.moved()).isLessThan(1e-9);
            assertThat(surface.cornerMoved()).isCloseTo(60 * Math.sin(Math.toRadians(35)), within(1e-9));
        });
        // As large, about the same middle, in another outline.
        Comparison reshaped = compare(flag, flag.replace("width: 60, depth: 60", "width: 40, depth: 90"));
        assertThat(reshaped.partsChanged()).containsExactly(new PartChange("flag", 2, 0, 0));
        assertThat(reshaped.surfaces())
                .allSatisfy(surface -> assertThat(surface.cornerMoved()).isCloseTo(Math.hypot(10, 15), within(1e-9)));
        assertThat(compare(flag, flag.replace("by: 0", "by: 360")).surfaces()).isEmpty();
    }

    @Test
    void tolerancesAreNamed() throws Exception {
        String loose = TEXT.replace(
                        "gap: 12 mm", "gap: {value: 12 mm, tolerance: 0.1, distribution: normal, sigmas: 1}")
                .replace("finish: grey}", "finish: grey, placement_tolerance: {shift: 0.2, tilt: 0}}");
        String looser = loose.replace("0.1, dist", "2.5, dist").replace("shift: 0.2", "shift: [0.2, 0.3, 0]");
        assertThat(compare(loose, looser).others())
                .containsExactly(
                        pair(
                                "tolerance of gap",
                                "+-0.1 mm, normal, end at 1 sigma",
                                "+-2.5 mm, normal, end at 1 sigma"),
                        pair(
                                "placement tolerance of wall",
                                "shift x +-0.2 mm, uniform; shift y +-0.2 mm, uniform; shift z +-0.2 mm, uniform",
                                "shift x +-0.2 mm, uniform; shift y +-0.3 mm, uniform"));
        assertThat(compare(TEXT, loose).others()).extracting(Changed::name).hasSize(2);
        assertThat(compare(loose, loose).others()).isEmpty();
    }
}
