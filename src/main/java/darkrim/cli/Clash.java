package darkrim.cli;

import darkrim.study.first.FirstWishes;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/**
 * Answers of {@code darkrim new} that may not go together.
 *
 * @param answers which they are
 * @param found says what is wrong with them, if something is
 */
record Clash(Set<Question> answers, Function<FirstWishes, Optional<String>> found) {
    private static final List<Clash> ALL = List.of(
            new Clash(EnumSet.of(Question.PIXELS, Question.REFERENCE_PIXELS), FirstWishes::blindness),
            new Clash(
                    EnumSet.of(
                            Question.COLUMNS,
                            Question.ROWS,
                            Question.PIXELS,
                            Question.PIXEL_PITCH,
                            Question.DIE_MARGIN,
                            Question.SPACING),
                    FirstWishes::overlap),
            new Clash(
                    EnumSet.of(
                            Question.COLUMNS,
                            Question.ROWS,
                            Question.PIXELS,
                            Question.PIXEL_PITCH,
                            Question.REFERENCE_PIXELS,
                            Question.SPACING,
                            Question.FIELD_HALF_WIDTH),
                    FirstWishes::darkPixels),
            new Clash(EnumSet.of(Question.PUPIL_DISTANCE, Question.EDGE_HEIGHT), FirstWishes::highEdges),
            new Clash(
                    EnumSet.of(Question.PUPIL_DISTANCE, Question.EDGE_HEIGHT, Question.WALL_HEIGHT),
                    FirstWishes::highWalls));

    /** What is wrong with answers that are known, one sentence each; nothing of those of which one is not known yet. */
    static List<String> among(Map<Question, Double> known) {
        return found(known, ALL);
    }

    /** The same, of those alone to which one answer belongs: it is asked again then. */
    static Optional<String> of(Question question, Map<Question, Double> known) {
        return found(
                        known,
                        ALL.stream()
                                .filter(clash -> clash.answers().contains(question))
                                .toList())
                .stream()
                .findFirst();
    }

    private static List<String> found(Map<Question, Double> known, List<Clash> clashes) {
        return clashes.stream()
                .filter(clash -> clash.answers().stream()
                        .allMatch(answer -> known.containsKey(answer) || !answer.matters(known)))
                .flatMap(clash -> clash.found().apply(Question.wishes(known)).stream())
                .toList();
    }
}
