package darkrim.verdict;

import darkrim.diagnostic.Place;
import darkrim.geom.Frame;
import darkrim.geom.Ring;
import darkrim.layout.Requirement;
import darkrim.layout.Requirement.LightClass;
import darkrim.layout.SamplingSpec;
import darkrim.light.Transport;
import darkrim.scene.Beam;
import darkrim.scene.CellGrid;
import darkrim.scene.Finish;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.SceneBuilder;
import darkrim.scene.Surface;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** A floor, a wall and tiles far below, judged by proofs that are told and not found: few samples, so that each test is short. */
final class ToldProofs {
    static final int TILES = 35;

    static final Finish GREY = new Finish("grey", 0.2, 0);

    static final Scene SCENE = scene(2);

    /** A floor of three cells, a grey wall beside it, and a row of tiles far below that get no light by reflection. */
    static Scene scene(int tiles) {
        SceneBuilder builder = new SceneBuilder()
                .sheet("floor", Finish.ABSORBER, "under", Finish.ABSORBER, Place.IN_CODE)
                .sheet("wall", GREY, "wall/back", GREY, Place.IN_CODE)
                .quad("floor", at(-5, -5, 0), at(5, -5, 0), at(5, 5, 0), at(-5, 5, 0))
                .quad("wall", at(5, -5, 0), at(5, -5, 10), at(5, 5, 10), at(5, 5, 0))
                .grid("floor", new CellGrid(at(-5, -5, 0), at(10, 0, 0), at(0, 10, 0), 3, 1));
        for (int i = 0; i < tiles; i++) {
            builder.sheet("tile " + i, Finish.ABSORBER, "tile/back " + i, Finish.ABSORBER, Place.IN_CODE)
                    .triangle("tile " + i, at(i, 0, -90), at(i, 1, -90), at(i + 0.5, 0, -90));
        }
        Frame frame = Frame.of(at(0, 0, 200), Vector3D.Unit.PLUS_X, Vector3D.Unit.MINUS_Y);
        return builder.build(Beam.of(new Pupil(Ring.disc(20), frame)));
    }

    static Vector3D at(double x, double y, double z) {
        return Vector3D.of(x, y, z);
    }

    static Surface surface(String name) {
        return SCENE.surface(name).orElseThrow();
    }

    /** Says of some surfaces that they are dark and of all how much they reflect at most. */
    record Told(Set<String> dark, double bound) implements Prover {
        @Override
        public Evidence darkness(Surface surface) {
            return dark.contains(surface.name())
                    ? new Evidence.ProvedDark(1e-6)
                    : new Evidence.OpenArea(surface.area(), 1);
        }

        @Override
        public Evidence.ExactShare pupilSeen(Surface surface, double share) {
            return Evidence.ExactShare.UNKNOWN;
        }

        @Override
        public double mostReflected(Surface surface, Set<Surface> dark, double limit) {
            return bound;
        }
    }

    static final Told NOTHING = new Told(Set.of(), Double.POSITIVE_INFINITY);

    /** Hears all that is said, and asks to stop from some question on. */
    static final class Hearing implements Watch {
        final List<String> heard = new ArrayList<>();
        private final int stopAt;
        private int asked;

        Hearing(int stopAt) {
            this.stopAt = stopAt;
        }

        @Override
        public void progress(String step, long done, long most) {
            heard.add(step + " " + done + "/" + most);
        }

        @Override
        public synchronized boolean stop() {
            asked++;
            return asked >= stopAt;
        }
    }

    static Demand demand(Requirement.Condition condition, String... on) {
        return new Demand(
                new Requirement("asked", "chosen", condition, Place.IN_CODE),
                List.of(on).stream().map(ToldProofs::surface).toList());
    }

    static Requirement.Condition reflected(double limit, Requirement.Per per) {
        return new Requirement.AtMost(LightClass.ONCE_REFLECTED, limit, per);
    }

    static Judgement decide(Told told, Plan plan, long budget, List<Judgement> looks, Demand... demands) {
        try (Workers workers = new Workers(1)) {
            Judge judge = judge(told, plan, budget, workers);
            List<Demand> asked = List.of(demands);
            return judge.decide(asked, judge.prove(asked, Watch.NONE), Watch.NONE, looks::add);
        }
    }

    static Judge judge(Told told, Plan plan, long budget, Workers workers) {
        return judge(SCENE, told, plan, budget, workers);
    }

    static Judge judge(Scene scene, Told told, Plan plan, long budget, Workers workers) {
        return new Judge(Transport.of(scene, 3), told, workers, new SamplingSpec(3, 0.98, budget), plan);
    }

    static Judgement decide(Told told, Plan plan, Demand... demands) {
        return decide(told, plan, 1_000_000, new ArrayList<>(), demands);
    }

    static double valueOfTheFloor() {
        return decide(NOTHING, Plan.alike(8), demand(reflected(1, Requirement.Per.SURFACE), "floor"))
                .requirements()
                .get(0)
                .worst()
                .value();
    }

    private ToldProofs() {}
}
