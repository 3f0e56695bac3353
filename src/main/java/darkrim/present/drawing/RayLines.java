package darkrim.present.drawing;

import darkrim.study.section.SectionRay.Kind;
import java.util.List;

/** How rays are drawn: told apart by their dashes too, for grey prints. */
final class RayLines {
    private static final Line ENDS = new Line("#c0392b", 0.22, List.of());
    private static final Line CHIEF = new Line("#555555", 0.15, List.of(4.0, 0.8, 0.8, 0.8));
    private static final Line WHOLE = new Line("#1f6fb2", 0.2, List.of(2.0, 0.9));

    private RayLines() {}

    static Line of(Kind kind) {
        return switch (kind) {
            case LIGHT_ENDS -> ENDS;
            case CHIEF -> CHIEF;
            case PUPIL_WHOLE -> WHOLE;
        };
    }
}
