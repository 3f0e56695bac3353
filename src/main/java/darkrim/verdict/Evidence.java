package darkrim.verdict;

import darkrim.layout.ThermalShape;
import darkrim.light.Estimate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** Why a verdict is what it is. */
public sealed interface Evidence {
    /** The margin that belongs to it, where there is one and it was looked for. */
    default Optional<LightMargin> margin() {
        return Optional.empty();
    }

    /** The same with a margin, where it is about direct light by proof. */
    default Evidence with(LightMargin margin) {
        return this;
    }

    /**
     * No straight line from the pupil reaches the surface: proved by geometry, without a sample.
     *
     * @param gapWidth gaps narrower than this between touching parts counted as closed, mm
     * @param clearance how far the surface can be moved in every direction and stay dark, where that was looked for
     */
    record ProvedDark(double gapWidth, Optional<LightMargin> clearance) implements Evidence {
        /** Without a clearance. */
        public ProvedDark(double gapWidth) {
            this(gapWidth, Optional.empty());
        }

        @Override
        public Optional<LightMargin> margin() {
            return clearance;
        }

        @Override
        public Evidence with(LightMargin margin) {
            return new ProvedDark(gapWidth, Optional.of(margin));
        }

        /** The same, where facets are all that it holds for. */
        DarkBehindFacets behindFacets() {
            return new DarkBehindFacets(gapWidth, clearance);
        }
    }

    /**
     * No straight line from the pupil reaches the surface past the facets: that is proved, but not that none does past the curved surfaces that they
     * stand for.
     *
     * @param gapWidth gaps narrower than this between touching parts counted as closed, mm
     * @param clearance how far the surface can be moved in every direction and stay dark behind the facets, where that was looked for
     */
    record DarkBehindFacets(double gapWidth, Optional<LightMargin> clearance) implements Evidence {
        @Override
        public Optional<LightMargin> margin() {
            return clearance;
        }

        @Override
        public Evidence with(LightMargin margin) {
            return new DarkBehindFacets(gapWidth, Optional.of(margin));
        }
    }

    /**
     * A straight line that carries light; anyone can draw it.
     *
     * @param onPupil where it leaves the pupil, mm
     * @param onSurface where it arrives, mm
     * @param intrusion how far light reaches into the surface, as a negative margin, where that was looked for
     */
    record WitnessRay(Vector3D onPupil, Vector3D onSurface, Optional<LightMargin> intrusion) implements Evidence {
        /** Without an intrusion. */
        public WitnessRay(Vector3D onPupil, Vector3D onSurface) {
            this(onPupil, onSurface, Optional.empty());
        }

        @Override
        public Optional<LightMargin> margin() {
            return intrusion;
        }

        @Override
        public Evidence with(LightMargin margin) {
            return new WitnessRay(onPupil, onSurface, Optional.of(margin));
        }

        /** Its length, mm. */
        public double length() {
            return onPupil.distance(onSurface);
        }
    }

    /**
     * Neither proved dark nor found lit.
     *
     * @param area area that was left open, mm2
     * @param fraction that area over the area of the surface
     */
    record OpenArea(double area, double fraction) implements Evidence {}

    /**
     * What share of the pupil every point of the surface sees, by geometry.
     *
     * @param atLeast no point sees less than this: proved
     * @param atMost the lowest point that was found sees this share, exactly
     * @param lowest that point, mm; empty where the whole pupil is proved to be seen from every point, or nothing was looked at
     * @param hiddenBy what lies first in the way from that point to the pupil, what hides most first; empty where that was not looked for
     */
    record ExactShare(double atLeast, double atMost, Optional<Vector3D> lowest, List<String> hiddenBy)
            implements Evidence {
        /** Every point sees the whole pupil. */
        public static final ExactShare WHOLE = new ExactShare(1, 1, Optional.empty());

        /** Nothing is known. */
        public static final ExactShare UNKNOWN = new ExactShare(0, 1, Optional.empty());

        /** Bounds nearer than this tell the least share, and about where it is seen. */
        private static final double NEAR = 0.001;

        /** Copies the list. */
        public ExactShare {
            hiddenBy = List.copyOf(hiddenBy);
        }

        /** Without what lies in the way. */
        public ExactShare(double atLeast, double atMost, Optional<Vector3D> lowest) {
            this(atLeast, atMost, lowest, List.of());
        }

        /** Whether every point sees the whole pupil. */
        public boolean isWhole() {
            return atLeast == 1;
        }

        /** Whether the lowest point that was found is about the lowest of all; otherwise others may see less, but not less than is proved. */
        public boolean isNear() {
            return atMost - atLeast <= NEAR;
        }
    }

    /**
     * No mean once-reflected irradiance is larger than this: proved by geometry, without a sample.
     *
     * @param atMost relative irradiance; 0 where no such light can arrive at all
     */
    record ProvedBound(double atMost) implements Evidence {}

    /**
     * How far two sides of a clearance are apart, exact but for rounding and for round parts, of which it is no less.
     *
     * @param millimetres least distance with what reaches beyond the facets taken off, mm; 0 where they touch or run into one another
     * @param shape in which shape
     * @param first the surface of the one side that comes nearest
     * @param onFirst the point of it, where it then is, without its coating, mm
     * @param second the surface of the other side
     * @param onSecond the point of it
     * @param raised how far from its place the side that is brought in then is, mm; empty where both stand in their place
     * @param overlap whether they run into one another
     * @param takenOff what was taken off: the coatings at the two points, and by how much round parts exceed their polygons, mm
     */
    record Distance(
            double millimetres,
            ThermalShape shape,
            String first,
            Vector3D onFirst,
            String second,
            Vector3D onSecond,
            OptionalDouble raised,
            boolean overlap,
            double takenOff)
            implements Evidence {}

    /**
     * A sampled mean and bounds that hold at every look.
     *
     * @param estimate the mean with its error
     * @param lower lower bound
     * @param upper upper bound
     * @param risk probability that the mean is ever, at any look, outside the bounds
     * @param looks how often it was looked at
     */
    record Sampled(Estimate estimate, double lower, double upper, double risk, int looks) implements Evidence {}
}
