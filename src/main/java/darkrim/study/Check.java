package darkrim.study;

import darkrim.assembly.Assembly;
import darkrim.assembly.AssemblyMemory;
import darkrim.assembly.Feasibility;
import darkrim.diagnostic.Finding;
import darkrim.diagnostic.Findings;
import darkrim.diagnostic.UnusableInput;
import darkrim.layout.Cooldown;
import darkrim.layout.Layout;
import darkrim.layout.LayoutReader;
import darkrim.layout.LayoutReading;
import darkrim.layout.SamplingSpec;
import darkrim.light.ManyReflections;
import darkrim.light.Transport;
import darkrim.scene.Scene;
import darkrim.trace.FacetTree;
import darkrim.verdict.Demand;
import darkrim.verdict.Judge;
import darkrim.verdict.Judgement;
import darkrim.verdict.Plan;
import darkrim.verdict.Proofs;
import darkrim.verdict.Watch;
import darkrim.verdict.Workers;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** The main job: from a layout file to a verdict. */
public final class Check {
    /** Facets of a layout whose openings are moved to find their margins. */
    private static final int MOST_TO_MOVE = 200_000;

    private Check() {}

    /**
     * Checks a layout file.
     *
     * @param file the file
     * @param effort how hard to work
     * @param watch hears how far it is
     * @throws UnusableInput with everything that is wrong with the file
     */
    public static CheckResult of(Path file, Effort effort, Watch watch) throws UnusableInput {
        Findings findings = new Findings();
        return of(effort.shaped(readable(file, findings)), findings, effort, watch);
    }

    /**
     * What is proved of a layout file: darkness, views of the pupil and margins, for which the least of samples is enough. No verdict that hangs on
     * samples is to be taken from it, so that it warns of nothing that speaks against one.
     *
     * @param file the file
     * @param effort how hard to work, apart from samples
     * @param watch hears how far it is
     * @throws UnusableInput with everything that is wrong with the file
     */
    public static CheckResult proofs(Path file, Effort effort, Watch watch) throws UnusableInput {
        Findings findings = new Findings();
        Effort least = new Effort(effort.threads(), effort.seed(), Optional.of(1L), effort.margins(), effort.warm());
        return of(effort.shaped(readable(file, findings)), findings, least, Plan.ONCE, watch);
    }

    /**
     * Checks a layout file and, if it is judged in a cold shape, beside it the shape as drawn.
     *
     * @param file the file
     * @param effort how hard to work, on each shape
     * @param watch hears how far it is
     * @throws UnusableInput with everything that is wrong with the file, in either shape
     */
    public static CheckResult coldAndWarm(Path file, Effort effort, Watch watch) throws UnusableInput {
        Findings findings = new Findings();
        return coldAndWarm(effort.shaped(readable(file, findings)), findings, effort, watch);
    }

    /**
     * Checks a layout and, if it is judged in a cold shape, beside it the shape as drawn.
     *
     * @param layout the layout
     * @param findings what is known to be wrong with it; what its parts show is added
     * @param effort how hard to work, on each shape
     * @param watch hears how far it is
     * @throws UnusableInput with everything that is wrong with the layout, in either shape
     */
    public static CheckResult coldAndWarm(Layout layout, Findings findings, Effort effort, Watch watch)
            throws UnusableInput {
        long start = System.nanoTime();
        List<Finding> read = findings.sorted();
        if (!layout.cooldown().map(Cooldown::isCold).orElse(false)) {
            return of(layout, findings, effort, watch);
        }
        CheckResult cold = of(layout, findings, effort, new ShapeWatch(watch, "1/2 cold: "));
        Findings asDrawn = new Findings();
        asDrawn.addAll(read);
        CheckResult warm = of(layout.warm(), asDrawn, effort, new ShapeWatch(watch, "2/2 warm: "));
        return ShapeComparison.of(cold, warm, effort.margins(), secondsSince(start));
    }

    /**
     * Reads a layout of which the parts at least can be looked at, in the shape that its file gives it.
     *
     * @param file the file
     * @param findings what is wrong with it is added
     * @throws UnusableInput with everything that is wrong with the file, where a part is missing
     */
    public static Layout readable(Path file, Findings findings) throws UnusableInput {
        LayoutReading reading = LayoutReader.read(file);
        findings.addAll(reading.findings());
        if (reading.layout().isEmpty() || !reading.partsComplete()) {
            throw new UnusableInput(findings.sorted());
        }
        return reading.layout().get();
    }

    /**
     * Checks a layout.
     *
     * @param layout the layout
     * @param findings what is known to be wrong with it; what its parts show is added
     * @param effort how hard to work
     * @param watch hears how far it is
     * @throws UnusableInput with everything that is wrong with the layout
     */
    public static CheckResult of(Layout layout, Findings findings, Effort effort, Watch watch) throws UnusableInput {
        return of(layout, findings, effort, Plan.FULL, watch);
    }

    /**
     * Checks a layout by another plan of sampling.
     *
     * @param layout the layout
     * @param findings what is known to be wrong with it; what its parts show is added
     * @param effort how hard to work
     * @param plan what is sampled and how often
     * @param watch hears how far it is
     * @throws UnusableInput with everything that is wrong with the layout
     */
    public static CheckResult of(Layout layout, Findings findings, Effort effort, Plan plan, Watch watch)
            throws UnusableInput {
        return of(layout, new AssemblyMemory(), findings, effort, plan, watch);
    }

    /** The same, taking from the last layout what holds for this one. */
    static CheckResult of(
            Layout layout, AssemblyMemory memory, Findings findings, Effort effort, Plan plan, Watch watch)
            throws UnusableInput {
        long start = System.nanoTime();
        PlacedScene placed = PlacedScene.of(layout, memory, findings, watch);
        Assembly assembly = placed.assembly();
        Scene scene = placed.scene();
        FacetTree tree = placed.tree();
        List<Feasibility> feasibility = Feasibility.of(assembly, layout.beam(), layout.placementError(), findings);
        WindowCaution.of(layout, scene, findings);
        Optional<ChordDoubt> doubt = ChordDoubt.of(layout, assembly, scene);
        MarginScope least =
                doubt.isPresent() && effort.margins() == MarginScope.NONE ? MarginScope.REQUIREMENTS : effort.margins();
        MarginScope scope = scope(least, scene, assembly, findings);
        SamplingSpec asked = effort.over(layout.sampling());
        List<Demand> demands = placed.demands();
        try (Workers workers = new Workers(effort.threads())) {
            ProvenLight proven = new ProvenLight(scene, tree, watch::stop);
            Judge judge = new Judge(new Transport(scene, tree, asked.seed()), proven, workers, asked, plan);
            long proving = System.nanoTime();
            Proofs proved = judge.prove(demands, watch);
            double proofs = secondsSince(proving);
            DirectMargins.Search search = DirectMargins.begin(placed, proved, scope, doubt.isPresent(), workers, watch);
            Judgement judgement = judge.decide(demands, proved, watch);
            if (plan.equals(Plan.FULL)) {
                new ReflectedAgain(new ManyReflections(scene, tree, asked.seed()), workers, watch)
                        .look(judgement, findings);
            }
            DirectMargins.Measured measured = judgement.stopped() ? search.stopped() : search.found();
            DirectMargins margins = measured.margins();
            Judgement found = judgement.with(margins.bySurface());
            Judgement certain = doubt.map(one -> one.applied(found, findings)).orElse(found);
            List<Finding> warnings = findings.sorted();
            return new CheckResult(
                    layout,
                    asked,
                    scene,
                    feasibility,
                    assembly.largestChordError(),
                    certain,
                    margins,
                    warnings,
                    new CheckResult.Timing(proofs, measured.seconds(), secondsSince(start)));
        }
    }

    /** Each step of an opening needs a tree of its own, seconds for each million facets: left out unless all margins are asked for. */
    private static MarginScope scope(MarginScope asked, Scene scene, Assembly assembly, Findings findings) {
        if (asked != MarginScope.LEAST
                || scene.facetCount() <= MOST_TO_MOVE
                || assembly.openings().isEmpty()) {
            return asked;
        }
        findings.warning(
                "opening-margins-left-out",
                assembly.openings().get(0).place(),
                "how far openings can be moved was not looked for, since the layout has " + scene.facetCount()
                        + " facets, more than " + MOST_TO_MOVE + "; --margins all looks for it and takes hours");
        return MarginScope.REQUIREMENTS;
    }

    private static double secondsSince(long start) {
        return (System.nanoTime() - start) * 1e-9;
    }
}
