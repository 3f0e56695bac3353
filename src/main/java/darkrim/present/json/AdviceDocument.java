package darkrim.present.json;

import darkrim.study.MarginUnit;
import darkrim.study.RequirementMargin;
import darkrim.study.advice.Advice;
import darkrim.study.advice.Blackness;
import darkrim.study.advice.Exclusion;
import darkrim.study.advice.FreeDimension;
import darkrim.study.advice.Nearest;
import darkrim.study.advice.Proposal;
import darkrim.study.advice.Slope;
import darkrim.study.advice.SmallestChange;
import darkrim.verdict.Verdict;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Advice as a JSON document; docs/advice.schema.json describes it. Lengths in mm, angles in degrees, light as relative irradiance. */
record AdviceDocument(
        int formatVersion,
        ProgramDocument program,
        String layout,
        String sha256,
        long seed,
        boolean stopped,
        List<Range> dimensions,
        List<Margin> margins,
        ProposalDocument proposal,
        NearestDocument nearest,
        List<String> excludeEachOther,
        List<Change> smallestChanges,
        List<String> undecidedInFull,
        List<SlopeDocument> slopes,
        List<Black> blackness) {

    /** Number of this format; it grows when a reader would have to change. */
    private static final int FORMAT = 1;

    static AdviceDocument of(Advice advice, String version) {
        return new AdviceDocument(
                FORMAT,
                ProgramDocument.of(version),
                advice.before().layout().source().name(),
                advice.before().layout().source().sha256(),
                advice.before().effort().seed(),
                advice.stopped(),
                advice.dimensions().stream().map(Range::of).toList(),
                advice.margins().stream().map(Margin::of).toList(),
                advice.proposal().map(ProposalDocument::of).orElse(null),
                advice.nearest().map(NearestDocument::of).orElse(null),
                advice.exclusion().map(AdviceDocument::names).orElse(null),
                advice.changes().stream().map(Change::of).toList(),
                advice.open(),
                advice.slopes().stream().map(SlopeDocument::of).toList(),
                advice.blackness().stream().map(Black::of).toList());
    }

    private static List<String> names(Exclusion exclusion) {
        return exclusion.single() ? List.of(exclusion.one()) : List.of(exclusion.one(), exclusion.other());
    }

    private static String symbol(MarginUnit unit) {
        return unit == MarginUnit.MILLIMETRES ? "mm" : "relative_irradiance";
    }

    /** What may change. */
    record Range(String name, String unit, double value, double least, double most, double tolerance) {
        static Range of(FreeDimension each) {
            return new Range(each.name(), each.unit(), each.value(), each.least(), each.most(), each.scale());
        }
    }

    /** A margin. */
    record Margin(
            String requirement,
            String verdict,
            Double margin,
            boolean capped,
            Double standardError,
            String unit,
            String where) {
        static Margin of(RequirementMargin each) {
            return new Margin(
                    each.requirement(),
                    RequirementDocument.word(each.verdict().orElse(Verdict.FAIL)),
                    EstimateDocument.finite(each.margin()),
                    each.isBound(),
                    EstimateDocument.finite(each.standardError()),
                    symbol(each.unit()),
                    each.where());
        }
    }

    /** Values that fulfil all. */
    record ProposalDocument(Map<String, Double> values, double scaledChange, String verdict, List<Margin> margins) {
        static ProposalDocument of(Proposal proposal) {
            return new ProposalDocument(
                    proposal.values(),
                    proposal.scaledChange(),
                    proposal.check().judgement().verdict().name().toLowerCase(Locale.ROOT),
                    proposal.margins().stream().map(Margin::of).toList());
        }
    }

    /** Values that come nearest. */
    record NearestDocument(Map<String, Double> values, List<String> failing) {
        static NearestDocument of(Nearest nearest) {
            return new NearestDocument(nearest.values(), nearest.failing());
        }
    }

    /** A change of one dimension. */
    record Change(String requirement, String dimension, double from, double to, List<Margin> effects) {
        static Change of(SmallestChange each) {
            return new Change(
                    each.requirement(),
                    each.dimension(),
                    each.from(),
                    each.to(),
                    each.effects().stream().map(Margin::of).toList());
        }
    }

    /** A slope. */
    record SlopeDocument(String requirement, String dimension, Double perUnit, double standardError, String unit) {
        static SlopeDocument of(Slope each) {
            return new SlopeDocument(
                    each.requirement(),
                    each.dimension(),
                    EstimateDocument.finite(each.perUnit()),
                    each.standardError(),
                    symbol(each.unit()));
        }
    }

    /** How black. */
    record Black(
            String requirement,
            String finish,
            double reflectance,
            Double failsAbove,
            Double low,
            Double high,
            double share,
            String where) {
        static Black of(Blackness each) {
            return new Black(
                    each.requirement(),
                    each.finish(),
                    each.reflectance(),
                    EstimateDocument.finite(each.most()),
                    EstimateDocument.finite(each.low()),
                    EstimateDocument.finite(each.high()),
                    each.share(),
                    each.where());
        }
    }
}
