package darkrim.present.json;

import com.fasterxml.jackson.annotation.JsonProperty;
import darkrim.scene.Surface;
import darkrim.study.star.AvoidanceZone;
import darkrim.study.star.NamedStar;
import darkrim.study.star.StarCell;
import darkrim.study.star.StarPosition;
import darkrim.study.star.StarScanResult;
import java.util.List;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/** The whole of a star scan; lengths in mm, shares of the star's flux. */
record StarScanDocument(
        int formatVersion,
        String study,
        ProgramDocument program,
        ResultDocument.LayoutDocument layout,
        long seed,
        double confidence,
        double level,
        @JsonProperty("focus_height_mm") double focusHeight,
        @JsonProperty("region_mm") List<Double> region,
        List<String> receivers,
        boolean stopped,
        boolean refined,
        boolean beyond,
        Zone avoidanceZone,
        List<Star> stars,
        List<Cell> cells,
        List<ResultDocument.Warning> warnings) {
    private static final int FORMAT_VERSION = 2;

    static StarScanDocument of(StarScanResult result, String version) {
        return new StarScanDocument(
                FORMAT_VERSION,
                "star-scan",
                ProgramDocument.of(version),
                ResultDocument.LayoutDocument.of(result.layout()),
                result.seed(),
                result.bound().confidence(),
                result.settings().level(),
                result.settings().focusHeight(),
                List.of(
                        result.region().fromX(),
                        result.region().fromY(),
                        result.region().toX(),
                        result.region().toY()),
                result.receivers().stream().map(Surface::name).toList(),
                result.stopped(),
                result.refined(),
                result.beyond(),
                Zone.of(result.zone()),
                result.named().stream().map(each -> Star.of(each, result)).toList(),
                result.cells().stream().map(each -> Cell.of(each, result)).toList(),
                result.warnings().stream().map(ResultDocument.Warning::of).toList());
    }

    /** Where the level is, or may be, exceeded. */
    record Zone(@JsonProperty("area_mm2") double area, List<Piece> pieces) {
        private static Zone of(AvoidanceZone zone) {
            return new Zone(zone.area(), zone.areas().stream().map(Piece::of).toList());
        }
    }

    /** A piece of the zone: corners [x, y] of its outline, and of each hole. */
    record Piece(
            @JsonProperty("outline_mm") List<List<Double>> outline,
            @JsonProperty("holes_mm") List<List<List<Double>>> holes) {
        private static Piece of(AvoidanceZone.Area area) {
            return new Piece(
                    corners(area.outline()),
                    area.holes().stream().map(Piece::corners).toList());
        }

        private static List<List<Double>> corners(List<Vector2D> ring) {
            return ring.stream()
                    .map(corner -> List.of(corner.getX(), corner.getY()))
                    .toList();
        }
    }

    /** A star of the layout. */
    record Star(
            String name,
            @JsonProperty("x_mm") double x,
            @JsonProperty("y_mm") double y,
            @JsonProperty("focus_height_mm") double focusHeight,
            @JsonProperty("flux_w") Double flux,
            double share,
            double standardError,
            double atMost,
            long samples) {
        private static Star of(NamedStar each, StarScanResult result) {
            return new Star(
                    each.star().name(),
                    each.star().focus().getX(),
                    each.star().focus().getY(),
                    each.star().focus().getZ(),
                    each.star().flux().orElse(null),
                    each.tally().total().mean(),
                    each.tally().total().standardError(),
                    result.bound().upper(each),
                    each.tally().samples());
        }
    }

    /** A square of positions by its middle, with what was looked at in it. */
    record Cell(
            @JsonProperty("x_mm") double x,
            @JsonProperty("y_mm") double y,
            @JsonProperty("width_mm") double width,
            boolean proved,
            List<Position> positions) {
        private static Cell of(StarCell cell, StarScanResult result) {
            return new Cell(
                    cell.x(),
                    cell.y(),
                    cell.width(),
                    cell.proved(),
                    cell.positions().stream()
                            .map(each -> Position.of(each, result))
                            .toList());
        }
    }

    /** A position that was looked at. */
    record Position(
            @JsonProperty("x_mm") double x,
            @JsonProperty("y_mm") double y,
            double share,
            double standardError,
            double atMost,
            long samples) {
        private static Position of(StarPosition position, StarScanResult result) {
            return new Position(
                    position.x(),
                    position.y(),
                    position.share(),
                    position.error(),
                    result.bound().upper(position),
                    position.tally().samples());
        }
    }
}
