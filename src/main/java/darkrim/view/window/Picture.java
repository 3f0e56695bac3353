package darkrim.view.window;

import darkrim.present.Figures;
import darkrim.present.picture.ColourScale;
import darkrim.view.files.Pixels;
import darkrim.view.look.Light;
import darkrim.view.look.Look;
import darkrim.view.parts.Stage;
import darkrim.view.work.Content;
import darkrim.view.work.ViewModel;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Locale;
import java.util.Optional;
import javafx.geometry.VPos;
import javafx.scene.Group;
import javafx.scene.Scene;
import javafx.scene.SceneAntialiasing;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import javafx.scene.paint.Color;
import javafx.scene.text.Font;
import javafx.scene.text.FontWeight;
import javafx.scene.text.TextAlignment;

/** Draws what is seen once more, in a size of its own, with title, revision and date. */
final class Picture {
    private static final double HEAD = 46;

    private final ViewModel model;
    private final boolean comparing;

    /**
     * @param comparing whether the difference of two layouts is shown
     */
    Picture(ViewModel model, boolean comparing) {
        this.model = model;
        this.comparing = comparing;
    }

    /** The picture in a size: of two layouts side by side each in half of it, or their difference in the whole, as the window shows it. */
    Pixels of(PictureSize size, LocalDate date) {
        Optional<ViewModel> second = model.partner();
        if (comparing && second.filter(Picture::isShown).isPresent() && isShown(model)) {
            return new Picture(second.get(), true).alone(size, date);
        }
        if (second.filter(Picture::isShown).isEmpty()) {
            return new Picture(model, false).alone(size, date);
        }
        PictureSize half = new PictureSize(size.width() / 2, size.height());
        return joined(half, alone(half, date), new Picture(second.get(), false).alone(half, date));
    }

    private static boolean isShown(ViewModel each) {
        return each.content().stage().isPresent();
    }

    private static Pixels joined(PictureSize half, Pixels left, Pixels right) {
        int width = half.width();
        int[] argb = new int[2 * width * half.height()];
        for (int row = 0; row < half.height(); row++) {
            System.arraycopy(left.argb(), row * width, argb, 2 * row * width, width);
            System.arraycopy(right.argb(), row * width, argb, (2 * row + 1) * width, width);
        }
        return new Pixels(2 * width, half.height(), argb);
    }

    private Pixels alone(PictureSize size, LocalDate date) {
        Content content = model.content();
        Look look = model.look();
        Stage stage = content.stage().orElseThrow();
        ColourScale scale = Scales.of(model);
        SceneView scene = new SceneView();
        scene.node().setWidth(size.width());
        double strip = look.light() == Light.NONE ? 0 : ScaleBar.HEIGHT;
        double height = size.height() - HEAD - strip;
        scene.node().setHeight(height);
        scene.show(stage);
        scene.arrange(look);
        Optional<Differences> differences =
                comparing ? Differences.of(look, model.besideContent(), content) : Optional.empty();
        differences.ifPresentOrElse(found -> scene.paint(look, found), () -> scene.paint(look, content, scale));
        scene.outline(look.marking(look.verdictMarks() && differences.isEmpty()), content.facts());
        scene.draw(PathLines.of(content.ways(), PathLines.straight(look, content)));
        scene.move(look);
        scene.node().setLayoutY(HEAD);
        Canvas over = new Canvas(size.width(), height);
        over.setLayoutY(HEAD);
        Overlay overlay = new Overlay(model, new Eye(model, scene));
        overlay.mark(content.ways());
        overlay.draw(over.getGraphicsContext2D(), differences);
        Canvas below = new Canvas(size.width(), strip);
        below.setLayoutY(HEAD + height);
        if (differences.isPresent()) {
            ChangeBar.draw(below.getGraphicsContext2D(), size.width(), look);
        } else if (strip > 0) {
            ScaleBar.draw(below.getGraphicsContext2D(), size.width(), scale, look, ScaleStrip.watts(look, content));
        }
        Canvas head = new Canvas(size.width(), HEAD);
        String of = look.light() == Light.NONE
                ? ""
                : look.source().map(name -> ", light of " + name).orElse("");
        String against = differences.isPresent()
                ? model.besideContent().stage().map(Picture::against).orElse("")
                : "";
        head(head.getGraphicsContext2D(), size, DetailPane.title(stage) + of + against, stage, content, date);
        Group all = new Group(scene.node(), over, below, head);
        WritableImage image = new WritableImage(size.width(), size.height());
        new Scene(all, size.width(), size.height(), true, SceneAntialiasing.BALANCED).snapshot(image);
        int[] argb = new int[size.width() * size.height()];
        image.getPixelReader()
                .getPixels(0, 0, size.width(), size.height(), PixelFormat.getIntArgbInstance(), argb, 0, size.width());
        return new Pixels(size.width(), size.height(), argb);
    }

    private static String against(Stage before) {
        return ", difference to " + DetailPane.title(before) + " ("
                + Path.of(before.layout().source().name()).getFileName() + ")";
    }

    private static void head(
            GraphicsContext g, PictureSize size, String title, Stage stage, Content content, LocalDate date) {
        g.setFill(Color.WHITE);
        g.fillRect(0, 0, size.width(), HEAD);
        g.setFill(Overlay.INK);
        g.setTextBaseline(VPos.TOP);
        g.setTextAlign(TextAlignment.LEFT);
        g.setFont(Font.font("System", FontWeight.BOLD, 15));
        g.fillText(title, 12, 6, size.width() - 24);
        g.setFont(Font.font("System", 12));
        String verdict = content.facts()
                .map(facts -> (facts.isOutdated() ? "was " : "")
                        + facts.verdict().name().toLowerCase(Locale.ROOT) + ", " + facts.words()
                        + (facts.warnings().isEmpty()
                                ? ""
                                : ", " + Figures.counted(facts.warnings().size(), "warning")))
                .orElse("not checked");
        g.fillText(
                date + "   " + stage.layout().source().name() + "   verdict on the beam: " + verdict,
                12,
                26,
                size.width() - 24);
    }
}
