package darkrim.present.json;

import com.fasterxml.jackson.annotation.JsonProperty;
import darkrim.assembly.Feasibility;
import darkrim.diagnostic.Finding;
import darkrim.layout.Dimension;
import darkrim.layout.Layout;
import darkrim.present.Cautions;
import darkrim.present.LightPath;
import darkrim.scene.Beam;
import darkrim.study.CheckResult;
import darkrim.study.DirectMargins;
import darkrim.verdict.Judgement;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** The whole of a result. Only {@code timing} differs between runs of the same layout with the same seed. */
record ResultDocument(
        int formatVersion,
        ProgramDocument program,
        LayoutDocument layout,
        String verdict,
        Sampling sampling,
        BeamDocument beam,
        List<RequirementDocument> requirements,
        List<FeasibilityDocument> feasibility,
        Margins margins,
        CooldownDocument cooldown,
        List<String> infeasibleOpenings,
        List<SurfaceDocument> surfaces,
        List<LightPathDocument> lightPaths,
        List<Warning> warnings,
        @JsonProperty("chord_error_mm") double chordError,
        List<String> notModelled,
        List<String> cautions,
        Timing timing) {
    private static final int FORMAT_VERSION = 1;

    static ResultDocument of(CheckResult result, String version) {
        Judgement judgement = result.judgement();
        return new ResultDocument(
                FORMAT_VERSION,
                ProgramDocument.of(version),
                LayoutDocument.of(result.layout()),
                RequirementDocument.word(judgement.verdict()),
                Sampling.of(result),
                BeamDocument.of(result),
                judgement.requirements().stream().map(RequirementDocument::of).toList(),
                result.feasibility().stream().map(FeasibilityDocument::of).toList(),
                Margins.of(result.margins()),
                result.cooldown().map(CooldownDocument::of).orElse(null),
                result.feasibility().stream()
                        .filter(Feasibility::fails)
                        .map(Feasibility::opening)
                        .toList(),
                judgement.surfaces().stream().map(SurfaceDocument::of).toList(),
                judgement.surfaces().stream()
                        .flatMap(surface -> LightPath.to(surface, result.scene().surfaces()).stream())
                        .map(LightPathDocument::of)
                        .toList(),
                result.warnings().stream().map(Warning::of).toList(),
                result.chordError(),
                Cautions.NOT_MODELLED,
                Cautions.CAUTIONS,
                new Timing(
                        result.timing().proofs(),
                        result.timing().margins(),
                        result.timing().whole()));
    }

    /** What was checked. */
    record LayoutDocument(
            String file,
            String sha256,
            String title,
            String revision,
            String shape,
            @JsonProperty("temperature_k") Double temperature,
            Map<String, DimensionDocument> dimensions) {
        static LayoutDocument of(Layout layout) {
            Map<String, DimensionDocument> dimensions = new LinkedHashMap<>();
            layout.dimensions().forEach((name, dimension) -> dimensions.put(name, DimensionDocument.of(dimension)));
            String hash = layout.source().sha256();
            return new LayoutDocument(
                    layout.source().name(),
                    hash.isEmpty() ? null : hash,
                    layout.title(),
                    layout.revision(),
                    ResultDocument.shape(layout),
                    layout.temperature().orElse(null),
                    dimensions);
        }
    }

    /** The shape of a layout that is cooled; null for another. */
    static String shape(Layout layout) {
        return layout.cooldown()
                .map(each -> each.shape().name().toLowerCase(Locale.ROOT))
                .orElse(null);
    }

    /** A named dimension, in mm, in degrees, or a plain number. */
    record DimensionDocument(double value, String unit) {
        private static DimensionDocument of(Dimension dimension) {
            String unit = switch (dimension.kind()) {
                case LENGTH -> "mm";
                case ANGLE -> "deg";
                case NUMBER -> "1";
            };
            return new DimensionDocument(dimension.value(), unit);
        }
    }

    /** How hard it was looked, and how sure the verdicts are. */
    record Sampling(long seed, double confidence, long mostSamples, long samples, boolean stopped) {
        private static Sampling of(CheckResult result) {
            return new Sampling(
                    result.effort().seed(),
                    result.effort().confidence(),
                    result.effort().mostSamples(),
                    result.judgement().samples(),
                    result.judgement().stopped());
        }
    }

    /** What turns relative irradiance into W/m2, where the radiance is known. */
    record BeamDocument(
            @JsonProperty("reference_irradiance_over_radiance_sr")
            double reference,

            @JsonProperty("radiance_w_per_m2_sr") Double radiance,

            @JsonProperty("relative_irradiance_1_is_w_per_m2")
            Double unit) {
        private static BeamDocument of(CheckResult result) {
            Beam beam = result.scene().beam();
            double reference = result.scene().referenceIrradiance();
            Double radiance = beam.radiance().isPresent() ? beam.radiance().getAsDouble() : null;
            return new BeamDocument(reference, radiance, radiance == null ? null : radiance * reference);
        }
    }

    /** Which margins of direct light were looked for, and those of the openings; those of surfaces stand with their evidence. */
    record Margins(String which, boolean stopped, List<OpeningDocument> openings) {
        private static Margins of(DirectMargins margins) {
            return new Margins(
                    margins.scope().name().toLowerCase(Locale.ROOT),
                    margins.stopped(),
                    margins.openings().stream().map(OpeningDocument::of).toList());
        }
    }

    /** What deserves attention in the layout. */
    record Warning(String code, String severity, PlaceDocument place, String message) {
        static Warning of(Finding finding) {
            return new Warning(
                    finding.code(),
                    finding.severity().name().toLowerCase(Locale.ROOT),
                    PlaceDocument.of(finding.place()),
                    finding.message());
        }
    }

    /** How long it took. */
    record Timing(
            @JsonProperty("proofs_s") double proofs,
            @JsonProperty("margins_s") double margins,
            @JsonProperty("whole_s") double whole) {}
}
