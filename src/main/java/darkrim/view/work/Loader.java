package darkrim.view.work;

import darkrim.diagnostic.Finding;
import darkrim.diagnostic.Findings;
import darkrim.diagnostic.UnusableInput;
import darkrim.layout.Layout;
import darkrim.layout.LayoutReader;
import darkrim.layout.LayoutReading;
import darkrim.present.Figures;
import darkrim.present.json.SavedResult;
import darkrim.study.Check;
import darkrim.study.Effort;
import darkrim.study.MarginScope;
import darkrim.view.parts.Stage;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;

/**
 * Reads a layout and checks it, away from the window. The parts come first, then values and verdicts, then margins. What is asked for
 * later puts an end to what was asked for before.
 */
public final class Loader implements AutoCloseable {
    private final Path layout;
    private final Effort effort;
    private final Errand errand;

    /**
     * @param layout the layout file
     * @param effort how hard to work
     * @param post takes changes of the contents to the window's thread
     */
    public Loader(Path layout, Effort effort, Consumer<UnaryOperator<Content>> post) {
        this.layout = layout;
        this.effort = effort;
        errand = new Errand("darkrim-view-check", post);
    }

    /**
     * Reads the file as it stands now and works out its light.
     *
     * @param saved a result that was written before, to be used instead of a check
     */
    public void load(Optional<Path> saved) {
        errand.ask((stop, post) -> {
            try {
                run(saved, stop, post);
            } catch (UnusableInput unusable) {
                post.accept(content -> content.refused(unusable.findings()));
            }
        });
    }

    /** Ends the check, as when a dimension is dragged. */
    public void stop() {
        errand.stop();
    }

    private void run(Optional<Path> saved, BooleanSupplier stop, Consumer<UnaryOperator<Content>> post)
            throws UnusableInput {
        post.accept(content -> content.doing("reading the layout", -1));
        LayoutReading reading = LayoutReader.read(layout);
        Findings findings = new Findings();
        findings.addAll(reading.findings());
        if (reading.layout().isEmpty() || !reading.partsComplete()) {
            throw new UnusableInput(findings.sorted());
        }
        Layout read = effort.shaped(reading.layout().get());
        Stage stage = Stage.of(read, findings);
        post.accept(content -> content.with(stage).noting(""));
        if (saved.isPresent()) {
            try {
                Facts facts = SavedFacts.read(saved.get(), stage).with(LayoutCautions.of(read, stage.warnings()));
                post.accept(content -> content.with(facts).doing("", -1));
                return;
            } catch (SavedResult.Unusable unusable) {
                post.accept(content ->
                        content.noting(saved.get() + ": " + unusable.getMessage() + "; checked anew instead"));
            }
        }
        List<Finding> doubtful = reading.findings();
        check(read, doubtful, MarginScope.NONE, "checked here, without margins yet", stop, post);
        check(read, doubtful, MarginScope.LEAST, "checked here", stop, post);
        post.accept(content -> content.doing("", -1));
    }

    private void check(
            Layout read,
            List<Finding> doubtful,
            MarginScope margins,
            String source,
            BooleanSupplier stop,
            Consumer<UnaryOperator<Content>> post)
            throws UnusableInput {
        if (!stop.getAsBoolean()) {
            Findings findings = new Findings();
            findings.addAll(doubtful);
            Listening watch = new Listening(stop, (step, done, most) -> {
                double share = most > 0 ? (double) done / most : -1;
                // 'sampling light, at most' is told with the number to follow.
                String words = step.endsWith("at most") ? step + " " + Figures.counted(most, "sample") : step;
                post.accept(content -> content.doing(words, share));
            });
            Facts facts = Facts.of(Check.of(read, findings, effort.with(margins), watch), source);
            post.accept(content -> content.with(facts));
        }
    }

    @Override
    public void close() {
        errand.close();
    }
}
