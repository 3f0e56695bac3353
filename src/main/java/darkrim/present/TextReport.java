package darkrim.present;

import darkrim.study.CheckResult;

/**
 * A result as plain text, at most 100 columns wide where names allow it; our own words are ASCII.
 *
 * @param version version of the program
 * @param ink whether verdicts are coloured
 * @param everything whether long lists are shown whole
 */
public record TextReport(String version, Ink ink, boolean everything) {
    /** The report, lines ended by a line feed. */
    public String of(CheckResult result) {
        Page page = new Page();
        HeadSection.write(page, result, version, ink);
        FeasibilitySection.write(page, result.feasibility(), everything);
        RequirementSection.write(page, result, ink);
        EvidenceSection.write(page, result, everything);
        MarginSection.write(page, result, everything);
        CooldownSection.write(page, result, ink, everything);
        SurfaceSection.write(page, result, everything);
        LightPathSection.write(page, result, everything);
        NoteSection.write(page, result);
        return page.text();
    }
}
