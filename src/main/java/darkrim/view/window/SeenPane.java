package darkrim.view.window;

import darkrim.present.Figures;
import darkrim.present.picture.ColourScale;
import darkrim.present.picture.SeenPicture;
import darkrim.scene.Surface;
import darkrim.study.NoSuchPoint;
import darkrim.study.PointName;
import darkrim.view.look.Light;
import darkrim.view.look.Look;
import darkrim.view.work.Content;
import darkrim.view.work.Lighting;
import darkrim.view.work.PointLook;
import darkrim.view.work.Reading;
import darkrim.view.work.SeenFrom;
import darkrim.view.work.ViewModel;
import java.util.Optional;
import javafx.application.Platform;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.VBox;

/** What one point sees: the picture, the share of the pupil, and what is under the mouse in the picture. */
final class SeenPane implements AutoCloseable {
    private static final String HOW =
            "Right click on a flat face and Look from here, or click on a map, or select a face and press S, or write"
                    + " a point: the name of a surface, a colon, and two shares across it, such as"
                    + " mosaic/die[1,2]/active:0.25,0.5.";

    private final ViewModel model;
    private final PointLook work;
    private final TextField field = new TextField();
    private final Label refused = ToolStrip.label("");
    private final Label share = ToolStrip.label(HOW);
    private final Label hidden = ToolStrip.label("");
    private final Label reading = ToolStrip.label("");
    private final Label legend = ToolStrip.label("");
    private final SeenImage image = new SeenImage();
    private final VBox box = new VBox(6);
    private Optional<PointName> point = Optional.empty();
    private Optional<PointLook.Asked> asked = Optional.empty();
    private Optional<SeenFrom> drawn = Optional.empty();

    SeenPane(ViewModel model, Commands commands, int threads) {
        this.model = model;
        work = new PointLook(threads, change -> Platform.runLater(() -> model.show(change)));
        field.setId("seen-point");
        field.setPromptText("surface:u,v");
        field.setTooltip(new Tooltip("The point that looks: a surface, a colon, two shares from 0 to 1; then Enter"));
        field.setOnAction(event -> write());
        refused.setId("seen-refused");
        share.setId("seen-share");
        reading.setId("seen-reading");
        reading.setMinHeight(54);
        hidden.getStyleClass().add("note");
        legend.getStyleClass().add("note");
        image.onPlace(this::read);
        image.onChosen(place ->
                seen(place).ifPresent(there -> commands.select(surface(there).name())));
        box.getStyleClass().add("side");
        box.getChildren().addAll(field, refused, share, image.node(), reading, hidden, legend);
        show(refused, "");
        box.widthProperty().addListener(changed -> follow());
        model.onContent(this::follow);
        model.onLook(this::follow);
    }

    Node node() {
        return box;
    }

    /** Lets the viewer write a point. */
    void ask() {
        field.requestFocus();
    }

    /** Reads the field; what cannot be read leaves the picture as it was. */
    private void write() {
        try {
            look(PointName.read(field.getText().strip()));
        } catch (NoSuchPoint none) {
            refuse(none.getMessage());
        }
    }

    private void refuse(String why) {
        field.getStyleClass().remove("wrong");
        if (!why.isEmpty()) {
            field.getStyleClass().add("wrong");
        }
        show(refused, why);
    }

    /** Shows what a point sees. */
    void look(PointName from) {
        point = Optional.of(from);
        field.setText(from.text());
        refuse("");
        follow();
    }

    private void follow() {
        Content content = model.content();
        Look look = model.look();
        Optional<Lighting> lighting = content.lighting(look.source());
        if (point.isEmpty() || content.stage().isEmpty() || lighting.isEmpty()) {
            // Without it no light: of a source that is about to be sampled, the next contents tell.
            return;
        }
        ColourScale scale = Scales.of(look, content);
        PointLook.Asked wanted = new PointLook.Asked(
                point.get(),
                content.stage().get(),
                lighting.get(),
                look.light(),
                scale,
                image.pixels(box.getWidth()),
                content.moving());
        if (asked.filter(wanted::equals).isEmpty()) {
            asked = Optional.of(wanted);
            work.look(wanted);
        }
        if (!content.seen().equals(drawn)) {
            drawn = content.seen();
            drawn.ifPresent(this::draw);
        }
    }

    private void draw(SeenFrom seen) {
        if (point.equals(Optional.of(seen.point()))) {
            refuse(seen.refused());
        }
        share.setText(
                seen.refused().isEmpty() ? seen.share().isEmpty() ? "looking" : "The point " + seen.share() + "." : "");
        show(
                hidden,
                seen.hidden().isEmpty()
                        ? ""
                        : "The pupil is hidden by (sampled share of it):\n" + String.join("\n", seen.hidden()));
        image.show(seen.picture());
        legend.setText(seen.picture().map(picture -> words(seen, picture)).orElse(""));
        image.place().ifPresent(this::read);
    }

    private static String words(SeenFrom seen, SeenPicture picture) {
        String light = seen.light() == Light.NONE
                ? "Parts without light."
                : "Light: " + lightWords(seen) + ", colours as in the view"
                        + (seen.finished() ? "." : "; growing finer.");
        return light + " Right is " + picture.right() + ", up is " + picture.up()
                + "; the rim is 90 deg from the middle. Blue-green: "
                + seen.lighting().source().orElse("the pupil")
                + ", also where parts hide it. All parts are"
                + " there, also those hidden in the view.";
    }

    private Optional<SeenPicture.Seen> seen(double[] place) {
        return drawn.flatMap(SeenFrom::picture).flatMap(picture -> picture.at(place[0], place[1]));
    }

    private Surface surface(SeenPicture.Seen there) {
        return drawn.orElseThrow().stage().scene().surfaces().get(there.surface());
    }

    /** Names what is seen at a place of the picture, with its light. */
    private void read(double[] place) {
        Optional<Double> angle = drawn.flatMap(SeenFrom::picture).flatMap(picture -> picture.angle(place[0], place[1]));
        if (angle.isEmpty()) {
            reading.setText("");
            return;
        }
        String where = Figures.three(angle.get()) + " deg from the middle";
        Optional<SeenPicture.Seen> there = seen(place);
        if (there.isEmpty()) {
            reading.setText("nothing in the way\n" + where);
            return;
        }
        reading.setText(surface(there.get()).name() + "\n" + light(there.get()) + where);
    }

    private String light(SeenPicture.Seen there) {
        SeenFrom seen = drawn.orElseThrow();
        if (seen.light() == Light.NONE) {
            return "";
        }
        Optional<Reading> cell = seen.cell(there);
        if (cell.isPresent()) {
            return lightWords(seen) + ", this cell " + seen.lighting().words(cell.get()) + "\n";
        }
        String words = model.content()
                .light(seen.lighting().source(), surface(there).name())
                .map(facts -> ", mean of the face " + seen.lighting().words(facts.of(seen.light())))
                .orElse(" not known yet");
        return lightWords(seen) + words + "\n";
    }

    /** The light that was shown when the point looked: the view may show another by now. */
    private static String lightWords(SeenFrom seen) {
        return seen.light().words()
                + seen.lighting().source().map(name -> ", of " + name).orElse("");
    }

    private static void show(Label label, String text) {
        label.setText(text);
        label.setVisible(!text.isEmpty());
        label.setManaged(!text.isEmpty());
    }

    @Override
    public void close() {
        work.close();
    }
}
