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
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.Future;
import java.util.function.Supplier;

/** Seeks what geometry alone says beside darkness, for the surfaces of which it is asked: how much of the pupil is seen, how much is reflected. */
final class BoundSearch {
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
        Supplier<Map<Proofs.ShareQuestion, Evidence.ExactShare>> seen = seen(demands);
        Supplier<Map<Surface, Double>> mostReflected = mostReflected(demands, Proofs.provedDark(dark));
        return new Proofs(dark, seen.get(), mostReflected.get());
    }

    private Supplier<Map<Proofs.ShareQuestion, Evidence.ExactShare>> seen(List<Demand> demands) {
        Set<Proofs.ShareQuestion> asked = new LinkedHashSet<>();
        for (Demand demand : demands) {
            if (demand.requirement().condition() instanceof Requirement.PupilSeen seen) {
                demand.surfaces().forEach(surface -> asked.add(new Proofs.ShareQuestion(surface, seen.share())));
            }
        }
        List<Proofs.ShareQuestion> questions = List.copyOf(asked);
        List<Future<Optional<Evidence.ExactShare>>> begun = questions.stream()
                .map(question -> begin(() -> prover.pupilSeen(question.surface(), question.share())))
                .toList();
        return () -> {
            List<Evidence.ExactShare> answers = all("proving what is seen of the pupil", begun);
            Map<Proofs.ShareQuestion, Evidence.ExactShare> found = new HashMap<>();
            for (int i = 0; i < answers.size(); i++) {
                found.put(questions.get(i), answers.get(i));
            }
            return found;
        };
    }

    private Supplier<Map<Surface, Double>> mostReflected(List<Demand> demands, Set<Surface> dark) {
        Map<Surface, Double> limits = new LinkedHashMap<>();
        for (Demand demand : demands) {
            if (demand.requirement().condition() instanceof Requirement.AtMost most
                    && most.light() == LightClass.ONCE_REFLECTED) {
                demand.surfaces()
                        .forEach(surface -> limits.merge(surface, Settled.forSurface(most, surface), Math::min));
            }
        }
        List<Surface> surfaces = List.copyOf(limits.keySet());
        List<Future<Optional<Double>>> begun = surfaces.stream()
                .map(surface -> begin(() -> prover.mostReflected(surface, dark, limits.get(surface))))
                .toList();
        return () -> {
            List<Double> bounds = all("bounding reflected light", begun);
            Map<Surface, Double> found = new HashMap<>();
            for (int i = 0; i < bounds.size(); i++) {
                if (Double.isFinite(bounds.get(i))) {
                    found.put(surfaces.get(i), bounds.get(i));
                }
            }
            return found;
        };
    }

    /** Begins to look for an answer; none where it is stopped before. */
    private <T> Future<Optional<T>> begin(Callable<T> question) {
        return workers.begin(() -> watch.stop() ? Optional.empty() : Optional.of(question.call()));
    }

    /** The answers to the first questions, all of them unless it is stopped. */
    private <T> List<T> all(String step, List<Future<Optional<T>>> begun) {
        List<T> answers = new ArrayList<>();
        for (Future<Optional<T>> one : begun) {
            watch.progress(step, answers.size(), begun.size());
            Optional<T> answer = Workers.result(one);
            if (answer.isEmpty()) {
                break;
            }
            answers.add(answer.get());
        }
        watch.progress(step, begun.size(), begun.size());
        return answers;
    }
}
