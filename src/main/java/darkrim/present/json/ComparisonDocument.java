package darkrim.present.json;

import com.fasterxml.jackson.annotation.JsonProperty;
import darkrim.layout.Dimension;
import darkrim.layout.FinishSpec;
import darkrim.layout.Layout;
import darkrim.study.comparison.Changed;
import darkrim.study.comparison.Comparison;
import darkrim.study.comparison.PartChange;
import darkrim.study.comparison.PathChange;
import darkrim.study.comparison.RequirementChange;
import darkrim.study.comparison.SurfaceChange;
import java.util.List;
import java.util.Locale;

/** A comparison as a JSON document; docs/comparison.schema.json describes it. Lengths in mm, angles in degrees, light as relative irradiance. */
record ComparisonDocument(
        int formatVersion,
        ProgramDocument program,
        FileDocument before,
        FileDocument after,
        long seed,
        boolean stopped,
        String judgement,
        List<RequirementPair> requirements,
        List<DimensionPair> dimensions,
        List<FinishPair> finishes,
        List<String> partsNew,
        List<String> partsGone,
        List<PartDifference> partsChanged,
        List<SettingPair> beam,
        List<SettingPair> others,
        List<SurfaceDifference> surfaces,
        int pathsCompared,
        List<PathDifference> paths) {

    /** Number of this format; it grows when a reader would have to change. */
    private static final int FORMAT = 1;

    static ComparisonDocument of(Comparison comparison, String version) {
        return new ComparisonDocument(
                FORMAT,
                ProgramDocument.of(version),
                FileDocument.of(comparison.before().layout()),
                FileDocument.of(comparison.after().layout()),
                comparison.before().effort().seed(),
                comparison.stopped(),
                word(comparison.judgement()),
                comparison.requirements().stream().map(RequirementPair::of).toList(),
                comparison.dimensions().stream().map(DimensionPair::of).toList(),
                comparison.finishes().stream().map(FinishPair::of).toList(),
                comparison.partsAdded(),
                comparison.partsGone(),
                comparison.partsChanged().stream().map(PartDifference::of).toList(),
                comparison.beam().stream().map(SettingPair::of).toList(),
                comparison.others().stream().map(SettingPair::of).toList(),
                comparison.surfaces().stream().map(SurfaceDifference::of).toList(),
                comparison.paths().size(),
                comparison.paths().stream()
                        .filter(path -> path.kind() != PathChange.Kind.ALIKE)
                        .map(PathDifference::of)
                        .toList());
    }

    private static String word(Enum<?> word) {
        return word.name().toLowerCase(Locale.ROOT);
    }

    /** A layout file. */
    record FileDocument(String layout, String sha256, String title, String revision, String shape) {
        static FileDocument of(Layout layout) {
            return new FileDocument(
                    layout.source().name(),
                    layout.source().sha256(),
                    layout.title(),
                    layout.revision(),
                    ResultDocument.shape(layout));
        }
    }

    /** A requirement. */
    record RequirementPair(
            String name,
            String judgement,
            boolean asksTheSame,
            AdviceDocument.Margin before,
            AdviceDocument.Margin after) {
        static RequirementPair of(RequirementChange each) {
            return new RequirementPair(
                    each.name(),
                    word(each.judgement()),
                    each.alike(),
                    each.before().map(AdviceDocument.Margin::of).orElse(null),
                    each.after().map(AdviceDocument.Margin::of).orElse(null));
        }
    }

    /** A dimension. */
    record DimensionPair(String name, Double before, Double after) {
        static DimensionPair of(Changed<Dimension> each) {
            return new DimensionPair(
                    each.name(),
                    each.before().map(Dimension::value).orElse(null),
                    each.after().map(Dimension::value).orElse(null));
        }
    }

    /** A finish. */
    record FinishPair(String name, FinishDocument before, FinishDocument after) {
        static FinishPair of(Changed<FinishSpec> each) {
            return new FinishPair(
                    each.name(),
                    each.before().map(FinishDocument::of).orElse(null),
                    each.after().map(FinishDocument::of).orElse(null));
        }
    }

    /** How a finish reflects, and its emissivity where that is stated. */
    record FinishDocument(double diffuse, double mirror, Double emissivity) {
        static FinishDocument of(FinishSpec each) {
            return new FinishDocument(
                    each.diffuse(), each.mirror(), each.emissivity().orElse(null));
        }
    }

    /** What else differs, in words. */
    record SettingPair(String name, String before, String after) {
        static SettingPair of(Changed<String> each) {
            return new SettingPair(
                    each.name(), each.before().orElse(null), each.after().orElse(null));
        }
    }

    /** A part in both whose surfaces differ. */
    record PartDifference(String name, int surfacesChanged, int surfacesNew, int surfacesGone) {
        static PartDifference of(PartChange each) {
            return new PartDifference(each.name(), each.changed(), each.added(), each.gone());
        }
    }

    /** A surface. */
    record SurfaceDifference(
            String name,
            @JsonProperty("area_before_mm2") Double areaBefore,
            @JsonProperty("area_after_mm2") Double areaAfter,
            @JsonProperty("moved_mm") Double moved,
            @JsonProperty("corner_moved_mm") Double cornerMoved,
            String finishBefore,
            String finishAfter) {
        static SurfaceDifference of(SurfaceChange each) {
            return new SurfaceDifference(
                    each.name(),
                    each.added() ? null : each.areaBefore(),
                    each.gone() ? null : each.areaAfter(),
                    EstimateDocument.finite(each.moved()),
                    EstimateDocument.finite(each.cornerMoved()),
                    each.added() ? null : each.finishBefore(),
                    each.gone() ? null : each.finishAfter());
        }
    }

    /** A light path that differs. */
    record PathDifference(
            String kind,
            String receiver,
            String via,
            String by,
            double before,
            double beforeStandardError,
            double after,
            double afterStandardError,
            double difference,
            double differenceStandardError,
            double chance) {
        static PathDifference of(PathChange each) {
            return new PathDifference(
                    word(each.kind()),
                    each.receiver(),
                    each.via(),
                    each.part().word(),
                    each.before(),
                    each.errorBefore(),
                    each.after(),
                    each.errorAfter(),
                    each.difference(),
                    each.error(),
                    each.chance());
        }
    }
}
