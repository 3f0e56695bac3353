package darkrim.view.parts;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/** Fills closed outlines in a plane by the even-odd rule, strip by strip between the heights at which a segment ends. */
final class EvenOddFill {
    private final double[] segments;
    private final double[] heights;
    private double[] triangles = new double[120];
    private int length;

    /**
     * @param segments four numbers a segment: x, y of one end and of the other; together they form closed outlines
     */
    EvenOddFill(double[] segments) {
        this.segments = segments;
        double[] ends = new double[segments.length / 2];
        for (int i = 0; i < ends.length; i++) {
            ends[i] = segments[2 * i + 1];
        }
        heights = Arrays.stream(ends).sorted().distinct().toArray();
        List<List<Integer>> starting = new ArrayList<>();
        for (int i = 0; i < heights.length; i++) {
            starting.add(new ArrayList<>());
        }
        for (int s = 0; s < segments.length / 4; s++) {
            starting.get(Arrays.binarySearch(heights, low(s))).add(s);
        }
        List<Integer> open = new ArrayList<>();
        for (int strip = 0; strip + 1 < heights.length; strip++) {
            double top = heights[strip + 1];
            open.addAll(starting.get(strip));
            double bottom = heights[strip];
            open.removeIf(s -> high(s) <= bottom);
            fill(open, bottom, top);
        }
    }

    /** Six numbers a triangle, counter-clockwise. */
    double[] triangles() {
        return Arrays.copyOf(triangles, length);
    }

    private void fill(List<Integer> open, double bottom, double top) {
        double middle = (bottom + top) / 2;
        List<Integer> across = open.stream()
                .sorted(Comparator.comparingDouble(s -> at(s, middle)))
                .toList();
        for (int i = 0; i + 1 < across.size(); i += 2) {
            int left = across.get(i);
            int right = across.get(i + 1);
            triangle(at(left, bottom), bottom, at(right, bottom), bottom, at(right, top), top);
            triangle(at(left, bottom), bottom, at(right, top), top, at(left, top), top);
        }
    }

    private void triangle(double ax, double ay, double bx, double by, double cx, double cy) {
        if ((bx - ax) * (cy - ay) - (by - ay) * (cx - ax) == 0) {
            return;
        }
        if (length == triangles.length) {
            triangles = Arrays.copyOf(triangles, 2 * length);
        }
        double[] corners = {ax, ay, bx, by, cx, cy};
        System.arraycopy(corners, 0, triangles, length, 6);
        length += 6;
    }

    private double low(int s) {
        return Math.min(segments[4 * s + 1], segments[4 * s + 3]);
    }

    private double high(int s) {
        return Math.max(segments[4 * s + 1], segments[4 * s + 3]);
    }

    /** Where a segment is at a height between its ends. */
    private double at(int s, double height) {
        double from = segments[4 * s + 1];
        double to = segments[4 * s + 3];
        double share = (height - from) / (to - from);
        return segments[4 * s] + share * (segments[4 * s + 2] - segments[4 * s]);
    }
}
