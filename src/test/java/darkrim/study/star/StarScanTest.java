package darkrim.study.star;

import darkrim.diagnostic.Findings;
import darkrim.layout.LayoutReader;
import darkrim.study.Effort;
import darkrim.study.PlacedScene;
import darkrim.verdict.Watch;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class StarScanTest {
    @Test
    void probe() throws Exception {
        Findings findings = new Findings();
        var layout = LayoutReader.read(Path.of("geometries/nightglow-a.yaml")).layout().get();
        var placed = PlacedScene.of(layout, findings, Watch.NONE);
        for (double finest : new double[] {0.4, 0.1}) {
        long t0 = System.nanoTime();
        var r = StarScan.of(placed, new StarScanSettings("**/active", 0, Optional.empty(), finest, 1e-3, 32, 40000), new Effort(2, Optional.empty(), Optional.empty()), findings, Watch.NONE);
        System.out.println(finest + " " + r.region() + " cells " + r.cells().size() + " proved " + r.cells().stream().filter(StarCell::proved).count() + " positions " + r.positions() + " refined " + r.refined() + " largest " + r.bound().largest() + " zone " + r.zone().area() + " " + r.zone().areas().size() + " " + (System.nanoTime() - t0) * 1e-9);
        System.out.println(r.brightest().map(p -> p.x() + " " + p.y() + " " + p.share() + " " + p.error() + " " + p.tally().by()));
        }
    }
}
