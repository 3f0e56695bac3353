package darkrim.view.work;

import darkrim.diagnostic.Finding;
import darkrim.diagnostic.Findings;
import darkrim.diagnostic.UnusableInput;
import darkrim.scene.Surface;
import darkrim.study.Effort;
import darkrim.study.LayoutFamily;
import darkrim.study.irradiance.DarkProof;
import darkrim.study.irradiance.LightKind;
import darkrim.study.irradiance.MapSampling;
import darkrim.study.irradiance.SurfaceCells;
import darkrim.study.irradiance.SurfaceMap;
import darkrim.study.live.LiveDetail;
import darkrim.study.live.LiveLayout;
import darkrim.study.live.LiveState;
import darkrim.verdict.Watch;
import darkrim.verdict.Workers;
import darkrim.view.parts.Stage;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;

/** Follows dimensions that are dragged: each position is shown as more and more is known of it. */
public final class Dragging implements AutoCloseable {
    /** Points at each surface that is not dark, for a first look at its direct light. */
    private static final MapSampling.Round GLANCE = new MapSampling.Round(64, 0);

    private final Path file;
    private final Effort effort;
    private final Consumer<UnaryOperator<Content>> post;
    /** Where dimensions were moved before the file was read. */
    private final Map<String, Double> asked = new HashMap<>();

    private Optional<LiveLayout> live = Optional.empty();
    private Optional<Following> following = Optional.empty();

    /**
     * @param file the layout file
     * @param effort how hard to work
     * @param post takes changes of the contents to the window's thread
     */
    public Dragging(Path file, Effort effort, Consumer<UnaryOperator<Content>> post) {
        this.file = file;
        this.effort = effort;
        this.post = post;
    }

    /**
     * Moves one dimension; the others stay where they were moved to. Returns soon.
     *
     * @param name name of the dimension
     * @param value its value, in mm, degrees or plain
     */
    public void move(String name, double value) {
        // Before the move: what is shown is of another position from now on.
        post.accept(Content::leaving);
        synchronized (this) {
            if (live.isPresent()) {
                following.orElseThrow().awaited = live.get().move(name, value);
                return;
            }
            asked.put(name, value);
            if (following.isEmpty()) {
                Following next = new Following();
                following = Optional.of(next);
                Thread begin = new Thread(() -> begin(next), "darkrim-view-begin");
                begin.setDaemon(true);
                begin.start();
            }
        }
    }

    /** Reads the file, which may take a while, and goes where dimensions were moved meanwhile. */
    private void begin(Following next) {
        try {
            LayoutFamily family = LayoutFamily.of(file).shaped(effort);
            synchronized (this) {
                if (!next.ended) {
                    LiveLayout begun = new LiveLayout(family, effort, next::follow);
                    live = Optional.of(begun);
                    next.awaited = begun.moveTo(asked);
                    asked.clear();
                }
            }
        } catch (UnusableInput unusable) {
            end(next);
            next.show(content -> content.refused(unusable.findings()));
        } catch (IllegalArgumentException gone) {
            // The file has changed since its dimensions were shown; it is about to be read again.
            end(next);
            next.show(content -> content.impossible(String.valueOf(gone.getMessage()), false));
        } catch (RuntimeException | StackOverflowError | OutOfMemoryError broken) {
            end(next);
            next.show(content -> content.impossible("the program broke in the background: " + broken, false));
        }
    }

    /** Forgets what was moved, unless that was done already. Comes before it is said why: a move that answers to that begins anew. */
    private synchronized void end(Following which) {
        if (following.filter(each -> each == which).isPresent()) {
            live.ifPresent(Dragging::leave);
            following = Optional.empty();
            live = Optional.empty();
            asked.clear();
        }
    }

    /** The layouts and the values to which dimensions were moved; empty while none was. */
    public synchronized Optional<LiveLayout> live() {
        return live;
    }

    /** Whether a dimension was moved from where the file has it. */
    public boolean isMoved() {
        return live().filter(each -> !each.chosen().isEmpty()).isPresent();
    }

    /** Forgets what was moved, as when the file has changed. Returns at once: what is in work ends by itself, and says nothing more. */
    public synchronized void reset() {
        following.ifPresent(each -> each.ended = true);
        live.ifPresent(Dragging::leave);
        following = Optional.empty();
        live = Optional.empty();
        asked.clear();
    }

    private static void leave(LiveLayout old) {
        Thread end = new Thread(old::close, "darkrim-view-end");
        end.setDaemon(true);
        end.start();
    }

    @Override
    public void close() {
        reset();
    }

    /** Follows the layouts of one file as it stood: their moves are counted from 1, as those of others are. */
    private final class Following {
        /** Number of the newest move. */
        private volatile long awaited;

        private volatile boolean ended;
        /** Only the worker's thread touches the four below. */
        private long placedMove = -1;

        private Stage placed;
        private Map<String, Reading> direct = Map.of();
        private List<String> cautions = List.of();

        private void show(UnaryOperator<Content> change) {
            post.accept(content -> ended ? content : change.apply(content));
        }

        private void follow(LiveState state) {
            if (state instanceof LiveState.Placed position) {
                place(position);
            } else if (state instanceof LiveState.Impossible impossible) {
                String why = impossible.findings().stream()
                        .filter(finding -> finding.severity() == Finding.Severity.ERROR)
                        .map(Finding::toString)
                        .collect(Collectors.joining("\n"));
                show(content -> content.impossible(
                        "not possible with this value, the last possible one is shown: " + why,
                        state.move() < awaited));
            } else if (state instanceof LiveState.Broken broken) {
                show(content -> content.impossible(
                        "the program broke at this value: " + broken.cause(), state.move() < awaited));
            }
        }

        private void place(LiveState.Placed position) {
            if (position.move() != placedMove || placed == null) {
                try {
                    placed = Stage.of(position.layout(), new Findings());
                    cautions = LayoutCautions.of(position.layout(), position.warnings());
                } catch (UnusableInput unusable) {
                    throw new IllegalStateException("a position that exists has errors", unusable);
                }
                placedMove = position.move();
                direct = glance(position);
            }
            Stage stage = placed;
            Facts facts = Facts.of(position, direct, cautions);
            boolean more = position.detail() != LiveDetail.FINISHED;
            show(content -> {
                Content moved = content.moved(stage, facts, more);
                return position.move() < awaited ? moved.leaving() : moved;
            });
        }

        /** A quick look at direct light, with its errors, until the check has measured it. */
        private Map<String, Reading> glance(LiveState.Placed position) {
            Facts known = Facts.of(position, Map.of(), List.of());
            Map<Surface, DarkProof> dark = SurfaceFacts.proofs(placed.scene(), known.surfaces());
            MapSampling sampling = new MapSampling(
                    placed.scene(), placed.tree(), position.layout().sampling().seed(), dark);
            List<SurfaceMap> maps = placed.scene().surfaces().stream()
                    .filter(surface -> !dark.containsKey(surface))
                    .map(surface -> sampling.unsampled(SurfaceCells.whole(placed.scene(), surface)))
                    .toList();
            Map<String, Reading> found = new HashMap<>();
            try (Workers workers = new Workers(effort.threads())) {
                for (SurfaceMap map : sampling.refined(maps, GLANCE, workers, Watch.NONE)) {
                    found.put(map.cells().surface().name(), Reading.of(map, LightKind.DIRECT, 0));
                }
            }
            return found;
        }
    }
}
