package darkrim.view.window;

import darkrim.present.picture.MapStretch;
import darkrim.view.parts.FlatMap;

/**
 * Where a flat map lies on the screen.
 *
 * @param flat the map
 * @param across pixels a mm along its first side
 * @param up pixels a mm along its second side
 */
record MapFrame(FlatMap flat, double across, double up) {
    /** Room around the map, pixels. */
    static final double EDGE = 8;

    /** As large as fits a square, its narrow side stretched where it could not be read. */
    static MapFrame in(FlatMap flat, double room) {
        MapStretch stretch = MapStretch.of(flat.width(), flat.height());
        double size = room / Math.max(flat.width() * stretch.across(), flat.height() * stretch.up());
        return new MapFrame(flat, size * stretch.across(), size * stretch.up());
    }

    /** Width of the picture, pixels. */
    double width() {
        return flat.width() * across;
    }

    /** Height of the picture, pixels. */
    double height() {
        return flat.height() * up;
    }

    /** What a reader must know of the two scales; empty where they are one. */
    String words() {
        return MapStretch.of(flat.width(), flat.height()).words();
    }

    /** Where a place of the surface is, mm to pixels. */
    double[] pixel(double[] place) {
        return new double[] {EDGE + place[0] * across, EDGE + (flat.height() - place[1]) * up};
    }

    /** The place of the surface at a pixel, mm. */
    double[] place(double x, double y) {
        return new double[] {(x - EDGE) / across, flat.height() - (y - EDGE) / up};
    }
}
