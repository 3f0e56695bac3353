package darkrim.view.window;

import darkrim.present.Figures;
import darkrim.present.LayoutWords;
import darkrim.scene.Surface;
import darkrim.view.look.Light;
import darkrim.view.parts.Stage;
import darkrim.view.work.Content;
import darkrim.view.work.Facts;
import darkrim.view.work.Judged;
import darkrim.view.work.Lighting;
import darkrim.view.work.PathFact;
import darkrim.view.work.SourceFinder;
import darkrim.view.work.SurfaceFacts;
import darkrim.view.work.ViewModel;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Hyperlink;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** What is known of the selected face; while none is selected, the requirements. */
final class DetailPane {
    private static final int MOST_PATHS = 8;

    private final ViewModel model;
    private final Commands commands;
    private final VBox box = new VBox(8);
    private final ScrollPane pane = new ScrollPane(box);
    private Optional<Content> shownContent = Optional.empty();
    private Optional<String> shownSurface = Optional.empty();
    private Optional<String> shownSource = Optional.empty();

    DetailPane(ViewModel model, Commands commands) {
        this.model = model;
        this.commands = commands;
        box.getStyleClass().add("side");
        box.setId("details");
        pane.setFitToWidth(true);
        pane.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
        model.onContent(this::follow);
        model.onLook(this::follow);
        follow();
    }

    Node node() {
        return pane;
    }

    private void follow() {
        Content content = model.content();
        boolean same = shownContent
                        .filter(old -> old.stage().equals(content.stage())
                                && old.facts().equals(content.facts())
                                && old.sources().equals(content.sources()))
                        .isPresent()
                && shownSource.equals(model.look().source())
                && shownSurface.equals(model.look().selected());
        if (same) {
            return;
        }
        shownContent = Optional.of(content);
        shownSurface = model.look().selected();
        shownSource = model.look().source();
        box.getChildren().clear();
        Optional<Surface> surface = content.stage().flatMap(stage -> shownSurface.flatMap(stage.scene()::surface));
        if (surface.isPresent()) {
            surface(content, surface.get());
        } else {
            requirements(content);
        }
    }

    private void surface(Content content, Surface surface) {
        Stage stage = content.stage().orElseThrow();
        Optional<Facts> facts = content.facts();
        Label name = heading(surface.name());
        name.setId("selected-name");
        box.getChildren().add(name);
        SurfaceFacts known =
                facts.map(all -> all.surfaces().get(surface.name())).orElse(null);
        GridPane grid = new GridPane();
        grid.setHgap(10);
        grid.setVgap(3);
        row(grid, "finish", surface.finish().name());
        row(grid, "area", Figures.three(surface.area()) + " mm2");
        if (known != null) {
            light(grid, known, content.lighting(Optional.empty()).orElseThrow());
        }
        String file = Path.of(stage.layout().source().name()).getFileName().toString();
        row(grid, "from", file + ":" + surface.place().line());
        box.getChildren().add(grid);
        if (known == null) {
            box.getChildren().add(ToolStrip.label(facts.isPresent() ? "No values for this face." : "Not checked yet."));
        } else {
            box.getChildren()
                    .add(note("relative irradiance"
                            + (SourceFinder.sources(stage).isEmpty() ? "" : " of the beam")
                            + ", mean over the face, +- standard error"));
            shownSource.ifPresent(source -> source(source, content, surface));
            boolean outdated = facts.orElseThrow().isOutdated();
            if (outdated) {
                box.getChildren().add(note(facts.get().words()));
            }
            known.judged().forEach(judged -> box.getChildren().add(judged(judged, outdated)));
            if (known.judged().isEmpty()) {
                box.getChildren().add(note("No requirement is about this face."));
            }
            paths(known.paths(), content.lighting(Optional.empty()).orElseThrow());
        }
        Button copy = ToolStrip.button("Copy values", "Copy all of this as text (Ctrl+C)");
        copy.setOnAction(event -> copy());
        Button fit = ToolStrip.button("Fit", "Look at this face (G)");
        fit.setOnAction(event -> commands.camera().fitSelection());
        Button hide = ToolStrip.button("Hide", "Hide this face (H)");
        hide.setOnAction(event -> commands.hide(List.of(surface.name())));
        box.getChildren().add(new HBox(6, copy, fit, hide));
    }

    private static void light(GridPane grid, SurfaceFacts known, Lighting lighting) {
        for (Light light : Light.classes()) {
            row(grid, light.title().toLowerCase(Locale.ROOT), lighting.words(known.of(light)));
        }
    }

    /** The light of the source that is shown. No requirement is about it. */
    private void source(String source, Content content, Surface surface) {
        Label title = heading("Light of " + source);
        title.setId("source-light");
        box.getChildren().add(title);
        Optional<SurfaceFacts> known = content.light(shownSource, surface.name());
        if (known.isEmpty()) {
            box.getChildren().add(ToolStrip.label(content.wanting(shownSource)));
            return;
        }
        GridPane grid = new GridPane();
        grid.setId("source-values");
        grid.setHgap(10);
        grid.setVgap(3);
        light(grid, known.get(), content.lighting(shownSource).orElseThrow());
        box.getChildren()
                .addAll(grid, note("relative to what " + source + " gives a plane that faces it; sampled, not judged"));
        for (PathFact path : known.get().paths()) {
            box.getChildren().addAll(note("most of its reflected light comes by"), via(path), note(path.part()));
        }
    }

    private Hyperlink via(PathFact path) {
        Hyperlink via = new Hyperlink(path.via());
        via.setMnemonicParsing(false);
        via.setWrapText(true);
        via.setOnAction(event -> commands.select(path.via()));
        return via;
    }

    private void paths(List<PathFact> paths, Lighting lighting) {
        if (paths.isEmpty()) {
            return;
        }
        box.getChildren().add(heading("Reflected light comes by"));
        for (PathFact path : paths.subList(0, Math.min(MOST_PATHS, paths.size()))) {
            Label words = ToolStrip.label(
                    Figures.percent(path.share()) + "  " + path.part() + "  " + lighting.words(path.light()));
            VBox entry = new VBox(via(path), words);
            entry.getStyleClass().add("entry");
            box.getChildren().add(entry);
        }
        if (paths.size() > MOST_PATHS) {
            box.getChildren().add(note("and " + Figures.counted(paths.size() - MOST_PATHS, "weaker path")));
        }
    }

    private Node judged(Judged judged, boolean outdated) {
        Label name = new Label(judged.requirement());
        name.getStyleClass().add("strong");
        VBox entry = new VBox(
                2, new HBox(6, VerdictBadge.of(judged.verdict(), outdated), name), ToolStrip.label(judged.evidence()));
        if (!judged.margin().isEmpty()) {
            entry.getChildren().add(ToolStrip.label("margin " + judged.margin()));
        }
        entry.getStyleClass().add("entry");
        return entry;
    }

    private void requirements(Content content) {
        content.stage().ifPresent(stage -> box.getChildren().add(heading(title(stage))));
        Optional<Facts> facts = content.facts();
        if (facts.isEmpty()) {
            box.getChildren().add(ToolStrip.label("Values and verdicts follow when the check has found them."));
            return;
        }
        boolean outdated = facts.get().isOutdated();
        HBox whole = new HBox(6, VerdictBadge.of(facts.get().verdict(), outdated), new Label("all requirements"));
        box.getChildren().addAll(whole, note(facts.get().words()));
        warnings(facts.get());
        box.getChildren().add(heading("Requirements"));
        for (Facts.RequirementFact requirement : facts.get().requirements()) {
            Label name = new Label(requirement.name());
            name.getStyleClass().add("strong");
            VBox entry = new VBox(2, new HBox(6, VerdictBadge.of(requirement.verdict(), outdated), name));
            entry.getChildren().add(ToolStrip.label("asked: " + requirement.limit()));
            if (!requirement.value().isEmpty()) {
                entry.getChildren().add(ToolStrip.label("worst value: " + requirement.value()));
            }
            if (!requirement.margin().isEmpty()) {
                entry.getChildren().add(ToolStrip.label("least margin: " + requirement.margin()));
            }
            if (!requirement.worst().isEmpty()) {
                Hyperlink worst = new Hyperlink("worst: " + requirement.worst());
                worst.setMnemonicParsing(false);
                worst.setWrapText(true);
                worst.setOnAction(event -> commands.select(requirement.worst()));
                entry.getChildren().add(worst);
            }
            entry.getStyleClass().add("entry");
            box.getChildren().add(entry);
        }
        box.getChildren().add(note("Click a face in the picture or in the tree to see what is known of it."));
    }

    static String title(Stage stage) {
        String revision = stage.layout().revision();
        return stage.layout().title()
                + (revision.isEmpty() ? "" : ", revision " + revision)
                + LayoutWords.shape(stage.layout());
    }

    /** Warnings of a check, so that no verdict stands without them. */
    private void warnings(Facts facts) {
        if (!facts.warnings().isEmpty()) {
            box.getChildren().add(heading(Figures.counted(facts.warnings().size(), "warning")));
            for (String warning : facts.warnings()) {
                Label words = ToolStrip.label(warning);
                words.getStyleClass().add("warning");
                box.getChildren().add(words);
            }
        }
    }

    private static Label heading(String text) {
        Label label = ToolStrip.label(text);
        label.getStyleClass().add("heading");
        return label;
    }

    private static Label note(String text) {
        Label label = ToolStrip.label(text);
        label.getStyleClass().add("note");
        return label;
    }

    private static void row(GridPane grid, String name, String value) {
        Label key = new Label(name);
        key.getStyleClass().add("note");
        key.setMinWidth(Region.USE_PREF_SIZE);
        Label text = ToolStrip.label(value);
        GridPane.setHgrow(text, Priority.ALWAYS);
        grid.addRow(grid.getRowCount(), key, text);
    }

    /** Copies what is shown as text. */
    void copy() {
        Commands.copy(ShownText.of(box));
    }
}
