package darkrim.cli;

import darkrim.diagnostic.UnusableInput;
import darkrim.layout.form.Wording;
import darkrim.present.AdviceReport;
import darkrim.present.json.JsonResult;
import darkrim.present.table.CheckTables;
import darkrim.study.LayoutFamily;
import darkrim.study.UnusableStudy;
import darkrim.study.advice.Advice;
import darkrim.study.advice.AdviceSettings;
import darkrim.study.advice.AdviceStudy;
import darkrim.study.advice.UnusableAdvice;
import darkrim.study.sweep.Variation;
import darkrim.study.sweep.VariationReader;
import darkrim.verdict.Verdict;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code darkrim advise}: what to change so that a layout passes. */
@Command(
        name = "advise",
        description = "Says which named dimension to change, and by how much, so that every requirement holds; what"
                + " each change does to the other requirements; and how black each finish must be.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        footerHeading = "%nExample:%n",
        footer = {
            "  java -jar target/darkrim.jar advise geometries/nightglow-a.yaml \\",
            "      --keep pupil_distance --keep die_spacing --json advice.json",
            "",
            "Dimensions that are formulas follow the others and are never changed by",
            "themselves.",
            "",
            "Exit codes:",
            "  0  every requirement holds, or values were found with which a full check",
            "     passes",
            "  1  no values were found with which the layout passes",
            "  2  the layout, an option or an output cannot be used; standard error says why",
            "  3  the work was stopped, or the full check of the values found leaves",
            "     something undecided",
            "  4  the program broke; standard error says what to report"
        })
final class AdviseCommand implements Callable<Integer>, LayoutCommand {
    private static final String RANGE = "expected 'NAME = LEAST to MOST'";

    private final Surroundings surroundings;

    @Option(
            names = "--keep",
            paramLabel = "NAME",
            order = -3,
            description = "A dimension that stays as it is; may be repeated.")
    private List<String> keep = new ArrayList<>();

    @Option(
            names = "--range",
            paramLabel = "'NAME = LEAST to MOST'",
            order = -2,
            description = "Values that a dimension may take, such as 'lid_thickness = 0.1 mm to 2 mm'; may be repeated."
                    + " A bare number is in the unit of the layout file. Default: an angle 15 deg either way, all else half"
                    + " of itself either way, a length at least 3 mm, but no nearer to 0 than a twentieth of itself.")
    private List<String> ranges = new ArrayList<>();

    @Option(names = "--json", paramLabel = "FILE", order = -1, description = "Also write the advice into this file.")
    private Path json;

    @Option(
            names = "--csv",
            paramLabel = "FILE",
            order = -1,
            description = "Also write the smallest changes into this file as comma-separated values.")
    private Path csv;

    @Mixin
    private LayoutOptions options;

    AdviseCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() {
        String version = Version.number();
        StudyOutputs<Advice> outputs = new StudyOutputs<>();
        outputs.addText(
                "--csv", csv, found -> CheckTables.advice(found, version).csv());
        outputs.addText("--json", json, found -> JsonResult.of(found, version));
        if (!outputs.areUsable(options, surroundings.errors())) {
            return ExitCode.UNUSABLE;
        }
        Advice advice;
        try {
            LayoutFamily family = LayoutFamily.of(options.layout()).shaped(options.effort());
            AdviceSettings settings = settings(family);
            advice = surroundings.watched(watch -> new AdviceStudy(family, settings, watch).run());
        } catch (UnusableInput unusable) {
            return Refusal.of(unusable.findings(), surroundings.errors());
        } catch (UnusableAdvice | UnusableStudy wrong) {
            surroundings.errors().println("darkrim: " + wrong.getMessage() + "; nothing was done.");
            return ExitCode.UNUSABLE;
        }
        surroundings.show(advice.before().warnings(), new AdviceReport(version, surroundings.ink()).of(advice));
        return outputs.write(advice, surroundings.errors()) ? code(advice) : ExitCode.UNUSABLE;
    }

    private AdviceSettings settings(LayoutFamily family) throws UnusableStudy {
        VariationReader reader = new VariationReader(family, RANGE);
        Map<String, AdviceSettings.Bounds> bounds = new LinkedHashMap<>();
        for (String range : ranges) {
            Variation read = reader.read(range);
            if (!read.isOpen()) {
                throw new UnusableStudy("'" + Wording.shortened(range) + "' is no range, " + RANGE + " without a step");
            }
            if (bounds.containsKey(read.dimension())) {
                throw new UnusableStudy("the range of '" + Wording.oneLine(read.dimension()) + "' is given twice");
            }
            bounds.put(
                    read.dimension(),
                    new AdviceSettings.Bounds(
                            read.from().doubleValue(), read.to().doubleValue()));
        }
        return new AdviceSettings(
                new HashSet<>(keep),
                bounds,
                options.effort().threads(),
                options.effort().seed(),
                options.effort().mostSamples());
    }

    private static int code(Advice advice) {
        Verdict then = advice.wanting().isEmpty()
                ? Verdict.PASS
                : advice.proposal()
                        .map(proposal -> proposal.check().judgement().verdict())
                        .orElse(advice.isOpenAlone() ? Verdict.UNDECIDED : Verdict.FAIL);
        return advice.stopped() ? ExitCode.UNDECIDED : ExitCode.of(then);
    }

    @Override
    public LayoutOptions options() {
        return options;
    }
}
