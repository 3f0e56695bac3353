package darkrim.layout.mesh;

import darkrim.layout.form.Wording;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Turns what the text readers of Commons Geometry say of a file into a fault with its place. */
final class ParserMessage {
    private static final Pattern PLACE =
            Pattern.compile("Parsing failed at line (\\d{1,9}), column (\\d{1,9}): (.*)", Pattern.DOTALL);

    private ParserMessage() {}

    /**
     * The fault that an exception tells of.
     *
     * @param linesBefore lines of the file before the text that was read
     */
    static MeshFault fault(IllegalStateException problem, int linesBefore) {
        Matcher place = PLACE.matcher(String.valueOf(problem.getMessage()));
        if (place.matches()) {
            return new MeshFault(
                    "mesh-form",
                    linesBefore + Integer.parseInt(place.group(1)),
                    Integer.parseInt(place.group(2)),
                    Wording.shortened(place.group(3).replace(" must evaluate to be within", " must lie within")));
        }
        return new MeshFault("mesh-form", Wording.shortened(String.valueOf(problem.getMessage())));
    }
}
