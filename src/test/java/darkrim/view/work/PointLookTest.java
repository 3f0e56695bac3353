package darkrim.view.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.diagnostic.Findings;
import darkrim.layout.LayoutReader;
import darkrim.present.picture.ColourScale;
import darkrim.present.picture.SeenPicture;
import darkrim.study.Check;
import darkrim.study.Effort;
import darkrim.study.PointName;
import darkrim.verdict.Watch;
import darkrim.view.look.Light;
import darkrim.view.parts.Stage;
import darkrim.view.window.PlateLayout;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.UnaryOperator;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The lid lies 20 mm above the sheet, its opening reaches 5 mm to each side, and the pupil 10 mm, 200 mm above the sheet. */
class PointLookTest {
    private static final ColourScale SCALE =
            new ColourScale(ColourScale.Spacing.LOGARITHMIC, 1e-6, 1, "relative irradiance", "");
    private static final int SIZE = 120;
    private static final int PUPIL = 0xff0a6b7a;

    private static Stage stage;
    private static Facts facts;

    /** All that was shown, one after the other. */
    private final List<SeenFrom> shown = Collections.synchronizedList(new ArrayList<>());

    @BeforeAll
    static void check(@TempDir Path folder) throws Exception {
        Path file = Files.writeString(folder.resolve("plate.yaml"), PlateLayout.TEXT);
        stage = Stage.of(LayoutReader.read(file).layout().orElseThrow(), new Findings());
        Effort effort = new Effort(1, Optional.empty(), Optional.of(20_000L));
        facts = Facts.of(Check.of(stage.layout(), new Findings(), effort, Watch.NONE), "checked");
    }

    private static PointLook.Asked from(PointName point, Light light) {
        return new PointLook.Asked(point, stage, Lighting.of(stage, Optional.of(facts)), light, SCALE, SIZE, false);
    }

    /** The last of what is shown when all of this is asked for, one right after the other. */
    private SeenFrom last(PointLook.Asked... asked) throws InterruptedException {
        CountDownLatch finished = new CountDownLatch(1);
        Content[] content = {Content.NOTHING};
        Object window = new Object();
        PointName awaited = asked[asked.length - 1].point();
        try (PointLook look = new PointLook(1, (UnaryOperator<Content> change) -> {
            synchronized (window) {
                content[0] = change.apply(content[0]);
                content[0].seen().ifPresent(seen -> {
                    shown.add(seen);
                    if (seen.finished() && seen.point().equals(awaited)) {
                        finished.countDown();
                    }
                });
            }
        })) {
            for (PointLook.Asked one : asked) {
                look.look(one);
            }
            assertThat(finished.await(60, TimeUnit.SECONDS)).isTrue();
        }
        return shown.get(shown.size() - 1);
    }

    private static String name(SeenFrom seen, double x, double y, double z) {
        SeenPicture picture = seen.picture().orElseThrow();
        double[] place = picture.place(Vector3D.of(x, y, z)).orElseThrow();
        return picture.at(place[0], place[1])
                .map(there -> stage.scene().surfaces().get(there.surface()).name())
                .orElse("");
    }

    @Test
    void theMiddleOfTheSheetSeesTheWholePupilInTheMiddleAndTheLidAroundTheOpening() throws Exception {
        SeenFrom seen = last(from(PointName.middle("sheet/front"), Light.DIRECT));
        assertThat(seen.share()).isEqualTo("sees the whole pupil");
        assertThat(seen.hidden()).isEmpty();
        assertThat(seen.picture().orElseThrow().place(Vector3D.of(0, 0, 200)).orElseThrow())
                .containsExactly(new double[] {0.5, 0.5}, within(1e-9));
        assertThat(name(seen, 0, 0, 200)).isEmpty();
        assertThat(name(seen, 4.7, 0, 20)).isEmpty();
        assertThat(name(seen, 5.5, 0, 20)).isEqualTo("lid/underside");
        assertThat(name(seen, 0, 19.5, 20)).isEqualTo("lid/underside");
        // The lid ends 20 mm from the middle.
        assertThat(name(seen, 20.5, 0, 20)).isEmpty();
    }

    @Test
    void theAngleFromTheMiddleIsThatOfTheGeometry() throws Exception {
        SeenPicture picture = last(from(PointName.middle("sheet/front"), Light.NONE))
                .picture()
                .orElseThrow();
        double[] place = picture.place(Vector3D.of(20, 0, 20)).orElseThrow();
        assertThat(picture.angle(place[0], place[1]).orElseThrow()).isCloseTo(45, within(1e-4));
        assertThat(place[0]).isGreaterThan(0.5);
        assertThat(picture.right() + picture.up()).isEqualTo("+x+y");
        assertThat(picture.angle(0, 0)).isEmpty();
    }

    @Test
    void whatHidesThePupilFromTheMarginOfTheSheetIsTheLid() throws Exception {
        // From x = -13.5 lines to the pupil pass the height of the lid between -13.15 and -11.15, beside the opening.
        SeenFrom seen = last(from(new PointName("sheet/front", 0.05, 0.5), Light.DIRECT));
        assertThat(seen.share()).isEqualTo("sees none of the pupil");
        assertThat(seen.hidden()).containsExactly("100 %  lid/underside");
        assertThat(name(seen, 0, 0, 200)).isEqualTo("lid/underside");
    }

    @Test
    void aCoarsePictureComesFirstAndThePupilIsOutlinedInTheLast() throws Exception {
        last(from(PointName.middle("sheet/front"), Light.DIRECT));
        assertThat(shown.get(0).picture().orElseThrow().size()).isLessThan(SIZE / 2);
        SeenPicture sharp = shown.get(shown.size() - 1).picture().orElseThrow();
        assertThat(sharp.size()).isEqualTo(SIZE);
        assertThat(sharp.copyArgb()).contains(PUPIL);
    }

    @Test
    void aSurfaceHasTheColourOfTheLightThatIsReadThere() throws Exception {
        SeenFrom seen = last(from(PointName.middle("sheet/front"), Light.ONCE_REFLECTED));
        SeenPicture picture = seen.picture().orElseThrow();
        int[] argb = picture.copyArgb();
        int same = 0;
        int looked = 0;
        for (int row = 0; row < SIZE; row += 3) {
            for (int column = 0; column < SIZE; column += 3) {
                Optional<SeenPicture.Seen> there = picture.at((column + 0.5) / SIZE, (row + 0.5) / SIZE);
                if (there.isPresent()) {
                    int expected =
                            SCALE.argb(seen.cell(there.get()).orElseThrow().value());
                    looked++;
                    same += argb[column + SIZE * row] == expected ? 1 : 0;
                }
            }
        }
        assertThat(looked).isGreaterThan(200);
        // Edges, borders of cells and the pupil's outline are drawn over the rest.
        assertThat(same).isGreaterThan(looked / 2);
    }

    @Test
    void ofTwoPointsOnlyTheLaterIsShownInTheEnd() throws Exception {
        PointName later = new PointName("sheet/front", 0.25, 0.5);
        SeenFrom seen = last(from(PointName.middle("lid/top"), Light.DIRECT), from(later, Light.DIRECT));
        assertThat(seen.point()).isEqualTo(later);
        assertThat(shown).noneMatch(each -> each.finished() && !each.point().equals(later));
    }

    @Test
    void aPointThatIsNotThereIsRefusedWithTheReason() throws Exception {
        SeenFrom seen = last(from(PointName.middle("sheet/frnt"), Light.DIRECT));
        assertThat(seen.picture()).isEmpty();
        assertThat(seen.refused()).contains("sheet/frnt").contains("sheet/front");
    }
}
