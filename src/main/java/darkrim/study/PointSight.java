package darkrim.study;

import darkrim.assembly.Assembly;
import darkrim.diagnostic.Finding;
import darkrim.diagnostic.Findings;
import darkrim.diagnostic.UnusableInput;
import darkrim.layout.Layout;
import darkrim.layout.Requirement.LightClass;
import darkrim.light.Estimate;
import darkrim.light.Obstruction;
import darkrim.light.ObstructionSampler;
import darkrim.light.Receiver;
import darkrim.light.Transport;
import darkrim.scene.Scene;
import darkrim.scene.SceneFactory;
import darkrim.shadow.PupilView;
import darkrim.shadow.VisiblePupil;
import darkrim.study.contact.PartContacts;
import darkrim.trace.FacetTree;
import darkrim.verdict.Watch;
import darkrim.verdict.Workers;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;

/**
 * What one point of a surface sees of the pupil, by two ways that share only the geometry: exact (without random numbers) and sampled.
 *
 * @param layout what the designer wrote
 * @param seed seed of the sampled numbers
 * @param scene the scene that was looked at
 * @param at the point
 * @param view the visible part of the pupil, exact
 * @param withoutParts what would be visible if no part stood between: the field limit and the back of the surface remain
 * @param irradiance relative irradiance by direct light, sampled
 * @param obstruction what became of lines to the pupil, sampled
 * @param stopped whether the sampling was stopped before its end
 * @param warnings what deserves attention in the layout
 */
public record PointSight(
        Layout layout,
        long seed,
        Scene scene,
        SurfacePoint at,
        PupilView view,
        PupilView withoutParts,
        Estimate irradiance,
        Obstruction obstruction,
        boolean stopped,
        List<Finding> warnings) {
    /** Samples where no number is asked for: a standard error of 0.0005 of the pupil at most. */
    public static final long SAMPLES = 1_000_000;

    private static final int BATCH = 1 << 15;

    /** Copies the list. */
    public PointSight {
        warnings = List.copyOf(warnings);
    }

    /** Share of the pupil that is seen, exact; 0 where what is left is rounding. */
    public double exactShare() {
        return view.isNone() ? 0 : view.areaFraction();
    }

    /** Relative irradiance by direct light, exact; 0 where what is left is rounding. */
    public double exactIrradiance() {
        return view.isNone() ? 0 : view.irradiance() / scene.referenceIrradiance();
    }

    /** Share of the pupil that is seen, sampled. */
    public Estimate share() {
        return obstruction.share(obstruction.seen());
    }

    /**
     * Looks from a point of a layout file.
     *
     * @param file the file
     * @param surface full name of the surface
     * @param u share across the surface's bounding rectangle, 0 to 1
     * @param v likewise, the other way
     * @param effort how hard to work; {@link #SAMPLES} where it states no number
     * @param watch hears how far it is
     * @throws UnusableInput with everything that is wrong with the file
     * @throws NoSuchPoint if the layout has no such point
     */
    public static PointSight of(Path file, String surface, double u, double v, Effort effort, Watch watch)
            throws UnusableInput, NoSuchPoint {
        Findings findings = new Findings();
        return of(effort.shaped(Check.readable(file, findings)), findings, surface, u, v, effort, watch);
    }

    /**
     * Looks from a point of a layout.
     *
     * @param layout the layout
     * @param findings what is known to be wrong with it; what its parts show is added
     * @param surface full name of the surface
     * @param u share across the surface's bounding rectangle, 0 to 1
     * @param v likewise, the other way
     * @param effort how hard to work
     * @param watch hears how far it is
     * @throws UnusableInput with everything that is wrong with the layout
     * @throws NoSuchPoint if the layout has no such point
     */
    public static PointSight of(
            Layout layout, Findings findings, String surface, double u, double v, Effort effort, Watch watch)
            throws UnusableInput, NoSuchPoint {
        NoWindow.require(layout, "seen-from");
        Assembly assembly = Assembly.of(layout, findings);
        findings.throwIfErrors();
        Scene scene = SceneFactory.of(layout, assembly);
        FacetTree tree = FacetTree.build(scene.corners(), scene.copyPlanes(), scene.bound());
        PartContacts.check(assembly, scene, tree, findings, watch);
        findings.throwIfErrors();
        SurfacePoint at = SurfacePoint.of(scene, tree, surface, u, v);
        return of(layout, scene, tree, at, findings.sorted(), effort, watch);
    }

    /**
     * Looks from a point of a scene that is there already.
     *
     * @param layout the layout
     * @param scene its scene
     * @param tree the tree over its facets
     * @param at the point
     * @param warnings what deserves attention in the layout
     * @param effort how hard to work
     * @param watch hears how far it is
     */
    public static PointSight of(
            Layout layout,
            Scene scene,
            FacetTree tree,
            SurfacePoint at,
            List<Finding> warnings,
            Effort effort,
            Watch watch) {
        VisiblePupil visible = new VisiblePupil(scene, tree);
        long seed = effort.over(layout.sampling()).seed();
        Sampled sampled = sampled(scene, tree, seed, at, effort, watch);
        return new PointSight(
                layout,
                seed,
                scene,
                at,
                visible.from(at.position(), at.normal()),
                visible.withoutParts(at.position(), at.normal()),
                sampled.irradiance(),
                sampled.obstruction(),
                sampled.stopped(),
                warnings);
    }

    private record Sampled(Estimate irradiance, Obstruction obstruction, boolean stopped) {
        Sampled and(Sampled other) {
            return new Sampled(irradiance.and(other.irradiance), obstruction.and(other.obstruction), false);
        }
    }

    private static Sampled sampled(
            Scene scene, FacetTree tree, long seed, SurfacePoint at, Effort effort, Watch watch) {
        Transport transport = new Transport(scene, tree, seed);
        ObstructionSampler lines = new ObstructionSampler(scene, tree, seed);
        Receiver.AtPoint point =
                new Receiver.AtPoint(at.surface().name() + " " + at.u() + " " + at.v(), at.position(), at.normal());
        long most = effort.mostSamples().orElse(SAMPLES);
        Sampled all = new Sampled(
                Estimate.none(transport.largestSample(point, LightClass.DIRECT)), Obstruction.none(), false);
        try (Workers workers = new Workers(effort.threads())) {
            long batch = 0;
            while (all.obstruction().samples() < most) {
                watch.progress("looking", all.obstruction().samples(), most);
                if (watch.stop()) {
                    return new Sampled(all.irradiance(), all.obstruction(), true);
                }
                long first = batch;
                long left = most - all.obstruction().samples();
                int round = (int) Math.min(effort.threads(), (left + BATCH - 1) / BATCH);
                List<Sampled> found = workers.all(IntStream.range(0, round).mapToObj(i -> () -> {
                    int samples = (int) Math.min(BATCH, left - (long) i * BATCH);
                    return new Sampled(
                            transport
                                    .batch(point, LightClass.DIRECT, first + i, samples)
                                    .irradiance(),
                            lines.batch(point, first + i, samples),
                            false);
                }));
                // One after the other in the order of the batches: the same bits for any number of threads.
                for (Sampled one : found) {
                    all = all.and(one);
                }
                batch += round;
            }
        }
        return all;
    }
}
