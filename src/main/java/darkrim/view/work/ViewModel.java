package darkrim.view.work;

import darkrim.layout.SourceSpec;
import darkrim.view.look.Look;
import darkrim.view.look.LookLine;
import darkrim.view.parts.Stage;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;

/**
 * What the window shows: contents, and the look at them with its way back. Holds no controls. Used from one thread, the window's; those who
 * listen are told after each change. Two models side by side have contents of their own and one look.
 */
public final class ViewModel {
    private final List<Runnable> contentListeners = new ArrayList<>();
    private final LookLine looks;
    private Optional<ViewModel> partner = Optional.empty();
    private Content content = Content.NOTHING;

    /**
     * @param first the first look
     */
    public ViewModel(Look first) {
        this(new LookLine(first));
    }

    private ViewModel(LookLine looks) {
        this.looks = looks;
    }

    /** A second model beside this one: what one is looked at from, by and in, the other is, too. */
    public ViewModel beside() {
        ViewModel other = new ViewModel(looks);
        other.partner = Optional.of(this);
        partner = Optional.of(other);
        return other;
    }

    /** What there is to show. */
    public Content content() {
        return content;
    }

    /** What there is to show beside it; nothing where it stands alone. */
    public Content besideContent() {
        return partner.map(ViewModel::content).orElse(Content.NOTHING);
    }

    /** The model beside this one, if there is one. */
    public Optional<ViewModel> partner() {
        return partner;
    }

    /** The layouts that are shown, this one first. */
    public List<Stage> stages() {
        return Stream.of(content, besideContent())
                .flatMap(each -> each.stage().stream())
                .toList();
    }

    /** The names of the sources whose light can be shown: those of the layouts, and one that is shown though it is gone. */
    public List<String> sources() {
        return Stream.concat(
                        stages().stream()
                                .flatMap(stage -> SourceFinder.sources(stage).stream())
                                .map(SourceSpec.Distant::name),
                        look().source().stream())
                .distinct()
                .toList();
    }

    /** How it is looked at. */
    public Look look() {
        return looks.now();
    }

    /** Tells a listener of new contents. */
    public void onContent(Runnable listener) {
        contentListeners.add(listener);
    }

    /** Tells a listener of new contents, of those beside, too. */
    public void onEitherContent(Runnable listener) {
        onContent(listener);
        onBesideContent(listener);
    }

    /** Tells a listener of new contents beside. */
    public void onBesideContent(Runnable listener) {
        partner.ifPresent(other -> other.onContent(listener));
    }

    /** Tells a listener of a new look. */
    public void onLook(Runnable listener) {
        looks.listen(listener);
    }

    /** New contents. */
    public void show(UnaryOperator<Content> change) {
        content = change.apply(content);
        contentListeners.forEach(Runnable::run);
    }

    /** Another look, to which a step leads back. */
    public void change(UnaryOperator<Look> change) {
        looks.change(change);
    }

    /** Another look in a movement: all of them until {@link #rest} are one step. */
    public void drag(UnaryOperator<Look> change) {
        looks.drag(change);
    }

    /** A movement has ended. */
    public void rest() {
        looks.rest();
    }

    /** The first look at something new, without a way back to before it. */
    public void begin(Look first) {
        looks.begin(first);
    }

    /** One step back. */
    public void undo() {
        looks.undo();
    }

    /** One step forward. */
    public void redo() {
        looks.redo();
    }

    /** Whether a step back is possible. */
    public boolean canUndo() {
        return looks.canUndo();
    }

    /** Whether a step forward is possible. */
    public boolean canRedo() {
        return looks.canRedo();
    }
}
