package darkrim.study.live;

import darkrim.diagnostic.Finding;
import darkrim.diagnostic.Findings;
import darkrim.diagnostic.UnusableInput;
import darkrim.layout.Layout;
import darkrim.layout.Requirement;
import darkrim.layout.SamplingSpec;
import darkrim.light.Transport;
import darkrim.scene.Surface;
import darkrim.study.ChordDoubt;
import darkrim.study.Effort;
import darkrim.study.LayoutFamily;
import darkrim.study.PlacedScene;
import darkrim.study.ProvenLight;
import darkrim.study.RequirementMargin;
import darkrim.verdict.Judge;
import darkrim.verdict.Judgement;
import darkrim.verdict.LightMargin;
import darkrim.verdict.Outcome;
import darkrim.verdict.Plan;
import darkrim.verdict.Proofs;
import darkrim.verdict.RequirementResult;
import darkrim.verdict.Verdict;
import darkrim.verdict.Watch;
import darkrim.verdict.Workers;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.stream.Collectors;

/** Works out one position, in growing detail. One use; {@link #run} by one thread. */
final class LiveStep {
    /** Margins are not given up for a new move before this, ms. */
    static final int PATIENCE_MS = 200;

    /** Nothing is sampled, once. */
    private static final Plan NO_SAMPLES = new Plan(1, Plan.Measured.UNDECIDED, 1);
    /** As a whole check has it, without what is measured for the record only. */
    private static final Plan UNTIL_DECIDED = new Plan(2, Plan.Measured.UNDECIDED, Integer.MAX_VALUE);

    private final LayoutFamily family;
    private final Effort effort;
    private final Workers workers;
    private final MarginMemory memory;
    private final long move;
    private final Map<String, Double> chosen;
    private final BooleanSupplier closed;
    private final BooleanSupplier overtaken;
    private final long start = System.nanoTime();

    /** Guards the two below and the order of what is handed over. */
    private final Object lock = new Object();

    private final Map<String, RequirementMargin> margins = new LinkedHashMap<>();
    private final Map<Surface, LightMargin> bySurface = new HashMap<>();

    /**
     * @param family the layouts
     * @param effort how hard to work
     * @param workers do the work
     * @param memory margins of the last positions
     * @param move number of the move
     * @param chosen the values chosen instead of those of the file
     * @param closed whether all work ends
     * @param overtaken whether there is a later move
     */
    LiveStep(
            LayoutFamily family,
            Effort effort,
            Workers workers,
            MarginMemory memory,
            long move,
            Map<String, Double> chosen,
            BooleanSupplier closed,
            BooleanSupplier overtaken) {
        this.family = family;
        this.effort = effort;
        this.workers = workers;
        this.memory = memory;
        this.move = move;
        this.chosen = chosen;
        this.closed = closed;
        this.overtaken = overtaken;
    }

    /**
     * Works until all is known, or it is given up.
     *
     * @param last the last position that exists
     * @param listener receives the states
     */
    void run(Optional<LiveState.Placed> last, Consumer<LiveState> listener) {
        Findings findings = new Findings();
        try {
            Layout layout = family.with(chosen, findings);
            PlacedScene placed = PlacedScene.of(layout, findings, Watch.stopping(closed));
            run(placed, findings.sorted(), listener);
        } catch (UnusableInput impossible) {
            listener.accept(new LiveState.Impossible(move, chosen, impossible.findings(), last));
        } catch (RuntimeException broken) {
            if (!closed.getAsBoolean()) {
                listener.accept(new LiveState.Broken(move, chosen, broken));
            }
        }
    }

    private void run(PlacedScene placed, List<Finding> warnings, Consumer<LiveState> listener) {
        SamplingSpec asked = effort.over(placed.layout().sampling());
        SamplingSpec nothing = new SamplingSpec(asked.seed(), asked.confidence(), 0);
        Transport transport = new Transport(placed.scene(), placed.tree(), asked.seed());
        Watch always = Watch.stopping(closed);
        QuickLight impatient = new QuickLight(placed.scene(), placed.tree(), closed);
        Judge quick = new Judge(transport, impatient, workers, nothing, NO_SAMPLES);
        Proofs known = quick.prove(placed.demands(), always);
        Judgement direct = quick.decide(placed.demands(), known, always);
        Reporter reporter = (judgement, detail) -> report(placed, warnings, judgement, detail, listener);
        reporter.report(direct, LiveDetail.DIRECT);
        if (!measure(placed, direct.requirements(), direct, LiveDetail.MARGINS, reporter)) {
            return;
        }
        Watch patient = Watch.stopping(() -> closed.getAsBoolean() || overtaken.getAsBoolean());
        ProvenLight light = new ProvenLight(placed.scene(), placed.tree(), patient::stop);
        Set<Surface> open = open(direct);
        if (!open.isEmpty()) {
            // What is near to being lit is settled before the long work on reflected light.
            Judge patience = new Judge(
                    transport, new PatientDarkness(known, open, impatient, light), workers, nothing, NO_SAMPLES);
            known = patience.prove(placed.demands(), patient);
            if (patient.stop()) {
                return;
            }
            Judgement more = patience.decide(placed.demands(), known, patient);
            reporter.report(more, LiveDetail.MARGINS);
            if (!measure(placed, newly(direct, more), more, LiveDetail.MARGINS, reporter)) {
                return;
            }
            direct = more;
        }
        Judge judge = new Judge(transport, new PatientLight(known, open, light), workers, asked, UNTIL_DECIDED);
        Proofs proofs = judge.prove(placed.demands(), patient);
        if (patient.stop()) {
            return;
        }
        Judgement judgement = judge.decide(placed.demands(), proofs, patient, look -> {
            if (!patient.stop()) {
                reporter.report(look, LiveDetail.REFLECTED);
            }
        });
        if (!judgement.stopped()
                && measure(placed, settled(direct, judgement), judgement, LiveDetail.REFLECTED, reporter)) {
            reporter.report(judgement, LiveDetail.FINISHED);
        }
    }

    /** Hands over what is known. */
    private interface Reporter {
        void report(Judgement judgement, LiveDetail detail);
    }

    private void report(
            PlacedScene placed,
            List<Finding> warnings,
            Judgement judgement,
            LiveDetail detail,
            Consumer<LiveState> listener) {
        synchronized (lock) {
            Findings findings = new Findings();
            findings.addAll(warnings);
            Judgement found = judgement.with(bySurface);
            Judgement certain = ChordDoubt.of(placed.layout(), placed.assembly(), placed.scene())
                    .map(doubt -> doubt.applied(found, findings))
                    .orElse(found);
            listener.accept(new LiveState.Placed(
                    move, chosen, placed.layout(), placed.scene(), certain, known(certain), findings.sorted(), detail));
        }
    }

    /** The margins so far, where a proof of darkness is in doubt with what is then known of them. */
    private Map<String, RequirementMargin> known(Judgement certain) {
        Map<String, RequirementMargin> known = new LinkedHashMap<>(margins);
        certain.requirements().stream()
                .filter(RequirementResult::isDarknessInDoubt)
                .forEach(result ->
                        known.computeIfPresent(result.requirement().name(), (name, margin) -> margin.inDoubt(result)));
        return known;
    }

    /** Surfaces of which a proof of direct light is asked that quick proofs left open. */
    private static Set<Surface> open(Judgement quick) {
        return quick.requirements().stream()
                .filter(result -> result.requirement().condition() instanceof Requirement.NoDirect)
                .flatMap(result -> result.outcomes().stream())
                .filter(outcome -> outcome.verdict() == Verdict.UNDECIDED)
                .map(Outcome::surface)
                .collect(Collectors.toSet());
    }

    /** Requirements whose verdict has been settled since, and all that sampling decides. */
    private static List<RequirementResult> settled(Judgement before, Judgement after) {
        return after.requirements().stream()
                .filter(result -> isSampled(result) || isNew(before, result))
                .toList();
    }

    /** Requirements that proofs decide whose verdict has been settled since. */
    private static List<RequirementResult> newly(Judgement before, Judgement after) {
        return after.requirements().stream()
                .filter(result -> !isSampled(result) && isNew(before, result))
                .toList();
    }

    private static boolean isNew(Judgement before, RequirementResult result) {
        return before.requirements().stream()
                .noneMatch(old -> old.requirement().equals(result.requirement()) && old.verdict() == result.verdict());
    }

    private static boolean isSampled(RequirementResult result) {
        return result.requirement().condition() instanceof Requirement.AtMost;
    }

    /** Measures margins, each handed over when it is known; false if that was given up. */
    private boolean measure(
            PlacedScene placed,
            List<RequirementResult> results,
            Judgement judgement,
            LiveDetail detail,
            Reporter reporter) {
        BooleanSupplier stop =
                () -> closed.getAsBoolean() || (overtaken.getAsBoolean() && age() > PATIENCE_MS * 1_000_000L);
        LiveMargins search = new LiveMargins(placed, memory, values(), stop);
        List<Callable<Boolean>> tasks = results.stream()
                .filter(result -> !isSampled(result) || result.verdict() != Verdict.UNDECIDED)
                .sorted(Comparator.comparingDouble(search::urgency))
                .<Callable<Boolean>>map(result -> () -> measure(search, result, judgement, detail, reporter))
                .toList();
        return workers.all(tasks.stream()).stream().allMatch(found -> found) && !stop.getAsBoolean();
    }

    private boolean measure(
            LiveMargins search, RequirementResult result, Judgement judgement, LiveDetail detail, Reporter reporter) {
        Optional<LiveMargins.Found> found = search.of(result);
        found.ifPresent(margin -> {
            synchronized (lock) {
                margins.put(result.requirement().name(), margin.requirement());
                margin.bySurface().forEach((surface, light) -> bySurface.merge(surface, light, LightMargin::or));
                reporter.report(judgement, detail);
            }
        });
        return found.isPresent();
    }

    private long age() {
        return System.nanoTime() - start;
    }

    /** The values of all dimensions: what is reckoned from others counts as written. */
    private Map<String, Double> values() {
        Map<String, Double> values = new HashMap<>();
        family.written().dimensions().forEach((name, dimension) -> values.put(name, dimension.value()));
        values.putAll(chosen);
        return values;
    }
}
