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
        return ALL.stream().flatMap(clash -> clash.in(known).stream()).toList();
    }

    /**
     * The first, of those alone to which one answer belongs: it is asked again then. Options that may be to blame are named, for no answer mends them.
     *
     * @param question the answer
     * @param known all that are known
     * @param options those of them that options gave
     */
    static Optional<String> of(Question question, Map<Question, Double> known, Set<Question> options) {
        return ALL.stream()
                .filter(clash -> clash.answers().contains(question))
                .flatMap(clash -> clash.in(known).map(words -> words + clash.fixedBy(options)).stream())
                .findFirst();
    }

    private Optional<String> in(Map<Question, Double> known) {
        boolean complete = answers.stream().allMatch(answer -> known.containsKey(answer) || !answer.matters(known));
        return complete ? found.apply(Question.wishes(known)) : Optional.empty();
    }

    private String fixedBy(Set<Question> options) {
        List<String> names =
                answers.stream().filter(options::contains).map(Question::option).toList();
        return names.isEmpty()
                ? ""
                : "; fixed by " + String.join(" and ", names) + ": to change that, end with Ctrl-C and begin again";
    }
}
