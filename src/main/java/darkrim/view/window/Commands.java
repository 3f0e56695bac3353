package darkrim.view.window;

import darkrim.scene.Surface;
import darkrim.study.PointName;
import darkrim.study.irradiance.SurfaceCells;
import darkrim.view.look.Light;
import darkrim.view.look.Ruler;
import darkrim.view.look.ScaleChoice;
import darkrim.view.parts.Hit;
import darkrim.view.parts.Section;
import darkrim.view.work.ViewModel;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.scene.Node;
import javafx.scene.control.ContextMenu;
import javafx.scene.control.MenuItem;
import javafx.scene.input.Clipboard;
import javafx.scene.input.ClipboardContent;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** What can be done in the window, whoever asks: a key, a button, a menu or the mouse. */
final class Commands {
    private final ViewModel model;
    private final CameraMoves camera;
    private final List<Runnable> measuringListeners = new ArrayList<>();
    private final List<Runnable> speakingListeners = new ArrayList<>();
    private ViewModel speaking;
    private Consumer<PointName> looking = point -> {};
    private Runnable askingForPoint = () -> {};
    private Optional<PointName> picked = Optional.empty();
    private boolean measuring;

    Commands(ViewModel model, Eye eye) {
        this.model = model;
        speaking = model;
        camera = new CameraMoves(model, eye);
    }

    /** From where the parts are looked at. */
    CameraMoves camera() {
        return camera;
    }

    /** Another class of light. */
    void light(Light light) {
        model.change(look -> look.with(light));
    }

    /** The light of a source, or of the beam. */
    void source(Optional<String> source) {
        model.change(look -> look.litBy(source));
    }

    /** The light of the next source, after the last again of the beam. */
    void nextSource() {
        List<String> names = model.sources();
        int next = model.look().source().map(names::indexOf).orElse(-1) + 1;
        source(next < names.size() ? Optional.of(names.get(next)) : Optional.empty());
    }

    /** Another scale. */
    void scale(ScaleChoice choice) {
        model.change(look -> look.with(choice));
    }

    /** Cuts square to an axis through the middle of the parts, or no more. */
    void section(Optional<Integer> axis) {
        camera.everything()
                .ifPresent(box -> model.change(look -> look.cut(axis.map(number -> {
                    Vector3D centre = box.centre();
                    double middle = number == 0 ? centre.getX() : number == 1 ? centre.getY() : centre.getZ();
                    // From the viewer's side, so that the cut face is seen.
                    Vector3D back = look.camera().back();
                    double toViewer = number == 0 ? back.getX() : number == 1 ? back.getY() : back.getZ();
                    return new Section(number, middle, toViewer < 0);
                }))));
    }

    /** The section square to an axis on, or off if it is on. */
    void toggleSection(int axis) {
        boolean on =
                model.look().section().filter(section -> section.axis() == axis).isPresent();
        section(on ? Optional.empty() : Optional.of(axis));
    }

    /** Moves the section by a share of the size of the parts. */
    void moveSection(double share) {
        camera.everything()
                .ifPresent(box -> model.change(look -> look.cut(
                        look.section().map(section -> section.at(section.offset() + share * 2 * box.radius())))));
    }

    /** Cuts away the other side. */
    void turnSection() {
        model.change(look -> look.cut(look.section().map(Section::turned)));
    }

    /** Whether clicks measure. */
    boolean measuring() {
        return measuring;
    }

    /** Clicks measure from now on, or select. */
    void measure(boolean on) {
        measuring = on;
        if (!on) {
            model.change(look -> look.with(Ruler.EMPTY));
        }
        measuringListeners.forEach(Runnable::run);
    }

    void onMeasuring(Runnable listener) {
        measuringListeners.add(listener);
    }

    /** Selects a surface. */
    void select(String surface) {
        model.change(look -> look.selecting(Optional.of(surface)));
    }

    /**
     * Who shows what a point sees.
     *
     * @param look shows it
     * @param ask lets the viewer write a point
     */
    void onLookFrom(Consumer<PointName> look, Runnable ask) {
        looking = look;
        askingForPoint = ask;
    }

    /** Shows what a point sees. */
    void lookFrom(PointName point) {
        looking.accept(point);
    }

    /** The same from where the selected face was clicked, or else from its middle; without one, a point is asked for. */
    void lookFromSelection() {
        Optional<String> selected = model.look().selected();
        Optional<PointName> clicked = picked.filter(point -> selected.equals(Optional.of(point.surface())));
        clicked.or(() -> selected.map(PointName::middle)).ifPresentOrElse(looking, askingForPoint);
    }

    /** The layout of which pages and points speak: of two the one where a face was clicked last, or that was chosen. */
    ViewModel speaking() {
        return speaking;
    }

    /** Lets pages and points speak of a layout. */
    void speakOf(ViewModel layout) {
        speaking = layout;
        speakingListeners.forEach(Runnable::run);
    }

    void onSpeaking(Runnable listener) {
        speakingListeners.add(listener);
    }

    /** Remembers where a face was clicked. */
    void picked(Optional<Hit> hit) {
        picked = hit.flatMap(this::point);
    }

    /** The point that was hit, if its face has points that can be named: if it is flat. */
    private Optional<PointName> point(Hit hit) {
        return speaking.content()
                .stage()
                .flatMap(stage -> hit.surface()
                        .flatMap(number -> stage.scene().surface(hit.name()))
                        .filter(surface -> SurfaceCells.isFlat(stage.scene(), surface))
                        .map(surface -> PointName.at(stage.scene(), surface, hit.point())));
    }

    /** Ends measuring, or else the selection. */
    void escape() {
        if (measuring) {
            measure(false);
        } else {
            model.change(look -> look.selecting(Optional.empty()));
        }
    }

    void hide(Collection<String> surfaces) {
        model.change(look -> look.hiding(surfaces));
    }

    void show(Collection<String> surfaces) {
        model.change(look -> look.showing(surfaces));
    }

    void isolate(Collection<String> surfaces) {
        model.change(look -> look.isolating(surfaces, names()));
    }

    void showAll() {
        model.change(look -> look.hidingOnly(List.of()));
    }

    /** All surfaces of the part that a surface belongs to. */
    Collection<String> partOf(String surface) {
        String part = surface.substring(0, surface.contains("/") ? surface.indexOf('/') + 1 : surface.length());
        return names().stream().filter(name -> name.startsWith(part)).toList();
    }

    void marks() {
        model.change(look -> look.marking(!look.verdictMarks()));
    }

    void cells() {
        model.change(look -> look.celled(!look.cells()));
    }

    /** The menu of what is under the mouse. */
    void menu(Optional<Hit> hit, Node owner, double x, double y) {
        ContextMenu menu = new ContextMenu();
        if (hit.isPresent() && hit.get().surface().isPresent()) {
            String name = hit.get().name();
            String part = name.contains("/") ? name.substring(0, name.indexOf('/')) : name;
            hit.flatMap(this::point)
                    .ifPresent(point -> menu.getItems().add(item("Look from here", () -> lookFrom(point))));
            menu.getItems()
                    .addAll(
                            item("Hide this face", () -> hide(List.of(name))),
                            item("Hide part " + part, () -> hide(partOf(name))),
                            item("Show only part " + part, () -> isolate(partOf(name))),
                            item("Copy its name", () -> copy(name)));
        }
        menu.getItems().addAll(item("Show everything", this::showAll), item("Fit", camera::fit));
        menu.setAutoHide(true);
        menu.show(owner, x, y);
    }

    static MenuItem item(String text, Runnable action) {
        MenuItem item = new MenuItem(text);
        // No underscore of a name is taken for a mnemonic.
        item.setMnemonicParsing(false);
        item.setOnAction(event -> action.run());
        return item;
    }

    static void copy(String text) {
        ClipboardContent content = new ClipboardContent();
        content.putString(text);
        Clipboard.getSystemClipboard().setContent(content);
    }

    private List<String> names() {
        return model.stages().stream()
                .flatMap(stage -> stage.scene().surfaces().stream().map(Surface::name))
                .distinct()
                .toList();
    }
}
