package darkrim.study.pixel;

import darkrim.assembly.Assembly;
import darkrim.assembly.Die;
import darkrim.assembly.PartName;
import darkrim.layout.DetectorsShape;
import darkrim.layout.Layout;
import darkrim.layout.Part;
import darkrim.study.PointName;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A place to look from.
 *
 * @param point the point
 * @param why why it was chosen
 */
public record PixelPlace(PointName point, Why why) {
    /** Why a place was chosen. */
    public enum Why {
        /** It was asked for. */
        ASKED("as asked"),
        /** The middle of an active area. */
        MIDDLE("middle"),
        /** The middle of a corner pixel of an active area. */
        CORNER("corner"),
        /** What the search for the worst pixel found. */
        WORST("worst found");

        private final String words;

        Why(String words) {
            this.words = words;
        }

        /** In words. */
        public String words() {
            return words;
        }
    }

    /** Names of the active areas of a layout. */
    static List<String> activeAreas(Assembly assembly) {
        return assembly.detectors().stream()
                .map(Die::name)
                .map(name -> name + "/active")
                .filter(assembly.surfaces()::contains)
                .toList();
    }

    /** The middle and the four corner pixels of a surface. */
    static List<PixelPlace> standard(Layout layout, String surface) {
        double in = halfPixel(layout, surface);
        List<PixelPlace> places = new ArrayList<>();
        places.add(new PixelPlace(PointName.middle(surface), Why.MIDDLE));
        for (double v : new double[] {in, 1 - in}) {
            for (double u : new double[] {in, 1 - in}) {
                places.add(new PixelPlace(new PointName(surface, u, v), Why.CORNER));
            }
        }
        return places;
    }

    /** Half a pixel as a share of the side of an active area. */
    static double halfPixel(Layout layout, String surface) {
        return detectors(layout, surface)
                .map(shape -> 0.5 * shape.pixelPitch() / shape.activeSide())
                .orElse(0.001);
    }

    /** The pixel pitch that holds for a surface, mm: that of its detector or, for other parts, what the layout states; absent where neither does. */
    static Optional<Double> pixelPitch(Layout layout, String surface) {
        return detectors(layout, surface)
                .map(DetectorsShape::pixelPitch)
                .or(() -> layout.warmth().flatMap(warmth -> warmth.pixelPitch()));
    }

    private static Optional<DetectorsShape> detectors(Layout layout, String surface) {
        String part = PartName.of(surface);
        return layout.parts().stream()
                .filter(each -> each.name().equals(part))
                .map(Part::shape)
                .filter(DetectorsShape.class::isInstance)
                .map(DetectorsShape.class::cast)
                .findFirst();
    }
}
