package darkrim.present.json;

import com.fasterxml.jackson.annotation.JsonProperty;
import darkrim.shadow.OpeningMargin;
import java.util.List;
import java.util.Locale;

/** How far sides of an opening can be moved. */
record OpeningDocument(String opening, String extent, List<String> sides, Room outward, Room inward) {
    static OpeningDocument of(OpeningMargin margin) {
        return new OpeningDocument(
                margin.opening(),
                margin.extent().name().toLowerCase(Locale.ROOT),
                margin.sides(),
                margin.outward().map(Room::of).orElse(null),
                margin.inward().map(Room::of).orElse(null));
    }

    /** A signed distance and what sets it. */
    record Room(@JsonProperty("mm") double millimetres, boolean atLeast, String surface) {
        private static Room of(OpeningMargin.Room room) {
            return new Room(room.millimetres(), room.atLeast(), room.surface().isEmpty() ? null : room.surface());
        }
    }
}
