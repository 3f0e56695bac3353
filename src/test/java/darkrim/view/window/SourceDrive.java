package darkrim.view.window;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.present.picture.ColourScale;
import darkrim.study.Effort;
import darkrim.view.files.Memory;
import darkrim.view.files.Pixels;
import darkrim.view.look.Light;
import darkrim.view.work.Lighting;
import darkrim.view.work.Reading;
import darkrim.view.work.ViewModel;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.Optional;
import javafx.geometry.Point2D;
import javafx.scene.Node;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** Works a window of two layouts with sources beside the beam, for {@link WindowDrive}. */
final class SourceDrive {
    private static final Optional<String> MOON = Optional.of("moon");
    private static final String MOON_LINE =
            "  moon: {kind: distant, off_axis: 30, azimuth: 0, diameter: 0.5, irradiance: 2.0e-3}\n";
    private static final String SUN_LINE = "  sun: {kind: distant, off_axis: 60, azimuth: 90, diameter: 0.5}\n";
    private static final PictureSize SIZE = new PictureSize(800, 300);

    private final Stage stage;
    private final ViewerWindow window;
    private final Hands hands;
    private final ViewModel left;
    private final ViewModel right;

    private SourceDrive(Path folder) throws IOException {
        Path before = Files.writeString(folder.resolve("two-sources.yaml"), with(MOON_LINE + SUN_LINE));
        Path after = Files.writeString(folder.resolve("moon.yaml"), with(MOON_LINE));
        stage = Hands.on(Stage::new);
        window = Hands.on(() -> {
            stage.setX(0);
            stage.setY(0);
            stage.setWidth(1000);
            stage.setHeight(640);
            ViewerWindow opened = new ViewerWindow(
                    stage,
                    before,
                    Optional.of(after),
                    new Effort(1, Optional.empty(), Optional.of(100_000L)),
                    new Memory(folder.resolve("windows.properties")));
            opened.show(Optional.empty());
            return opened;
        });
        hands = new Hands(stage);
        left = window.model();
        right = window.beside().orElseThrow().model();
    }

    private static String with(String sources) {
        return PlateLayout.TEXT.replace("parts:\n", "sources:\n" + sources + "parts:\n");
    }

    /** Chooses a source, reads its light on both sides, saves it, and goes back to the beam. */
    static void run(Path folder) throws IOException {
        SourceDrive drive = new SourceDrive(folder);
        Hands.until(
                "both ends",
                90,
                () -> drive.left.content().activity().isEmpty()
                        && drive.left.content().facts().isPresent()
                        && drive.right.content().facts().isPresent());
        drive.chooses();
        drive.reads();
        drive.saves();
        drive.goesOn();
        Hands.on(() -> {
            drive.stage.close();
            return true;
        });
    }

    private void chooses() {
        Node view = hands.find("viewport");
        hands.click(view, 12, 12);
        hands.key(KeyCode.C);
        hands.key(KeyCode.DIGIT1);
        assertThat(Hands.on(() -> ((ComboBox<?>) hands.lookup("source")).getItems()))
                .asString()
                .isEqualTo("[of the beam, of moon, of sun]");
        hands.key(KeyCode.W);
        assertThat(Hands.on(() -> left.look().source())).isEqualTo(MOON);
        Hands.until(
                "the light of both",
                60,
                () -> left.content().lighting(MOON).isPresent()
                        && left.content().wanting(MOON).isEmpty()
                        && right.content().lighting(MOON).isPresent()
                        && right.content().wanting(MOON).isEmpty());
        assertThat(Hands.on(() -> ((ComboBox<?>) hands.lookup("source")).getValue()))
                .isEqualTo("of moon");
        assertThat(Hands.on(() -> left.look().marksVerdicts())).isFalse();
    }

    /** The top of the lid faces the source at 30 deg: its direct light is the cosine of that, and its colour that of the value. */
    private void reads() {
        Vector3D at = Hands.on(() -> window.viewport().eye().project(Vector3D.of(-15, 14, 21)));
        Reading reading = Hands.on(
                () -> left.content().light(MOON, "lid/top").orElseThrow().of(Light.DIRECT));
        assertThat(reading.value()).isBetween(0.865, 0.867);
        Hands.pause(400);
        ColourScale scale = Hands.on(() -> Scales.of(left));
        assertThat(scale).isEqualTo(Hands.on(() -> Scales.of(right)));
        Pixels screen = hands.screen();
        Node view = hands.find("viewport");
        double[] pixel = Hands.on(() -> {
            Point2D point = view.localToScreen(at.getX(), at.getY());
            return new double[] {point.getX() - stage.getX(), point.getY() - stage.getY()};
        });
        int seen = screen.argb()[((int) pixel[1]) * screen.width() + (int) pixel[0]];
        assertThat(Integer.toHexString(seen)).isEqualTo(Integer.toHexString(scale.argb(reading.value())));
        hands.moveTo(view, at.getX(), at.getY());
        Label under = (Label) hands.find("under");
        Hands.until("a read-out", 20, () -> under.getText().contains("direct, of moon, mean of the face 0.866"));
        assertThat(Hands.on(under::getText)).contains("W/m2");
        hands.click(view, at.getX(), at.getY());
        hands.key(KeyCode.CONTROL, KeyCode.DIGIT2);
        Hands.until("its light", 20, () -> hands.lookup("source-light") != null);
        assertThat(Hands.on(() -> ((Label) hands.lookup("source-light")).getText()))
                .isEqualTo("Light of moon");
        Lighting lighting = Hands.on(() -> left.content().lighting(MOON).orElseThrow());
        assertThat(Hands.on(() -> hands.lookup("source-values").lookupAll(".label").stream()
                        .map(label -> ((Label) label).getText())
                        .toList()))
                .contains(lighting.words(reading));
    }

    /** The head of a saved picture says whose light it is: it is another than that of the beam's, and only in the title. */
    private void saves() {
        Pixels moon = Hands.on(() -> new Picture(left, false).of(SIZE, LocalDate.EPOCH));
        Hands.on(() -> {
            left.change(look -> look.litBy(Optional.empty()));
            return true;
        });
        Pixels beam = Hands.on(() -> new Picture(left, false).of(SIZE, LocalDate.EPOCH));
        int title = 24 * SIZE.width();
        int head = 46 * SIZE.width();
        assertThat(Arrays.copyOf(moon.argb(), title)).isNotEqualTo(Arrays.copyOf(beam.argb(), title));
        assertThat(Arrays.copyOfRange(moon.argb(), title, head))
                .isEqualTo(Arrays.copyOfRange(beam.argb(), title, head));
        assertThat(moon.argb()).isNotEqualTo(beam.argb());
    }

    /** The second layout has no sun: its side says so and shows no values. */
    private void goesOn() {
        hands.click(hands.find("viewport"), 12, 12);
        hands.key(KeyCode.W);
        hands.key(KeyCode.W);
        assertThat(Hands.on(() -> left.look().source())).isEqualTo(Optional.of("sun"));
        assertThat(Hands.on(() -> right.content().wanting(right.look().source())))
                .isEqualTo("this layout has no distant source named sun");
        assertThat(Hands.on(() -> right.content().lighting(right.look().source())))
                .isEmpty();
        hands.key(KeyCode.W);
        assertThat(Hands.on(() -> left.look().source())).isEmpty();
        assertThat(Hands.on(() -> left.look().marksVerdicts())).isTrue();
    }
}
