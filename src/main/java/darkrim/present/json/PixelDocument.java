package darkrim.present.json;

import com.fasterxml.jackson.annotation.JsonProperty;
import darkrim.layout.Layout;
import darkrim.scene.Warmth;
import darkrim.study.pixel.PixelSight;
import darkrim.study.pixel.PixelView;
import darkrim.study.pixel.SeenThing;
import darkrim.study.pixel.WarmLight;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** What pixels see as a JSON document; docs/pixel.schema.json describes it. Projected solid angles in sr, light of the beam as relative irradiance. */
record PixelDocument(
        int formatVersion,
        ProgramDocument program,
        FileDocument layout,
        long seed,
        boolean stopped,
        BandDocument warmBand,
        SearchDocument search,
        List<PointDocument> points) {

    /** Number of this format; it grows when a reader would have to change. */
    private static final int FORMAT = 1;

    static PixelDocument of(PixelView view, String version) {
        return new PixelDocument(
                FORMAT,
                ProgramDocument.of(version),
                FileDocument.of(view.layout()),
                view.seed(),
                view.stopped(),
                view.warmth()
                        .map(warmth -> BandDocument.of(
                                warmth, view.layout().warmth().orElseThrow().quantumEfficiency()))
                        .orElse(null),
                view.search().map(SearchDocument::of).orElse(null),
                view.sights().stream()
                        .map(sight -> PointDocument.of(sight, view.warmth().isPresent()))
                        .toList());
    }

    /** The layout file. */
    record FileDocument(String file, String sha256, String title, String revision) {
        static FileDocument of(Layout layout) {
            return new FileDocument(
                    layout.source().name(), layout.source().sha256(), layout.title(), layout.revision());
        }
    }

    /** The band of warm light. */
    record BandDocument(
            @JsonProperty("from_um") double from,
            @JsonProperty("to_um") double to,
            double quantumEfficiency) {
        static BandDocument of(Warmth warmth, double quantumEfficiency) {
            return new BandDocument(warmth.from(), warmth.to(), quantumEfficiency);
        }
    }

    /** How the worst pixel was looked for. */
    record SearchDocument(String by, int areas, int grid, int halvings, int tried, long raysEach) {
        static SearchDocument of(PixelView.Search search) {
            return new SearchDocument(
                    search.byWarmth() ? "warm_light" : "struck",
                    search.areas(),
                    search.grid(),
                    search.halvings(),
                    search.tried(),
                    search.raysEach());
        }
    }

    /** A point. */
    record PointDocument(
            String surface,
            double u,
            double v,
            String chosen,
            @JsonProperty("position_mm") List<Double> position,
            @JsonProperty("area_mm2") double area,
            boolean isPixel,
            long rays,
            @JsonProperty("exact_pupil_sr") double exactPupil,
            @JsonProperty("struck_sr") EstimateDocument struck,
            EstimateDocument onceReflected,
            WarmDocument warm,
            Double mostWarmPhotonsPerSecond,
            List<SeenDocument> seen) {
        static PointDocument of(PixelSight sight, boolean warm) {
            return new PointDocument(
                    sight.place().point().surface(),
                    sight.place().point().u(),
                    sight.place().point().v(),
                    sight.place().why().name().toLowerCase(Locale.ROOT),
                    Arrays.stream(sight.at().position().toArray()).boxed().toList(),
                    sight.area(),
                    sight.hasPixel(),
                    sight.rays(),
                    sight.exactPupil(),
                    EstimateDocument.of(sight.lit()),
                    EstimateDocument.of(sight.onceReflected()),
                    warm ? WarmDocument.of(sight.warm()) : null,
                    warm ? sight.mostPhotons() : null,
                    sight.things().stream()
                            .map(thing -> SeenDocument.of(thing, warm))
                            .toList());
        }
    }

    /** Warm light. */
    record WarmDocument(EstimateDocument photonsPerSecond, EstimateDocument watts) {
        static WarmDocument of(WarmLight light) {
            return new WarmDocument(EstimateDocument.of(light.photons()), EstimateDocument.of(light.watts()));
        }
    }

    /** One thing seen. */
    record SeenDocument(
            String kind,
            String name,
            long rays,
            @JsonProperty("projected_sr") EstimateDocument projected,
            @JsonProperty("struck_sr") EstimateDocument struck,
            EstimateDocument onceReflected,
            @JsonProperty("temperature_k") Double kelvin,
            WarmDocument emitted,
            WarmDocument reflected) {
        static SeenDocument of(SeenThing thing, boolean warm) {
            return new SeenDocument(
                    thing.kind().name().toLowerCase(Locale.ROOT),
                    thing.name(),
                    thing.rays(),
                    EstimateDocument.of(thing.seen()),
                    EstimateDocument.of(thing.lit()),
                    EstimateDocument.of(thing.onceReflected()),
                    EstimateDocument.finite(thing.kelvin()),
                    warm ? WarmDocument.of(thing.emitted()) : null,
                    warm ? WarmDocument.of(thing.reflected()) : null);
        }
    }
}
