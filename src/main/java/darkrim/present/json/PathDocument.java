package darkrim.present.json;

import com.fasterxml.jackson.annotation.JsonProperty;
import darkrim.light.Estimate;
import darkrim.light.Reflector;
import darkrim.scene.Surface;
import darkrim.study.path.Incidences;
import darkrim.study.path.PathResult;
import darkrim.study.path.ReceiverPaths;
import darkrim.study.path.Spot;
import darkrim.study.path.TopPath;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/** Light paths as a JSON document; docs/paths.schema.json describes it. Lengths in mm, angles in degrees, light as relative irradiance. */
record PathDocument(
        int formatVersion,
        ProgramDocument program,
        String layout,
        String sha256,
        long seed,
        boolean stopped,
        int reflections,
        List<ReceiverDocument> receivers) {

    /** Number of this format; it grows when a reader would have to change. */
    private static final int FORMAT = 1;

    static PathDocument of(PathResult result, String version) {
        return new PathDocument(
                FORMAT,
                ProgramDocument.of(version),
                result.layout().source().name(),
                result.layout().source().sha256(),
                result.seed(),
                result.stopped(),
                result.settings().most(),
                result.receivers().stream()
                        .map(each -> ReceiverDocument.of(each, result.scene().reflecting()))
                        .toList());
    }

    /** A receiver with the light of each order, from 0. */
    record ReceiverDocument(
            String receiver,
            List<Value> orders,
            Value reflected,
            Value leftOut,
            Double furtherAbout,
            List<Path> paths) {
        private static ReceiverDocument of(ReceiverPaths each, List<Surface> surfaces) {
            OptionalDouble further = each.further();
            return new ReceiverDocument(
                    each.receiver().name(),
                    IntStream.rangeClosed(0, each.most())
                            .mapToObj(order -> Value.of(each.order(order)))
                            .toList(),
                    Value.of(each.reflected()),
                    Value.of(each.leftOut()),
                    further.isPresent() ? further.getAsDouble() : null,
                    each.strongest().stream()
                            .map(path -> Path.of(path, surfaces))
                            .toList());
        }
    }

    /** A sampled mean. */
    record Value(double mean, Double standardError, long samples) {
        private static Value of(Estimate estimate) {
            return new Value(estimate.mean(), EstimateDocument.finite(estimate.standardError()), estimate.samples());
        }
    }

    /** A path. */
    record Path(
            String kind,
            List<Reflection> via,
            Value irradiance,
            double share,
            SpotDocument brightestOnReceiver,
            SpotDocument brightestOnLastSurface,
            @JsonProperty("line_mm") List<List<Double>> line) {
        private static Path of(TopPath path, List<Surface> surfaces) {
            List<Reflection> via = new ArrayList<>();
            for (int i = 0; i < path.path().order(); i++) {
                via.add(Reflection.of(
                        path.path().reflectors().get(i), path.incidences().get(i), surfaces));
            }
            return new Path(
                    path.path().isGlint() ? "glint" : "diffuse",
                    via,
                    Value.of(path.irradiance()),
                    path.share(),
                    SpotDocument.of(path.onReceiver()),
                    SpotDocument.of(path.onLast()),
                    path.example().stream().map(EvidenceDocument::point).toList());
        }
    }

    /** A reflection on a surface. */
    record Reflection(
            String surface,
            String by,
            @JsonProperty("incidence_deg") double incidence,
            @JsonProperty("least_incidence_deg") double leastIncidence,
            @JsonProperty("greatest_incidence_deg") double greatestIncidence) {
        private static Reflection of(Reflector reflector, Incidences incidences, List<Surface> surfaces) {
            return new Reflection(
                    surfaces.get(reflector.surface()).name(),
                    reflector.part().word(),
                    incidences.mean(),
                    incidences.least(),
                    incidences.most());
        }
    }

    /** Where a path's light is densest. */
    record SpotDocument(
            @JsonProperty("at_mm") List<Double> at,
            double share,
            @JsonProperty("area_mm2") double area) {
        private static SpotDocument of(Spot spot) {
            return new SpotDocument(EvidenceDocument.point(spot.centre()), spot.share(), spot.area());
        }
    }
}
