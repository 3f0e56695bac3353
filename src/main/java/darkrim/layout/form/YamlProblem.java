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

    private static final Pattern MISPLACED = Pattern.compile("^expected .*found '<?(.+?)>?'$");

    private YamlProblem() {}

    static Finding finding(String file, MarkedYamlEngineException problem) {
        Place found = YamlTree.place(file, problem.getProblemMark().or(problem::getContextMark));
        Place begun = YamlTree.place(file, problem.getContextMark().or(problem::getProblemMark));
        String context = String.valueOf(problem.getContext());
        String what = Wording.oneLine(String.valueOf(problem.getProblem()).strip());
        String since = " that opens at line " + begun.line() + ", column " + begun.column();
        if (what.contains("TAB")) {
            return error(found, "a tab stands where only spaces may indent, expected spaces");
        }
        if (context.contains("flow mapping")) {
            return error(found, "the brace {" + since + " is not closed, expected } or a comma before this place");
        }
        if (context.contains("flow sequence")) {
            return error(found, "the bracket [" + since + " is not closed, expected ] or a comma before this place");
        }
        if (context.contains("quoted scalar") && what.contains("end of")) {
            return error(begun, "the quotation mark here is never closed, expected another at the end of the text");
        }
        if (context.contains("simple key")) {
            return error(begun, "a colon and a value are missing after the key, expected 'key: value'");
        }
        if (context.contains("block") && INDENTED.matcher(what).find()) {
            return error(
                    found,
                    "this line is indented differently from those since line " + begun.line() + ", expected the same");
        }
        Matcher misplaced = MISPLACED.matcher(what);
        return error(
                found,
                "the text is not YAML: "
                        + (misplaced.find() ? "'" + misplaced.group(1) + "' has no place here" : what)
                        + ", expected keys and values; quotation marks around a text take it as it stands");
    }

    private static Finding error(Place place, String message) {
        return Finding.error("not-yaml", place, message);
    }
}
