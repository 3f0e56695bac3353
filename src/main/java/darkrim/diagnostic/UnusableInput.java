package darkrim.diagnostic;

import java.util.List;
import java.util.stream.Collectors;

/** Thrown when what the user wrote cannot be used; carries every finding at once, sorted by place. */
public final class UnusableInput extends Exception {
    private static final long serialVersionUID = 1L;

    private final transient List<Finding> findings;

    /**
     * @param findings what is wrong, at least one of them an error
     */
    public UnusableInput(List<Finding> findings) {
        super(findings.stream().map(Finding::toString).collect(Collectors.joining("\n")));
        this.findings = List.copyOf(findings);
    }

    /** All findings, sorted by place. */
    public List<Finding> findings() {
        return findings;
    }
}
