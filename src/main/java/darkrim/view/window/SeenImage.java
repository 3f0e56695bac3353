package darkrim.view.window;

import darkrim.present.picture.SeenPicture;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.scene.Node;
import javafx.scene.image.ImageView;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseEvent;
import javafx.scene.layout.Pane;
import javafx.scene.paint.Color;
import javafx.scene.shape.Circle;

/** The picture of what a point sees, in which the mouse or the arrow keys point at a place. */
final class SeenImage {
    private static final double LEAST = 120;
    private static final double MOST = 640;
    /** Pictures are made in sizes this far apart, so that a divider that is drawn does not ask for each. */
    private static final int STEP = 20;

    private static final double KEY_STEP = 0.02;

    private final ImageView view = new ImageView();
    private final Circle mark = new Circle(5, Color.TRANSPARENT);
    private final Pane pane = new Pane(view, mark);
    private Consumer<double[]> placed = place -> {};
    private Consumer<double[]> chosen = place -> {};
    private Optional<double[]> place = Optional.empty();
    private double side = LEAST;

    SeenImage() {
        pane.setId("seen-picture");
        pane.setFocusTraversable(true);
        view.setSmooth(true);
        view.setPreserveRatio(true);
        mark.setStroke(Color.web("#d81b60"));
        mark.setStrokeWidth(2);
        mark.setVisible(false);
        mark.setMouseTransparent(true);
        pane.setOnMouseMoved(event -> put(place(event), false));
        pane.setOnMouseClicked(event -> {
            pane.requestFocus();
            put(place(event), true);
            chosen.accept(place(event));
        });
        pane.setOnKeyPressed(this::press);
    }

    Node node() {
        return pane;
    }

    /** Tells a listener at which place the mouse or the keys point: shares from the left and from above. */
    void onPlace(Consumer<double[]> listener) {
        placed = listener;
    }

    /** Tells a listener which place was clicked, or chosen with Enter. */
    void onChosen(Consumer<double[]> listener) {
        chosen = listener;
    }

    /** The place that was pointed at last. */
    Optional<double[]> place() {
        return place;
    }

    /** The size that fits a width of the page, pixels. */
    int pixels(double width) {
        side = Math.max(LEAST, Math.min(MOST, width - 16));
        view.setFitWidth(side);
        pane.setMinHeight(side);
        pane.setPrefHeight(side);
        return (int) Math.ceil(side / STEP) * STEP;
    }

    /** Shows a picture, or none. */
    void show(Optional<SeenPicture> picture) {
        view.setImage(picture.map(SeenImage::image).orElse(null));
        if (picture.isEmpty()) {
            mark.setVisible(false);
            place = Optional.empty();
        }
    }

    private static WritableImage image(SeenPicture picture) {
        int size = picture.size();
        WritableImage image = new WritableImage(size, size);
        image.getPixelWriter()
                .setPixels(0, 0, size, size, PixelFormat.getIntArgbInstance(), picture.copyArgb(), 0, size);
        return image;
    }

    private double[] place(MouseEvent event) {
        return new double[] {event.getX() / side, event.getY() / side};
    }

    private void put(double[] at, boolean marked) {
        place = Optional.of(at);
        mark.setCenterX(at[0] * side);
        mark.setCenterY(at[1] * side);
        mark.setVisible(marked);
        placed.accept(at);
    }

    private void press(KeyEvent event) {
        double[] from = place.orElse(new double[] {0.5, 0.5});
        double step = event.isShiftDown() ? KEY_STEP / 4 : KEY_STEP;
        switch (event.getCode()) {
            case LEFT -> move(from, -step, 0);
            case RIGHT -> move(from, step, 0);
            case UP -> move(from, 0, -step);
            case DOWN -> move(from, 0, step);
            case ENTER -> place.ifPresent(chosen);
            default -> {
                return;
            }
        }
        event.consume();
    }

    private void move(double[] from, double right, double down) {
        put(new double[] {Math.max(0, Math.min(1, from[0] + right)), Math.max(0, Math.min(1, from[1] + down))}, true);
    }
}
