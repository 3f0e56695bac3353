package darkrim.present.drawing;

import darkrim.present.drawing.Mark.Anchor;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/** A sheet of paper while it is drawn. It knows where words stand, so that no others are put over them. */
final class Page {
    private static final double AIR = 0.3;
    /** How far the white behind a label goes beyond it, mm. */
    private static final double PLATE = 0.2;

    private final List<Mark> marks = new ArrayList<>();
    private final List<Box> taken = new ArrayList<>();

    List<Mark> marks() {
        return marks;
    }

    void add(Mark mark) {
        marks.add(mark);
    }

    void line(Line line, double x, double y, double toX, double toY) {
        add(new Mark.Path(List.of(Vector2D.of(x, y), Vector2D.of(toX, toY)), line));
    }

    void frame(Box box, Line line) {
        add(new Mark.Path(
                List.of(
                        Vector2D.of(box.x(), box.y()),
                        Vector2D.of(box.right(), box.y()),
                        Vector2D.of(box.right(), box.bottom()),
                        Vector2D.of(box.x(), box.bottom()),
                        Vector2D.of(box.x(), box.y())),
                line));
    }

    /** Words that have a place of their own, shortened to a width, mm. */
    void words(String text, double x, double y, double size, Anchor anchor, boolean bold, double width) {
        Mark.Words words = new Mark.Words(Lettering.within(width, text, size, bold), x, y, size, anchor, bold);
        add(words);
        taken.add(words.box());
    }

    /** Small words from a place to the right. */
    void words(String text, double x, double y, double width) {
        words(text, x, y, 2.3, Anchor.START, false, width);
    }

    /** A label at the first of some places where it covers no line either; where there is none, as {@link #label} does. */
    void clearLabel(String text, double size, Box inside, List<Vector2D> places) {
        List<Vector2D> clear = new ArrayList<>(places);
        clear.removeIf(place -> coversLine(
                new Mark.Words(text, place.getX(), place.getY(), size, Anchor.MIDDLE, false)
                        .box()
                        .inside(-PLATE),
                marks));
        if (!label(text, size, inside, clear)) {
            label(text, size, inside, places);
        }
    }

    private static boolean coversLine(Box box, List<Mark> marks) {
        Rectangle2D covered = new Rectangle2D.Double(box.x(), box.y(), box.width(), box.height());
        for (Mark mark : marks) {
            boolean covers = (mark instanceof Mark.Clipped clipped && coversLine(box, clipped.marks()))
                    || (mark instanceof Mark.Path path && covers(covered, path.points(), false))
                    || (mark instanceof Mark.Area area
                            && area.rings().stream().anyMatch(ring -> covers(covered, ring, true)));
            if (covers) {
                return true;
            }
        }
        return false;
    }

    private static boolean covers(Rectangle2D covered, List<Vector2D> points, boolean closed) {
        for (int i = closed ? 0 : 1; i < points.size(); i++) {
            Vector2D from = points.get((i + points.size() - 1) % points.size());
            if (covered.intersectsLine(
                    from.getX(),
                    from.getY(),
                    points.get(i).getX(),
                    points.get(i).getY())) {
                return true;
            }
        }
        return false;
    }

    /**
     * A label at the first of some places where it lies inside a box and on no other words; none where there is no such place.
     *
     * @return whether it was put
     */
    boolean label(String text, double size, Box inside, List<Vector2D> places) {
        for (Vector2D place : places) {
            Mark.Words words = new Mark.Words(text, place.getX(), place.getY(), size, Anchor.MIDDLE, false);
            Box box = words.box();
            Box wide = box.inside(-AIR);
            if (inside.holds(wide) && taken.stream().noneMatch(wide::overlaps)) {
                Box plate = box.inside(-PLATE);
                add(new Mark.Area(
                        List.of(List.of(
                                Vector2D.of(plate.x(), plate.y()),
                                Vector2D.of(plate.right(), plate.y()),
                                Vector2D.of(plate.right(), plate.bottom()),
                                Vector2D.of(plate.x(), plate.bottom()))),
                        "#ffffff",
                        new Line("#ffffff", 0.05, List.of())));
                add(words);
                taken.add(box);
                return true;
            }
        }
        return false;
    }
}
