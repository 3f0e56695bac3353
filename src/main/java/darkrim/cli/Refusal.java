package darkrim.cli;

import darkrim.diagnostic.Finding;
import java.io.PrintWriter;
import java.util.List;

/** Says what is wrong with a layout that cannot be used. */
final class Refusal {
    private Refusal() {}

    /**
     * Shows all findings and how many are errors.
     *
     * @return the exit code
     */
    static int of(List<Finding> findings, PrintWriter errors) {
        findings.forEach(errors::println);
        long count = findings.stream()
                .filter(finding -> finding.severity() == Finding.Severity.ERROR)
                .count();
        errors.println(
                "darkrim: " + count + (count == 1 ? " error" : " errors") + " in the layout; nothing was checked.");
        return ExitCode.UNUSABLE;
    }
}
