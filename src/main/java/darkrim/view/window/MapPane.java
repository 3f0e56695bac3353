package darkrim.view.window;

import darkrim.present.Figures;
import darkrim.present.picture.ColourScale;
import darkrim.study.PointName;
import darkrim.study.irradiance.LightKind;
import darkrim.study.irradiance.SurfaceMap;
import darkrim.view.look.Light;
import darkrim.view.look.Look;
import darkrim.view.parts.FlatMap;
import darkrim.view.work.Reading;
import darkrim.view.work.ViewModel;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseEvent;
import javafx.scene.layout.Pane;
import javafx.scene.layout.VBox;

/** The map of one surface as a flat picture, with the value under the mouse and a profile along a dragged line. */
final class MapPane {
    private static final double MOST = 460;
    private static final String HOW =
            "Move over the map to read a cell; drag a line for a profile; click to see what is"
                    + " seen from there. By keys: Tab to the map, then arrow keys, Space at either end of a line, Enter.";

    private static final String NO_MAP = "No map yet.";

    private final ViewModel model;
    private final Commands commands;
    private final ComboBox<String> choice = new ComboBox<>();
    private final Label reading = new Label(NO_MAP);
    private final Label stretched = ToolStrip.label("");
    private final Canvas canvas = new Canvas();
    private final Profile profile = new Profile();
    private final VBox box = new VBox(6);
    private Map<String, SurfaceMap> shown = Map.of();
    private Optional<FlatMap> map = Optional.empty();
    private ColourScale scale;
    private Optional<String> selected = Optional.empty();
    private double[] from;
    private double[] to;
    private Optional<double[]> mark = Optional.empty();
    private boolean lining;

    MapPane(ViewModel model, Commands commands) {
        this.model = model;
        this.commands = commands;
        choice.setId("map-choice");
        choice.setMaxWidth(Double.MAX_VALUE);
        choice.setTooltip(new Tooltip("Which surface; a selected flat face joins the list"));
        choice.setOnAction(event -> {
            from = null;
            unmark();
            draw();
        });
        reading.setId("map-reading");
        reading.setWrapText(true);
        reading.setMinHeight(54);
        canvas.setId("map");
        Pane holder = new Pane(canvas);
        holder.setId("map-keys");
        holder.setFocusTraversable(true);
        holder.setOnKeyPressed(this::press);
        box.getStyleClass().add("side");
        box.getChildren().addAll(choice, holder, stretched, reading, profile.node());
        box.widthProperty().addListener(changed -> draw());
        canvas.setOnMouseMoved(event -> read(place(event)));
        canvas.setOnMousePressed(event -> {
            holder.requestFocus();
            unmark();
            from = place(event);
            to = from;
        });
        canvas.setOnMouseDragged(event -> {
            to = place(event);
            read(to);
            draw();
        });
        canvas.setOnMouseClicked(event -> {
            if (event.isStillSincePress() && map.isPresent()) {
                point(map.get(), place(event)).ifPresent(commands::lookFrom);
            }
        });
        model.onContent(this::follow);
        model.onBesideContent(this::draw);
        model.onLook(this::looked);
    }

    /** The point of the surface at a place of its map, mm; empty beside it. */
    private static Optional<PointName> point(FlatMap flat, double[] at) {
        String surface = flat.map().cells().surface().name();
        return flat.cell(at[0], at[1])
                .map(cell -> PointName.rounded(surface, at[0] / flat.width(), at[1] / flat.height()));
    }

    Node node() {
        return box;
    }

    private void follow() {
        Map<String, SurfaceMap> maps = model.content().maps(model.look().source());
        if (maps.equals(shown)) {
            return;
        }
        shown = maps;
        List<String> names = shown.values().stream()
                .filter(each -> FlatMap.of(each).isPresent())
                .map(each -> each.cells().surface().name())
                .sorted()
                .toList();
        if (!names.equals(choice.getItems())) {
            String before = choice.getValue();
            choice.getItems().setAll(names);
            choice.setValue(names.contains(before) ? before : names.isEmpty() ? null : names.get(0));
            choose();
        }
        draw();
    }

    private void looked() {
        Look look = model.look();
        if (!look.selected().equals(selected)) {
            selected = look.selected();
            choose();
        }
        follow();
        draw();
    }

    /** Shows the map of the selected surface, if there is one. */
    private void choose() {
        selected.filter(choice.getItems()::contains).ifPresent(choice::setValue);
    }

    private LightKind kind() {
        return Scales.kind(model.look().light());
    }

    private MapFrame frame(FlatMap flat) {
        return MapFrame.in(flat, Math.min(MOST, Math.max(60, box.getWidth() - 2 * MapFrame.EDGE - 16)));
    }

    private void unmark() {
        mark = Optional.empty();
        lining = false;
    }

    /** Arrow keys move a mark from cell to cell; Space begins and ends a line, Enter looks from there. */
    private void press(KeyEvent event) {
        if (map.isEmpty()) {
            return;
        }
        FlatMap flat = map.get();
        switch (event.getCode()) {
            case LEFT -> step(flat, -1, 0);
            case RIGHT -> step(flat, 1, 0);
            case UP -> step(flat, 0, 1);
            case DOWN -> step(flat, 0, -1);
            case SPACE -> {
                step(flat, 0, 0);
                lining = !lining;
                from = lining ? mark.orElseThrow() : from;
            }
            case ENTER -> {
                step(flat, 0, 0);
                point(flat, mark.orElseThrow()).ifPresent(commands::lookFrom);
            }
            case ESCAPE -> {
                from = null;
                unmark();
            }
            default -> {
                return;
            }
        }
        event.consume();
        draw();
    }

    /** Moves the mark by so many cells; from the middle at first. */
    private void step(FlatMap flat, int right, int up) {
        double wide = flat.width() / flat.grid().columns();
        double high = flat.height() / flat.grid().rows();
        int column = flat.grid().columns() / 2;
        int line = flat.grid().rows() / 2;
        double[] at = mark.orElseGet(() -> new double[] {(column + 0.5) * wide, (line + 0.5) * high});
        double[] next = {
            Math.max(wide / 2, Math.min(flat.width() - wide / 2, at[0] + right * wide)),
            Math.max(high / 2, Math.min(flat.height() - high / 2, at[1] + up * high))
        };
        mark = Optional.of(next);
        to = lining ? next : to;
        read(next);
    }

    private void draw() {
        map = Optional.ofNullable(choice.getValue()).map(shown::get).flatMap(FlatMap::of);
        if (map.isEmpty()) {
            if (canvas.getWidth() > 0) {
                // What stood here was of another position, or of a surface that is gone.
                canvas.setWidth(0);
                canvas.setHeight(0);
                from = null;
                unmark();
                profile.show(List.of(), Scales.of(model));
                reading.setText(NO_MAP);
            }
            return;
        }
        if (box.getWidth() <= 0 || box.getScene() == null) {
            return;
        }
        if (reading.getText().equals(NO_MAP)) {
            reading.setText(HOW);
        }
        FlatMap flat = map.get();
        scale = Scales.of(model);
        MapFrame frame = frame(flat);
        canvas.setWidth(frame.width() + 2 * MapFrame.EDGE);
        canvas.setHeight(frame.height() + 2 * MapFrame.EDGE);
        stretched.setText(frame.words());
        stretched.setVisible(!frame.words().isEmpty());
        stretched.setManaged(stretched.isVisible());
        GraphicsContext g = canvas.getGraphicsContext2D();
        g.clearRect(0, 0, canvas.getWidth(), canvas.getHeight());
        MapPaint.cells(g, frame, flat, cell -> scale.argb(flat.map().value(kind(), cell)));
        if (from != null && to != null) {
            MapPaint.line(g, frame.pixel(from), frame.pixel(to));
        }
        mark.ifPresent(at -> MapPaint.cross(g, frame.pixel(at)));
        boolean line = from != null && to != null && Math.hypot(to[0] - from[0], to[1] - from[1]) > 0;
        profile.show(line ? flat.profile(kind(), from, to, 240) : List.of(), scale);
    }

    private double[] place(MouseEvent event) {
        return map.map(flat -> frame(flat).place(event.getX(), event.getY())).orElse(new double[2]);
    }

    private void read(double[] at) {
        if (map.isEmpty()) {
            return;
        }
        FlatMap flat = map.get();
        Optional<Integer> cell = flat.cell(at[0], at[1]);
        if (cell.isEmpty()) {
            reading.setText("beside the surface");
            return;
        }
        int columns = flat.grid().columns();
        Look look = model.look();
        Reading value = Reading.of(flat.map(), kind(), cell.get());
        String words = model.content()
                .lighting(look.source())
                .map(light -> light.words(value))
                .orElseGet(value::words);
        String light = look.light() == Light.NONE ? look.with(Light.DIRECT).lightWords() : look.lightWords();
        reading.setText("cell (" + (cell.get() % columns + 1) + "," + (cell.get() / columns + 1) + ") at "
                + Figures.length(at[0]) + ", " + Figures.length(at[1]) + " mm\n" + light + " " + words
                + "\nrelative irradiance, mean of the cell");
    }
}
