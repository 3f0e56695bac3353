package darkrim.present.json;

import com.fasterxml.jackson.annotation.JsonProperty;
import darkrim.verdict.Evidence;
import java.util.List;
import java.util.Locale;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** Evidence, told apart by its kind. */
sealed interface EvidenceDocument {
    static EvidenceDocument of(Evidence evidence) {
        if (evidence instanceof Evidence.ProvedDark dark) {
            return new Dark(
                    "proved_dark",
                    dark.gapWidth(),
                    dark.clearance().map(MarginDocument::of).orElse(null));
        }
        if (evidence instanceof Evidence.DarkBehindFacets dark) {
            return new Dark(
                    "dark_behind_facets",
                    dark.gapWidth(),
                    dark.clearance().map(MarginDocument::of).orElse(null));
        }
        if (evidence instanceof Evidence.WitnessRay ray) {
            return new Ray(
                    "ray",
                    point(ray.onPupil()),
                    point(ray.onSurface()),
                    ray.length(),
                    ray.intrusion().map(MarginDocument::of).orElse(null));
        }
        if (evidence instanceof Evidence.OpenArea open) {
            return new OpenArea("open_area", open.area(), open.fraction());
        }
        if (evidence instanceof Evidence.ExactShare share) {
            return new Share(
                    "pupil_share",
                    share.atLeast(),
                    share.atMost(),
                    share.lowest().map(EvidenceDocument::point).orElse(null),
                    share.hiddenBy());
        }
        if (evidence instanceof Evidence.ProvedBound bound) {
            return new Bound("proved_bound", bound.atMost());
        }
        if (evidence instanceof Evidence.Distance distance) {
            return new Distance(
                    "distance",
                    distance.millimetres(),
                    distance.shape().name().toLowerCase(Locale.ROOT),
                    distance.first(),
                    point(distance.onFirst()),
                    distance.second(),
                    point(distance.onSecond()),
                    distance.raised().isPresent() ? distance.raised().getAsDouble() : null,
                    distance.overlap(),
                    distance.takenOff());
        }
        Evidence.Sampled sampled = (Evidence.Sampled) evidence;
        return new Sampled(
                "sampled",
                EstimateDocument.of(sampled.estimate()),
                EstimateDocument.finite(sampled.lower()),
                EstimateDocument.finite(sampled.upper()),
                sampled.risk(),
                sampled.looks());
    }

    /** Coordinates, mm. */
    static List<Double> point(Vector3D point) {
        return List.of(point.getX(), point.getY(), point.getZ());
    }

    /** No light, by proof, or behind the facets. */
    record Dark(String kind, @JsonProperty("closed_gap_mm") double closedGap, MarginDocument clearance)
            implements EvidenceDocument {}

    /** A straight line that carries light. */
    record Ray(
            String kind,
            @JsonProperty("on_pupil_mm") List<Double> onPupil,
            @JsonProperty("on_surface_mm") List<Double> onSurface,
            @JsonProperty("length_mm") double length,
            MarginDocument shadowMargin)
            implements EvidenceDocument {}

    /** Neither proof nor ray. */
    record OpenArea(String kind, @JsonProperty("area_mm2") double area, double fraction) implements EvidenceDocument {}

    /** What share of the pupil every point sees. */
    record Share(
            String kind,
            double atLeast,
            double atMost,
            @JsonProperty("lowest_mm") List<Double> lowest,
            List<String> hiddenBy)
            implements EvidenceDocument {}

    /** An upper bound of once-reflected light, by proof. */
    record Bound(String kind, double atMost) implements EvidenceDocument {}

    /** How far two sides are apart. */
    record Distance(
            String kind,
            @JsonProperty("mm") double millimetres,
            String shape,
            String first,
            @JsonProperty("on_first_mm") List<Double> onFirst,
            String second,
            @JsonProperty("on_second_mm") List<Double> onSecond,
            @JsonProperty("before_the_end_of_the_way_mm") Double raised,

            boolean overlap,
            @JsonProperty("taken_off_mm") double takenOff)
            implements EvidenceDocument {}

    /** A mean with bounds. */
    record Sampled(String kind, EstimateDocument estimate, Double lower, Double upper, double risk, int looks)
            implements EvidenceDocument {}
}
