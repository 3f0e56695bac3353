package darkrim.layout.form;

import darkrim.diagnostic.Finding;
import darkrim.diagnostic.Place;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;

/** Plain words for what the YAML library has against a text. It stops at the first problem. */
final class YamlProblem {
    /** What the library has found where a block should have gone on or ended. */
    private static final Pattern INDENTED =
            Pattern.compile("(found|got) '?<(block mapping start|block sequence start|scalar)>");

    /** A sign that a text within braces or brackets cannot have unless it stands in quotation marks. */
    private static final Pattern SIGN = Pattern.compile("but got '?([{\\[&*!|>%@`])'?$");

    private static final Pattern MISPLACED = Pattern.compile("^expected .*found '<?(.+?)>?'$");

    private YamlProblem() {}

    static Finding finding(String file, MarkedYamlEngineException problem) {
        Place found = YamlTree.place(file, problem.getProblemMark().or(problem::getContextMark));
        Place begun = YamlTree.place(file, problem.getContextMark().or(problem::getProblemMark));
        String context = String.valueOf(problem.getContext());
        String what = Wording.oneLine(String.valueOf(problem.getProblem()).strip());
        String since = " that opens at line " + begun.line() + ", column " + begun.column();
        if (what.contains("TAB")) {
            return error(found, "a tab stands here, expected spaces: YAML takes no tabs before a key or a value");
        }
        if (context.contains("flow mapping")) {
            return error(
                    found,
                    "the brace {" + since + " is not closed, expected } or a comma" + before(what, begun, found));
        }
        if (context.contains("flow sequence")) {
            return error(
                    found,
                    "the bracket [" + since + " is not closed, expected ] or a comma" + before(what, begun, found));
        }
        if (context.contains("alias") || context.contains("anchor")) {
            return error(
                    begun,
                    "a text begins with * or &, which YAML takes for itself, expected quotation marks around it");
        }
        if (context.contains("block collection") && what.endsWith("found '?'")) {
            return error(
                    found,
                    "a key stands where the list that begins at line " + begun.line()
                            + " goes on, expected a dash before each item, or none at all where names are wanted");
        }
        if (context.contains("quoted scalar") && what.contains("end of")) {
            return error(begun, "the quotation mark here is never closed, expected another at the end of the text");
        }
        if (what.contains("mapping values are not allowed")) {
            return error(
                    found,
                    "a colon has no place here, expected quotation marks around a text that has ': ' in it, or the key to line"
                            + " up with those around it");
        }
        if (context.contains("simple key")) {
            return error(
                    begun,
                    "a colon and a value are missing after the key, expected 'key: value' with a space after the colon");
        }
        if (context.contains("block") && INDENTED.matcher(what).find()) {
            return error(
                    found,
                    "this line begins at column " + found.column()
                            + ", where no line that it could belong beside begins, expected it to line up with one");
        }
        Matcher misplaced = MISPLACED.matcher(what);
        return error(
                found,
                "the text is not YAML: "
                        + (misplaced.find() ? "'" + misplaced.group(1) + "' has no place here" : what)
                        + ", expected keys and values; quotation marks around a text take it as it stands");
    }

    /** Where the end is missing, and what else may be meant. */
    private static String before(String what, Place begun, Place found) {
        if (SIGN.matcher(what).find()) {
            return " before this place, or quotation marks around a text with such a sign in it";
        }
        return " before this place"
                + (found.line() > begun.line()
                        ? ", or a quotation mark that is missing since line " + begun.line()
                        : "");
    }

    private static Finding error(Place place, String message) {
        return Finding.error("not-yaml", place, message);
    }
}
