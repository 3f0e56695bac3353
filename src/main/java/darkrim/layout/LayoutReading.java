package darkrim.layout;

import darkrim.diagnostic.Finding;
import java.util.List;
import java.util.Optional;

/**
 * What came of reading a layout file.
 *
 * @param layout the layout; empty where the text could not be read at all. Where there are errors it is partial: parts, finishes and
 *     requirements with errors are left out, so that what is left can still be checked for further errors, but nothing may be computed
 *     from it
 * @param partsComplete whether every part of the file is in the layout: only then is a selection without a match an error of its own
 * @param findings everything found, sorted by place
 */
public record LayoutReading(Optional<Layout> layout, boolean partsComplete, List<Finding> findings) {
    /** Copies the list. */
    public LayoutReading {
        findings = List.copyOf(findings);
    }

    /** Whether anything found is an error: then the layout is not to be used. */
    public boolean hasErrors() {
        return findings.stream().anyMatch(finding -> finding.severity() == Finding.Severity.ERROR);
    }
}
