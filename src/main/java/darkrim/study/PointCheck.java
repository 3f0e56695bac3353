package darkrim.study;

import darkrim.assembly.AssemblyMemory;
import darkrim.diagnostic.Finding;
import darkrim.diagnostic.Findings;
import darkrim.diagnostic.UnusableInput;
import darkrim.layout.Layout;
import darkrim.layout.Requirement;
import darkrim.verdict.Plan;
import darkrim.verdict.Watch;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentLinkedDeque;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Checks members of a family of layouts with the same random numbers and the same number of samples, so that what differs between two of them
 * comes from the geometry. A point gives the same bits wherever and whenever it is worked out: what is kept from point to point saves time
 * only. Safe for use by many threads, each point being worked out by the thread that asks.
 */
public final class PointCheck {
    private final LayoutFamily family;
    private final PointSettings settings;
    private final Effort effort;
    private final Plan plan;
    /** Those not in use; as many as there were points in work at once. */
    private final Deque<AssemblyMemory> memories = new ConcurrentLinkedDeque<>();

    /**
     * @param family the layouts
     * @param seed seed instead of the layout's
     * @param batches batches of samples that each number gets which sampling must decide
     */
    public PointCheck(LayoutFamily family, Optional<Long> seed, int batches) {
        this(family, seed, PointSettings.verdicts(batches));
    }

    /**
     * @param family the layouts
     * @param seed seed instead of the layout's
     * @param settings how a point is checked
     */
    public PointCheck(LayoutFamily family, Optional<Long> seed, PointSettings settings) {
        this.family = family;
        this.settings = settings;
        this.effort = new Effort(1, seed, Optional.of(Long.MAX_VALUE), settings.margins());
        this.plan = settings.plan();
    }

    /** How a point is checked. */
    public PointSettings settings() {
        return settings;
    }

    /** Seed instead of the layout's, if there is one. */
    public Optional<Long> seed() {
        return effort.seed();
    }

    /** The layouts. */
    public LayoutFamily family() {
        return family;
    }

    /**
     * Checks the layout as written.
     *
     * @throws UnusableInput with everything that is wrong with it
     */
    public CheckResult asWritten() throws UnusableInput {
        Findings findings = new Findings();
        return Check.of(family.with(Map.of(), findings), findings, effort, plan, Watch.NONE);
    }

    /**
     * Does what is asked of one of them.
     *
     * @throws IllegalArgumentException if the file does not define a name
     */
    public PointResult at(Point point) {
        if (point.marginOf().isEmpty()) {
            return at(point.chosen(), point.moved());
        }
        RequirementMargin margin = margin(point.chosen(), point.moved(), point.marginOf());
        return new PointResult(point.chosen(), margin.verdict(), List.of(), List.of(margin), "", margin.impossible());
    }

    /**
     * Checks one of them.
     *
     * @param chosen values by name, in mm, degrees or plain
     * @throws IllegalArgumentException if the file does not define a name
     */
    public PointResult at(Map<String, Double> chosen) {
        return at(chosen, Map.of());
    }

    /**
     * Checks one of them with some parts out of place.
     *
     * @param chosen values by name, in mm, degrees or plain
     * @param moved how far parts are from their place, by name of the part
     * @throws IllegalArgumentException if the file does not define a name
     */
    public PointResult at(Map<String, Double> chosen, Map<String, PartOffset> moved) {
        Findings findings = new Findings();
        try {
            Layout layout = family.with(chosen, moved, findings);
            CheckResult result = check(layout, findings);
            FigureReading reading = new FigureReading(result, settings.margins());
            return new PointResult(
                    chosen,
                    Optional.of(result.judgement().verdict()),
                    reading.all(),
                    settings.margins() == MarginScope.NONE ? List.of() : reading.margins(),
                    said(result.warnings().stream()
                            .filter(warning -> !family.warnings().contains(warning))),
                    "");
        } catch (UnusableInput impossible) {
            String why = reason(impossible);
            List<RequirementMargin> none = settings.margins() == MarginScope.NONE
                    ? List.of()
                    : family.written().requirements().stream()
                            .map(each -> RequirementMargin.impossible(each, why))
                            .toList();
            return new PointResult(chosen, Optional.empty(), List.of(), none, "", why);
        }
    }

    /**
     * Checks one requirement of one of them and measures its margin.
     *
     * @param chosen values by name, in mm, degrees or plain
     * @param moved how far parts are from their place, by name of the part
     * @param requirement name of the requirement
     * @throws IllegalArgumentException if the file does not define a name
     */
    public RequirementMargin margin(Map<String, Double> chosen, Map<String, PartOffset> moved, String requirement) {
        Requirement written = named(family.written(), requirement);
        Findings findings = new Findings();
        try {
            Layout whole = family.with(chosen, moved, findings);
            // What it asks may itself be reckoned from dimensions.
            CheckResult result = check(whole.withOnly(named(whole, requirement)), findings);
            return RequirementMargin.of(result.judgement().requirements().get(0), result.scene());
        } catch (UnusableInput impossible) {
            return RequirementMargin.impossible(written, reason(impossible));
        }
    }

    private static Requirement named(Layout layout, String requirement) {
        return layout.requirements().stream()
                .filter(each -> each.name().equals(requirement))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("there is no requirement '" + requirement + "'"));
    }

    private CheckResult check(Layout layout, Findings findings) throws UnusableInput {
        AssemblyMemory memory = Optional.ofNullable(memories.poll()).orElseGet(AssemblyMemory::new);
        try {
            return Check.of(layout, memory, findings, effort, plan, Watch.NONE);
        } finally {
            memories.push(memory);
        }
    }

    private static String reason(UnusableInput impossible) {
        return said(impossible.findings().stream().filter(finding -> finding.severity() == Finding.Severity.ERROR));
    }

    private static String said(Stream<Finding> findings) {
        return findings.map(Finding::toString).collect(Collectors.joining("; "));
    }
}
