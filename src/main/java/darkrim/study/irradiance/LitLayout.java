package darkrim.study.irradiance;

import darkrim.assembly.Assembly;
import darkrim.diagnostic.Findings;
import darkrim.diagnostic.UnusableInput;
import darkrim.layout.Layout;
import darkrim.layout.LayoutReader;
import darkrim.layout.LayoutReading;
import darkrim.scene.Scene;
import darkrim.scene.SceneFactory;
import darkrim.scene.Surface;
import darkrim.study.Check;
import darkrim.study.CheckResult;
import darkrim.study.Effort;
import darkrim.study.MarginScope;
import darkrim.trace.FacetTree;
import darkrim.verdict.Verdict;
import darkrim.verdict.Watch;
import darkrim.verdict.Workers;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;

/**
 * A checked layout with maps of its surfaces, for pictures: whole surfaces as the check found them, and cells where they are wanted.
 *
 * @param result what the check found; margins were not looked for
 * @param maps a map of every surface, by number
 * @param stopped whether the work was stopped before its end: values may then be missing
 */
public record LitLayout(CheckResult result, List<SurfaceMap> maps, boolean stopped) {
    /** Copies the list. */
    public LitLayout {
        maps = List.copyOf(maps);
    }

    /** What the designer wrote. */
    public Layout layout() {
        return result.layout();
    }

    /** The scene. */
    public Scene scene() {
        return result.scene();
    }

    /** The verdicts on the surfaces of which light is kept away, by number. */
    public Map<Integer, Verdict> verdicts() {
        return CheckedSurfaces.keptDark(result);
    }

    /**
     * Where and how finely light is mapped.
     *
     * @param cells whether the surface of a name is split into cells
     * @param along cells along the longer side of a flat one
     * @param round samples of each cell
     */
    public record Fineness(Predicate<String> cells, int along, MapSampling.Round round) {}

    /**
     * The surfaces of a layout file, without looking at their light: to see whether names mean something before there is any work.
     *
     * @param file the file
     * @throws UnusableInput with what is wrong with the file
     */
    public static Scene scene(Path file) throws UnusableInput {
        LayoutReading reading = LayoutReader.read(file);
        Findings findings = new Findings();
        findings.addAll(reading.findings());
        if (reading.layout().isEmpty() || !reading.partsComplete()) {
            throw new UnusableInput(findings.sorted());
        }
        Assembly assembly = Assembly.of(reading.layout().get(), findings);
        findings.throwIfErrors();
        return SceneFactory.of(reading.layout().get(), assembly);
    }

    /**
     * Checks a layout file, without margins, and maps its light.
     *
     * @param file the file
     * @param fineness where and how finely
     * @param effort how hard the check works
     * @param watch hears how far it is, and may stop it
     * @throws UnusableInput with everything that is wrong with the file
     */
    public static LitLayout of(Path file, Fineness fineness, Effort effort, Watch watch) throws UnusableInput {
        CheckResult result = Check.of(file, effort.with(MarginScope.NONE), watch);
        Scene scene = result.scene();
        FacetTree tree = FacetTree.build(scene.copyCorners(), scene.copyPlanes(), scene.bound());
        MapSampling sampling = new MapSampling(scene, tree, result.effort().seed(), CheckedSurfaces.provedDark(result));
        List<SurfaceMap> maps = new ArrayList<>(CheckedSurfaces.means(result));
        List<SurfaceMap> fine = scene.surfaces().stream()
                .filter(surface -> fineness.cells().test(surface.name()))
                .map(surface -> sampling.unsampled(SurfaceCells.of(scene, surface, fineness.along())))
                .toList();
        try (Workers workers = new Workers(effort.threads())) {
            for (SurfaceMap map : sampling.refined(fine, fineness.round(), workers, watch)) {
                Surface surface = map.cells().surface();
                // A map that was stopped before its first sample says less than the mean that the check found.
                if (map.rounds() > 0) {
                    maps.set(surface.index(), map);
                }
            }
        }
        return new LitLayout(result, maps, result.judgement().stopped() || watch.stop());
    }
}
