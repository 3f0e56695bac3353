package darkrim.view.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.layout.SourceSpec;
import darkrim.present.picture.ColourScale;
import darkrim.scene.DistantBody;
import darkrim.scene.Surface;
import darkrim.study.Effort;
import darkrim.study.PointName;
import darkrim.study.irradiance.CheckedLight;
import darkrim.study.irradiance.LightKind;
import darkrim.study.irradiance.PlacedLayout;
import darkrim.study.irradiance.SourceLight;
import darkrim.study.irradiance.SurfaceMap;
import darkrim.verdict.Watch;
import darkrim.view.camera.Camera;
import darkrim.view.look.Light;
import darkrim.view.look.Look;
import darkrim.view.parts.Stage;
import darkrim.view.window.PlateLayout;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The plate of {@link PlateLayout} in the light of a small body 30 deg from the axis toward +x. All of the top of the lid faces it at 30 deg. Of the
 * sheet below two rectangles are lit: what comes through the opening, and what passes beside the lid.
 */
class SourceFinderTest {
    private static final Optional<String> MOON = Optional.of("moon");
    private static final String SOURCES = """
            sources:
              guide: {kind: star, at: [0, 0]}
              moon: {kind: distant, off_axis: 30, azimuth: 0, diameter: 0.01, irradiance: 2.0e-3}
              sun: {kind: distant, off_axis: 60, azimuth: 90, diameter: 0.5}
            parts:
            """;

    private static Stage stage;
    private static Content content;

    @BeforeAll
    static void find(@TempDir Path folder) throws Exception {
        stage = stage(folder, "plate.yaml", SOURCES);
        content = Content.NOTHING.with(stage);
        Held window = new Held();
        try (SourceFinder finder = new SourceFinder(2, window::show)) {
            finder.find(stage, moon(stage));
            window.await(
                    now -> now.lighting(MOON).isPresent() && now.wanting(MOON).isEmpty());
        }
    }

    private static Stage stage(Path folder, String name, String sources) throws Exception {
        return PlateStage.of(Files.writeString(folder.resolve(name), PlateLayout.TEXT.replace("parts:\n", sources)));
    }

    private static SourceSpec.Distant moon(Stage in) {
        return SourceFinder.source(in, "moon").orElseThrow();
    }

    /** The contents, changed from any thread. */
    private static final class Held {
        synchronized void show(UnaryOperator<Content> change) {
            content = change.apply(content);
            notifyAll();
        }

        synchronized void await(Predicate<Content> wanted) throws InterruptedException {
            long end = System.nanoTime() + 60_000_000_000L;
            while (!wanted.test(content)) {
                assertThat(System.nanoTime()).as("patience").isLessThan(end);
                wait(1000);
            }
        }
    }

    private static Reading direct(String surface) {
        return content.light(MOON, surface).orElseThrow().of(Light.DIRECT);
    }

    /** Through the opening come x from -20 tan 30 - 5 (the sheet ends at -15) to -21 tan 30 + 5; beside the lid x from 20 - 20 tan 30 to 15. */
    private static double sheet() {
        double slope = Math.tan(Math.toRadians(30));
        double through = 10 * (-21 * slope + 5 + 15);
        double beside = 30 * (15 - (20 - 20 * slope));
        return Math.cos(Math.toRadians(30)) * (through + beside) / 900;
    }

    @Test
    void directLightIsTheCosineOfTheAngleTimesTheShareThatIsLit() {
        assertThat(direct("lid/top").value()).isCloseTo(Math.cos(Math.toRadians(30)), within(1e-3));
        // 5 standard errors: by chance once in 1.7 million seeds.
        assertThat(direct("sheet/front").value())
                .isCloseTo(sheet(), within(5 * direct("sheet/front").error()));
        assertThat(direct("sheet/front").error()).isBetween(1e-4, 0.02);
        assertThat(direct("sheet/back").words()).isNotEqualTo("not measured");
        assertThat(direct("sheet/back").value()).isZero();
    }

    @Test
    void theWindowShowsTheNumbersOfDrawnPictures() {
        PlacedLayout placed = new PlacedLayout(stage.layout(), stage.scene(), stage.warnings());
        CheckedLight drawn = SourceLight.of(placed, moon(stage), Effort.asAsked(), Watch.NONE);
        double facing = DistantBody.facing(drawn.scene());
        for (Surface surface : stage.scene().surfaces()) {
            SurfaceFacts known = content.light(MOON, surface.name()).orElseThrow();
            CheckedLight.OnSurface on = drawn.surfaces().get(surface.index());
            assertThat(known.direct().value()).isEqualTo(on.direct().mean() * (1 / facing));
            assertThat(known.onceReflected().value()).isEqualTo(on.reflected().mean() * (1 / facing));
            assertThat(known.judged()).isEmpty();
        }
    }

    @Test
    void valuesAreInWattsPerSquareMetreAsWellWhereTheSourceSaysHowMany() {
        Lighting lighting = content.lighting(MOON).orElseThrow();
        assertThat(lighting.words(new Reading(0.5, 0.01))).isEqualTo("0.500 +- 0.010, 0.00100 +- 0.00002 W/m2");
    }

    @Test
    void raysFromFarAwayBeginNearTheParts() {
        Judged.Line ray =
                content.light(MOON, "sheet/front").orElseThrow().rays().get(0);
        Vector3D along = ray.from().subtract(ray.to());
        assertThat(along.norm()).isCloseTo(2 * stage.scene().reach(), within(1e-6));
        assertThat(along.normalize().dot(Vector3D.of(0.5, 0, Math.sqrt(0.75)))).isCloseTo(1, within(1e-6));
    }

    @Test
    void mapsOfASourceGrowInItsUnitAndLeaveThoseOfTheBeamAlone() throws Exception {
        Held window = new Held();
        try (MapMaker maps = new MapMaker(1, window::show)) {
            maps.make(stage, content.lighting(MOON).orElseThrow(), content.maps(MOON), List.of("sheet/front"));
            window.await(now -> now.maps(MOON).values().stream().anyMatch(map -> map.rounds() >= 3));
        }
        SurfaceMap map = content.maps(MOON).get("sheet/front");
        assertThat(map.mean(LightKind.DIRECT)).isCloseTo(sheet(), within(5 * map.meanError(LightKind.DIRECT)));
        assertThat(content.maps()).isEmpty();
        assertThat(content.maps(Optional.empty())).isEmpty();
        assertThat(map.cells().grid().orElseThrow().columns()).isEqualTo(MapMaker.ALONG);
    }

    @Test
    void whatAPointSeesIsInTheLightOfTheSource() throws Exception {
        Held window = new Held();
        Lighting lighting = content.lighting(MOON).orElseThrow();
        try (PointLook look = new PointLook(1, window::show)) {
            look.look(new PointLook.Asked(
                    PointName.rounded("lid/underside", 0.9, 0.5),
                    stage,
                    lighting,
                    Light.DIRECT,
                    new ColourScale(ColourScale.Spacing.LINEAR, 0, 1, "relative irradiance", ""),
                    60,
                    false));
            window.await(now -> now.seen().filter(SeenFrom::finished).isPresent());
        }
        SeenFrom seen = content.seen().orElseThrow();
        assertThat(seen.refused()).isEmpty();
        assertThat(seen.lighting().source()).isEqualTo(MOON);
        SurfaceMap sheet = seen.maps()
                .get(stage.scene().surface("sheet/front").orElseThrow().index());
        assertThat(sheet.mean(LightKind.DIRECT)).isCloseTo(sheet(), within(5 * sheet.meanError(LightKind.DIRECT)));
    }

    @Test
    void lightOfAnotherLayoutIsLeftOut(@TempDir Path folder) throws Exception {
        Stage other = stage(folder, "other.yaml", SOURCES);
        Content moved = content.with(other);
        assertThat(moved.lighting(MOON)).isEmpty();
        assertThat(moved.wanting(MOON)).isEqualTo("light of moon is being sampled");
        assertThat(moved.sampled(MOON)).hasValue(0);
        SourceFacts found = content.sources().get("moon");
        assertThat(moved.lit(stage, found).lighting(MOON)).isEmpty();
        assertThat(moved.lit("moon", facts -> facts.progressed(1))).isSameAs(moved);
    }

    @Test
    void aLayoutWithoutTheSourceSaysSo(@TempDir Path folder) throws Exception {
        Content without = Content.NOTHING.with(stage(folder, "without.yaml", "parts:\n"));
        assertThat(without.wanting(MOON)).isEqualTo("this layout has no distant source named moon");
        assertThat(without.wanting(Optional.empty())).isEmpty();
        assertThat(without.sampled(MOON)).isEmpty();
        FacePair pair = new FacePair("lid/top", without, content, MOON);
        assertThat(pair.before(Light.DIRECT)).isEqualTo(Reading.UNKNOWN);
        assertThat(pair.after(Light.DIRECT)).isEqualTo(direct("lid/top"));
        assertThat(pair.change(Light.DIRECT).kind()).isEqualTo(LightChange.Kind.NOT_KNOWN);
    }

    @Test
    void distantSourcesAreOfferedInTheOrderOfTheFileAndOneThatIsShownStays() {
        ViewModel model = new ViewModel(Look.from(new Camera(Vector3D.ZERO, 0, 0, 10, false)));
        model.show(now -> now.with(stage));
        assertThat(model.sources()).containsExactly("moon", "sun");
        model.change(look -> look.litBy(Optional.of("gone")));
        assertThat(model.sources()).containsExactly("moon", "sun", "gone");
    }
}
