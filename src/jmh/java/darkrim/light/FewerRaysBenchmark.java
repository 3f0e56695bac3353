package darkrim.light;

import darkrim.diagnostic.Findings;
import darkrim.layout.Requirement.LightClass;
import darkrim.sampling.SamplePoints;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.study.Effort;
import darkrim.study.PlacedScene;
import darkrim.study.ProvenLight;
import darkrim.trace.FacetTree;
import darkrim.verdict.Evidence;
import darkrim.verdict.Watch;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/**
 * Samples and seconds, on one thread, until once-reflected light on a strip is known to 1 %: forward from the pupil, gathered back with independent even
 * points, and as a check does it. One kernel, one run. The samples to 1 % are those of a run times the square of its relative error over 1 %.
 *
 * <p>A program of its own, not a JMH benchmark: what is counted is samples. Arguments: a layout, then names of surfaces.
 */
public final class FewerRaysBenchmark {
    private static final int SAMPLES = 1 << 19;
    private static final int BATCH = 2048;
    private static final long PACKETS = 20_000_000;

    private FewerRaysBenchmark() {}

    /** Prints a table. */
    public static void main(String[] arguments) throws Exception {
        Findings findings = new Findings();
        PlacedScene placed = PlacedScene.of(Path.of(arguments[0]), Effort.asAsked(), findings, Watch.NONE);
        Scene scene = placed.scene();
        FacetTree tree = placed.tree();
        ProvenLight proof = new ProvenLight(scene, tree, () -> false);
        List<Surface> dark = scene.surfaces().stream()
                .filter(surface -> proof.darkness(surface) instanceof Evidence.ProvedDark)
                .toList();
        Transport transport = new Transport(scene, tree, 1).knowingDark(dark);
        System.out.println("surface | way | relative irradiance | samples to 1 % | s to 1 %");
        long start = System.nanoTime();
        ForwardTally forward = new ForwardTracer(scene, tree, 1).trace(PACKETS, 2);
        double seconds = (System.nanoTime() - start) * 1e-9;
        for (int i = 1; i < arguments.length; i++) {
            Surface surface = scene.surface(arguments[i]).orElseThrow();
            row(surface, "forward", forward.irradiance(surface, 1), PACKETS, seconds);
            gather(transport.withoutLinks(), surface, "back, independent, even", SamplePoints.Kind.INDEPENDENT);
            gather(transport, surface, "back, for a verdict", SamplePoints.Kind.PAIRED);
            gather(transport, surface, "back, for the record", SamplePoints.Kind.SCRAMBLED);
        }
    }

    private static void gather(Transport transport, Surface surface, String way, SamplePoints.Kind kind) {
        Receiver at = new Receiver.OnSurface(surface);
        Estimate all = Estimate.none(0);
        for (int warm = 0; warm < 20; warm++) {
            all = transport
                    .batch(at, LightClass.ONCE_REFLECTED, warm, BATCH, kind)
                    .irradiance();
        }
        all = Estimate.none(0);
        long start = System.nanoTime();
        for (int i = 0; i < SAMPLES / BATCH; i++) {
            all = all.and(transport
                    .batch(at, LightClass.ONCE_REFLECTED, i, BATCH, kind)
                    .irradiance());
        }
        row(surface, way, all, SAMPLES, (System.nanoTime() - start) * 1e-9);
    }

    private static void row(Surface surface, String way, Estimate found, long samples, double seconds) {
        double relative = found.standardError() / found.mean() / 0.01;
        PrintStream out = System.out;
        out.printf(
                Locale.ROOT,
                "%s | %s | %.4g +- %.2g | %.3g | %.2g%n",
                surface.name(),
                way,
                found.mean(),
                found.standardError(),
                samples * relative * relative,
                seconds * relative * relative);
    }
}
