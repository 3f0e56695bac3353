package darkrim.present.drawing;

import java.util.List;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/** Something on paper; places in mm, x to the right, y downward. */
public sealed interface Mark {
    /**
     * A filled region.
     *
     * @param rings closed outlines, filled by the even-odd rule
     * @param fill colour as {@code #rrggbb}
     * @param outline how its outline is drawn
     */
    record Area(List<List<Vector2D>> rings, String fill, Line outline) implements Mark {
        /** Copies the lists. */
        public Area {
            rings = rings.stream().map(List::copyOf).toList();
        }
    }

    /**
     * A line through points.
     *
     * @param points its points
     * @param line how it is drawn
     */
    record Path(List<Vector2D> points, Line line) implements Mark {
        /** Copies the list. */
        public Path {
            points = List.copyOf(points);
        }
    }

    /**
     * Words on one line.
     *
     * @param text the words, printable
     * @param x where they are anchored
     * @param y height of the line that letters stand on
     * @param size size of the letters
     * @param anchor which of their ends is anchored
     * @param bold whether they are bold
     */
    record Words(String text, double x, double y, double size, Anchor anchor, boolean bold) implements Mark {
        /** The box that they take at most, whatever common font a reader has. */
        public Box box() {
            double width = Lettering.width(text, size, bold);
            double left = switch (anchor) {
                case START -> x;
                case MIDDLE -> x - width / 2;
                case END -> x - width;
            };
            return new Box(left, y - 0.8 * size, width, size);
        }
    }

    /**
     * Marks that are cut off at a box.
     *
     * @param box the box
     * @param marks the marks
     */
    record Clipped(Box box, List<Mark> marks) implements Mark {
        /** Copies the list. */
        public Clipped {
            marks = List.copyOf(marks);
        }
    }

    /** Which end of words is anchored. */
    enum Anchor {
        /** The beginning. */
        START,
        /** The middle. */
        MIDDLE,
        /** The end. */
        END
    }
}
