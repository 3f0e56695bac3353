package darkrim.light;

import darkrim.reflection.Reflection;
import darkrim.scene.Pupil;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Light among flat plates of which none hides another, by plain sums over all plates and the source: the law of reflection written down a second time, with
 * no random number. Midpoints; their number is the caller's.
 */
final class PlateSums {
    private final List<Element> source;
    private final int cells;
    private final boolean byCosine;

    /** A parallelogram that shines on the side of u x v. */
    record Plate(String name, Vector3D corner, Vector3D u, Vector3D v, Reflection reflection) {
        Vector3D normal() {
            return u.cross(v).normalize();
        }

        Vector3D at(double s, double t) {
            return corner.add(u.multiply(s)).add(v.multiply(t));
        }

        private boolean holds(Vector3D point) {
            Vector3D in = point.subtract(corner);
            double s = in.dot(u) / u.normSq();
            double t = in.dot(v) / v.normSq();
            return s >= 0 && s <= 1 && t >= 0 && t <= 1;
        }

        private Vector3D mirrored(Vector3D point) {
            return point.subtract(normal().multiply(2 * point.subtract(corner).dot(normal())));
        }

        /** Its middles of equal cells. */
        List<Element> elements(int cells) {
            List<Element> all = new ArrayList<>();
            for (int i = 0; i < cells; i++) {
                for (int j = 0; j < cells; j++) {
                    double area = u.cross(v).norm() / (cells * cells);
                    all.add(new Element(at((i + 0.5) / cells, (j + 0.5) / cells), normal(), area));
                }
            }
            return all;
        }
    }

    /** A plate that reflects by one part of its finish. */
    record Step(Plate plate, Reflector.Part part) {}

    /** A small piece of a plate or of the source. */
    record Element(Vector3D at, Vector3D normal, double area) {}

    /** What light from a direction counts for, 1/sr. */
    interface Weight {
        /**
         * Its value for one direction.
         *
         * @param from unit direction from which light comes
         * @param cosine of its angle of incidence
         */
        double of(Vector3D from, double cosine);
    }

    /**
     * @param source what sends radiance 1
     * @param cells pieces of each plate along each of its sides
     * @param byCosine whether all is weighed by the cosine of the angle of incidence on the plate that light meets first
     */
    PlateSums(List<Element> source, int cells, boolean byCosine) {
        this.source = source;
        this.cells = cells;
        this.byCosine = byCosine;
    }

    /** Equal pieces of a pupil. */
    static List<Element> pupil(Pupil pupil, int cells) {
        List<Element> all = new ArrayList<>();
        double[] at = new double[2];
        for (int i = 0; i < cells; i++) {
            for (int j = 0; j < cells; j++) {
                pupil.outline().place((i + 0.5) / cells, (j + 0.5) / cells, at);
                all.add(new Element(
                        pupil.frame().at(at[0], at[1]),
                        pupil.frame().normal(),
                        pupil.outline().area() / (cells * cells)));
            }
        }
        return all;
    }

    /** Irradiance at a point by a way of light, for radiance 1; the steps counted from the point. No two mirrors one after the other. */
    double irradiance(Vector3D at, Vector3D normal, Step... steps) {
        return gather(at, normal, (from, cosine) -> 1, List.of(steps));
    }

    private double gather(Vector3D at, Vector3D normal, Weight weight, List<Step> steps) {
        Plate mirror = !steps.isEmpty() && steps.get(0).part() == Reflector.Part.MIRROR
                ? steps.get(0).plate()
                : null;
        List<Step> rest = mirror == null ? steps : steps.subList(1, steps.size());
        double sum = 0;
        for (Element to : rest.isEmpty() ? source : rest.get(0).plate().elements(cells)) {
            Vector3D way = (mirror == null ? to.at() : mirror.mirrored(to.at())).subtract(at);
            Vector3D from = way.normalize();
            double cosine = from.dot(normal);
            double passed = mirror == null ? 1 : byMirror(mirror, at, from, rest.isEmpty());
            // A mirror turns the last part of the way as it turns the whole.
            Vector3D arrives =
                    mirror == null ? from : from.subtract(mirror.normal().multiply(2 * from.dot(mirror.normal())));
            double leaving = -arrives.dot(to.normal());
            if (cosine > 0 && leaving > 0 && passed > 0) {
                double radiance = rest.isEmpty() ? 1 : sent(to, rest, arrives.negate(), leaving);
                sum += weight.of(from, cosine) * passed * radiance * cosine * leaving * to.area() / way.normSq();
            }
        }
        return sum;
    }

    private double byMirror(Plate mirror, Vector3D at, Vector3D from, boolean first) {
        double cosine = -from.dot(mirror.normal());
        double height = at.subtract(mirror.corner()).dot(mirror.normal());
        if (!(cosine > 0 && height > 0 && mirror.holds(at.add(from.multiply(height / cosine))))) {
            return 0;
        }
        return mirror.reflection().mirror(cosine) * (byCosine && first ? cosine : 1);
    }

    /** Radiance that a piece of a plate sends in a direction. */
    private double sent(Element piece, List<Step> steps, Vector3D back, double out) {
        Reflection reflection = steps.get(0).plate().reflection();
        boolean lobe = steps.get(0).part() == Reflector.Part.LOBE;
        boolean first = byCosine && steps.size() == 1;
        return gather(
                piece.at(),
                piece.normal(),
                (from, in) -> (first ? in : 1)
                        * (lobe ? reflection.lobe(in, out, from.dot(back)) : reflection.broad(in, out) / Math.PI),
                steps.subList(1, steps.size()));
    }
}
