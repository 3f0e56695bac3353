package darkrim.present.json;

import com.fasterxml.jackson.annotation.JsonProperty;
import darkrim.light.Estimate;
import darkrim.light.Tally;
import darkrim.scene.CellGrid;
import darkrim.scene.Finish;
import darkrim.scene.Surface;
import darkrim.verdict.SurfaceResult;
import java.util.List;

/** A surface with the light it gets. */
record SurfaceDocument(
        String name,
        PlaceDocument place,
        FinishDocument finish,
        @JsonProperty("area_mm2") double area,
        EstimateDocument direct,
        EstimateDocument onceReflected,
        Double onceReflectedAtMost,
        EstimateDocument pupilSeen,
        EvidenceDocument darkness,
        Map map) {

    static SurfaceDocument of(SurfaceResult result) {
        Surface surface = result.surface();
        Estimate seen = result.direct().pupilSeen();
        return new SurfaceDocument(
                surface.name(),
                PlaceDocument.of(surface.place()),
                FinishDocument.of(surface.finish()),
                surface.area(),
                EstimateDocument.of(result.direct().irradiance()),
                EstimateDocument.of(result.onceReflected().irradiance()),
                result.mostReflected().isPresent() ? result.mostReflected().getAsDouble() : null,
                seen.samples() == 0 ? null : EstimateDocument.of(seen),
                result.darkness().map(EvidenceDocument::of).orElse(null),
                surface.grid().map(grid -> Map.of(grid, result)).orElse(null));
    }

    /** How the surface reflects. */
    record FinishDocument(
            String name,
            double diffuse,
            double mirror,
            @JsonProperty("at_80_deg") double atEighty) {
        private static final double EIGHTY = StrictMath.cos(Math.toRadians(80));

        private static FinishDocument of(Finish finish) {
            return new FinishDocument(
                    finish.name(),
                    finish.diffuse(),
                    finish.mirror(),
                    finish.reflection().reflectance(EIGHTY));
        }
    }

    /** A map of the surface: cells row by row, from the corner at the origin along the first side. */
    record Map(
            int columns,
            int rows,
            @JsonProperty("origin_mm") List<Double> origin,
            @JsonProperty("along_columns_mm") List<Double> alongColumns,
            @JsonProperty("along_rows_mm") List<Double> alongRows,
            Cells direct,
            Cells onceReflected) {
        private static Map of(CellGrid grid, SurfaceResult result) {
            return new Map(
                    grid.columns(),
                    grid.rows(),
                    EvidenceDocument.point(grid.origin()),
                    EvidenceDocument.point(grid.alongU()),
                    EvidenceDocument.point(grid.alongV()),
                    Cells.of(result.direct()),
                    Cells.of(result.onceReflected()));
        }
    }

    /** One value a cell. */
    record Cells(List<Double> mean, List<Double> standardError, List<Long> samples) {
        private static Cells of(Tally tally) {
            List<EstimateDocument> cells =
                    tally.cells().stream().map(EstimateDocument::of).toList();
            // A plain list, since unknown values are null.
            List<Double> mean = new java.util.ArrayList<>();
            List<Double> error = new java.util.ArrayList<>();
            cells.forEach(cell -> {
                mean.add(cell.mean());
                error.add(cell.standardError());
            });
            return new Cells(
                    mean, error, cells.stream().map(EstimateDocument::samples).toList());
        }
    }
}
