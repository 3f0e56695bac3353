package darkrim.verdict;

import darkrim.layout.Requirement;
import darkrim.layout.Requirement.LightClass;
import darkrim.scene.Surface;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.Callable;

/** Seeks what geometry alone says beside darkness, for the surfaces of which it is asked: how much of the pupil is seen, how much is reflected. */
final class BoundSearch {
    /** Surfaces looked at between two looks at whether to stop. */
    private static final int AT_ONCE = 8;

    private final Prover prover;
    private final Workers workers;
    private final Watch watch;

    BoundSearch(Prover prover, Workers workers, Watch watch) {
        this.prover = prover;
        this.workers = workers;
        this.watch = watch;
    }

    /** All that is proved, with what is known of darkness. What it was stopped before is left out. */
    Proofs with(List<Demand> demands, Map<Surface, Evidence> dark) {
        return new Proofs(dark, seen(demands), mostReflected(demands, Proofs.provedDark(dark)));
    }

    private Map<Proofs.ShareQuestion, Evidence.ExactShare> seen(List<Demand> demands) {
        Set<Proofs.ShareQuestion> asked = new LinkedHashSet<>();
        for (Demand demand : demands) {
            if (demand.requirement().condition() instanceof Requirement.PupilSeen seen) {
                demand.surfaces().forEach(surface -> asked.add(new Proofs.ShareQuestion(surface, seen.share())));
            }
        }
        List<Proofs.ShareQuestion> questions = List.copyOf(asked);
        List<Evidence.ExactShare> answers = all(
                "proving what is seen of the pupil",
                questions.stream()
                        .<Callable<Evidence.ExactShare>>map(
                                question -> () -> prover.pupilSeen(question.surface(), question.share()))
                        .toList());
        Map<Proofs.ShareQuestion, Evidence.ExactShare> found = new HashMap<>();
        for (int i = 0; i < answers.size(); i++) {
            found.put(questions.get(i), answers.get(i));
        }
        return found;
    }

    private Map<Surface, Double> mostReflected(List<Demand> demands, Set<Surface> dark) {
        Map<Surface, Double> limits = new LinkedHashMap<>();
        for (Demand demand : demands) {
            if (demand.requirement().condition() instanceof Requirement.AtMost most
                    && most.light() == LightClass.ONCE_REFLECTED) {
                demand.surfaces()
                        .forEach(surface -> limits.merge(surface, Settled.forSurface(most, surface), Math::min));
            }
        }
        List<Surface> surfaces = List.copyOf(limits.keySet());
        List<Double> bounds = all(
                "bounding reflected light",
                surfaces.stream()
                        .<Callable<Double>>map(
                                surface -> () -> prover.mostReflected(surface, dark, limits.get(surface)))
                        .toList());
        Map<Surface, Double> found = new HashMap<>();
        for (int i = 0; i < bounds.size(); i++) {
            if (Double.isFinite(bounds.get(i))) {
                found.put(surfaces.get(i), bounds.get(i));
            }
        }
        return found;
    }

    /** The answers to the first questions, all of them unless it is stopped. */
    private <T> List<T> all(String step, List<Callable<T>> questions) {
        List<T> answers = new ArrayList<>();
        for (int from = 0; from < questions.size() && !watch.stop(); from += AT_ONCE) {
            watch.progress(step, from, questions.size());
            answers.addAll(workers.all(questions.subList(from, Math.min(questions.size(), from + AT_ONCE)).stream()));
        }
        watch.progress(step, questions.size(), questions.size());
        return answers;
    }
}
