package darkrim.recipe;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A recipe of docs/recipes.md: what it changes in the sources.
 *
 * @param title its heading
 * @param steps its steps, in order
 */
record Recipe(String title, List<Step> steps) {
    static final Path PAGE = Path.of("docs/recipes.md");
    private static final Pattern STEP = Pattern.compile(
            "(?m)^\\*\\*(\\d+)\\.\\*\\* (?:New, `([^`]+)`|`([^`]+)`, (below|above|in place of) `([^`]+)`):\n\n```java\n(.*?)```$",
            Pattern.DOTALL);

    /**
     * One step.
     *
     * @param file the file that is written or changed
     * @param where below, above or in place of; empty for a new file
     * @param anchor what stands once in the file
     * @param code the lines, or the words in place of the anchor
     */
    record Step(Path file, String where, String anchor, String code) {
        boolean isNew() {
            return where.isEmpty();
        }

        /** The text of the file after the step. */
        String appliedTo(String text) {
            int at = text.indexOf(anchor);
            if (at < 0 || text.indexOf(anchor, at + 1) >= 0) {
                throw new AssertionError("expected once in " + file + ": " + anchor);
            }
            return switch (where) {
                case "in place of" ->
                    text.substring(0, at) + code.substring(0, code.length() - 1) + text.substring(at + anchor.length());
                case "above" -> {
                    int line = text.lastIndexOf('\n', at) + 1;
                    yield text.substring(0, line) + code + text.substring(line);
                }
                default -> {
                    int next = text.indexOf('\n', at) + 1;
                    yield text.substring(0, next) + code + text.substring(next);
                }
            };
        }
    }

    /** All recipes of the page that have steps. */
    static List<Recipe> all() throws IOException {
        List<Recipe> recipes = new ArrayList<>();
        for (String section : Files.readString(PAGE).split("(?m)^## ", -1)) {
            List<Step> steps = new ArrayList<>();
            Matcher step = STEP.matcher(section);
            while (step.find()) {
                if (Integer.parseInt(step.group(1)) != steps.size() + 1) {
                    throw new AssertionError("step " + step.group(1) + " after " + steps.size() + " in " + section);
                }
                steps.add(
                        step.group(2) != null
                                ? new Step(Path.of(step.group(2)), "", "", step.group(6))
                                : new Step(Path.of(step.group(3)), step.group(4), step.group(5), step.group(6)));
            }
            if (!steps.isEmpty()) {
                recipes.add(new Recipe(section.lines().findFirst().orElseThrow(), steps));
            }
        }
        return recipes;
    }

    /** Carries out the steps on the files that are there already; of the others it takes what stands in the tree. */
    void apply(Map<Path, String> files) throws IOException {
        for (Step step : steps) {
            if (step.isNew()) {
                if (Files.exists(step.file()) || files.putIfAbsent(step.file(), step.code()) != null) {
                    throw new AssertionError("there already: " + step.file());
                }
            } else {
                if (!files.containsKey(step.file())) {
                    files.put(step.file(), Files.readString(step.file()));
                }
                files.put(step.file(), step.appliedTo(files.get(step.file())));
            }
        }
    }

    /** Names of the tests that it adds. */
    List<String> tests() {
        return steps.stream()
                .filter(Step::isNew)
                .map(step -> Path.of("src/test/java").relativize(step.file()).toString())
                .filter(file -> file.endsWith("Test.java"))
                .map(file -> file.substring(0, file.length() - ".java".length()).replace('/', '.'))
                .toList();
    }

    /** The files of the main code that it changes. */
    Set<Path> changed() {
        Set<Path> changed = new TreeSet<>();
        steps.stream()
                .filter(step -> !step.isNew() && step.file().startsWith("src/main"))
                .forEach(step -> changed.add(step.file()));
        return changed;
    }
}
