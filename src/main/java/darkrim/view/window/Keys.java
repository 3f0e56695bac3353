package darkrim.view.window;

import darkrim.view.camera.Direction;
import darkrim.view.look.Light;
import darkrim.view.look.ScaleChoice;
import darkrim.view.work.ViewModel;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.input.KeyCombination;
import javafx.scene.input.KeyEvent;

/** The keys of the three-dimensional view, with words for what each does. */
final class Keys {
    private static final double TURN = 5;
    private static final double SHIFT = 0.05;
    private static final double ZOOM = 0.9;
    private static final double SECTION_STEP = 0.01;

    private final Map<KeyCombination, Runnable> actions = new LinkedHashMap<>();
    private final List<String[]> words = new ArrayList<>();

    Keys(ViewModel model, Commands commands) {
        add("Arrow keys", "turn", KeyCode.LEFT, () -> commands.camera().turn(TURN, 0));
        also(KeyCode.RIGHT, () -> commands.camera().turn(-TURN, 0));
        also(KeyCode.UP, () -> commands.camera().turn(0, -TURN));
        also(KeyCode.DOWN, () -> commands.camera().turn(0, TURN));
        shifted(
                "Shift + arrow keys",
                "move the picture",
                KeyCode.LEFT,
                () -> commands.camera().shift(-SHIFT, 0));
        shifted("", "", KeyCode.RIGHT, () -> commands.camera().shift(SHIFT, 0));
        shifted("", "", KeyCode.UP, () -> commands.camera().shift(0, -SHIFT));
        shifted("", "", KeyCode.DOWN, () -> commands.camera().shift(0, SHIFT));
        words.add(new String[] {"Ctrl + arrow keys", "move a mark as the mouse; by a pixel with Shift"});
        words.add(new String[] {"Ctrl+1 to Ctrl+5, F6", "pages at the right; back to the view"});
        words.add(new String[] {"Enter", "what a click does, at the mark"});
        words.add(new String[] {"Menu key, Shift+F10", "the menu of what is at the mark"});
        add(
                "+  and  -",
                "nearer and farther",
                KeyCode.PLUS,
                () -> commands.camera().zoom(ZOOM));
        also(KeyCode.EQUALS, () -> commands.camera().zoom(ZOOM));
        shifted("", "", KeyCode.EQUALS, () -> commands.camera().zoom(ZOOM));
        also(KeyCode.ADD, () -> commands.camera().zoom(ZOOM));
        also(KeyCode.MINUS, () -> commands.camera().zoom(1 / ZOOM));
        also(KeyCode.SUBTRACT, () -> commands.camera().zoom(1 / ZOOM));
        add("F", "fit what is shown", KeyCode.F, commands.camera()::fit);
        add("G", "fit the selected face", KeyCode.G, commands.camera()::fitSelection);
        add("Home", "the first direction", KeyCode.HOME, commands.camera()::home);
        for (Direction direction : Direction.values()) {
            String digit = String.valueOf(direction.number());
            add(
                    digit,
                    "look " + direction.words(),
                    KeyCode.getKeyCode(digit),
                    () -> commands.camera().look(direction));
        }
        add("P", "perspective or parallel", KeyCode.P, commands.camera()::projection);
        for (Light light : Light.values()) {
            add(light.key(), "show " + light.words(), KeyCode.getKeyCode(light.key()), () -> commands.light(light));
        }
        add("W", "light of the next source beside the beam", KeyCode.W, commands::nextSource);
        add(
                "L",
                "logarithmic or linear scale",
                KeyCode.L,
                () -> commands.scale(new ScaleChoice(
                        !model.look().scale().logarithmic(),
                        model.look().scale().range())));
        add("V", "verdict marks on or off", KeyCode.V, commands::marks);
        add("C", "cells of maps on or off", KeyCode.C, commands::cells);
        add("X, Y, Z", "section square to that axis, on or off", KeyCode.X, () -> commands.toggleSection(0));
        also(KeyCode.Y, () -> commands.toggleSection(1));
        also(KeyCode.Z, () -> commands.toggleSection(2));
        add(
                "[  and  ]",
                "move the section; a tenth as far with Shift",
                KeyCode.OPEN_BRACKET,
                () -> commands.moveSection(-SECTION_STEP));
        also(KeyCode.CLOSE_BRACKET, () -> commands.moveSection(SECTION_STEP));
        shifted("", "", KeyCode.OPEN_BRACKET, () -> commands.moveSection(-SECTION_STEP / 10));
        shifted("", "", KeyCode.CLOSE_BRACKET, () -> commands.moveSection(SECTION_STEP / 10));
        add("B", "cut away the other side", KeyCode.B, commands::turnSection);
        add(
                "M",
                "ruler: click two points, or Enter at the mark",
                KeyCode.M,
                () -> commands.measure(!commands.measuring()));
        add(
                "H",
                "hide the selected face",
                KeyCode.H,
                () -> model.look().selected().ifPresent(name -> commands.hide(List.of(name))));
        add(
                "I",
                "show only the part of the selected face",
                KeyCode.I,
                () -> model.look().selected().ifPresent(name -> commands.isolate(commands.partOf(name))));
        add("S", "what is seen from where the face was clicked, or its middle", KeyCode.S, commands::lookFromSelection);
        add("A", "show everything", KeyCode.A, commands::showAll);
        add("Esc", "end the ruler, or select nothing", KeyCode.ESCAPE, commands::escape);
    }

    /** One more key. */
    void add(String keys, String meaning, KeyCode code, Runnable action) {
        words.add(new String[] {keys, meaning});
        also(code, action);
    }

    private void also(KeyCode code, Runnable action) {
        actions.put(new KeyCodeCombination(code), action);
    }

    private void shifted(String keys, String meaning, KeyCode code, Runnable action) {
        if (!keys.isEmpty()) {
            words.add(new String[] {keys, meaning});
        }
        actions.put(new KeyCodeCombination(code, KeyCombination.SHIFT_DOWN), action);
    }

    /** Each key with its meaning. */
    List<String[]> words() {
        return List.copyOf(words);
    }

    /** Does what a key stands for, if it stands for something. */
    void press(KeyEvent event) {
        actions.entrySet().stream()
                .filter(entry -> entry.getKey().match(event))
                .findFirst()
                .ifPresent(entry -> {
                    entry.getValue().run();
                    event.consume();
                });
    }
}
