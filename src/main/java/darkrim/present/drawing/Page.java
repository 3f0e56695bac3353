package darkrim.present.drawing;

import darkrim.present.drawing.Mark.Anchor;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/** A sheet of paper while it is drawn. It knows where words stand, so that no others are put over them. */
final class Page {
    private static final double AIR = 0.3;

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
                Box plate = box.inside(-0.2);
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
