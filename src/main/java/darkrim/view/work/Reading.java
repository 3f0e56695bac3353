package darkrim.view.work;

import darkrim.light.Estimate;
import darkrim.present.Figures;
import darkrim.study.irradiance.DarkProof;
import darkrim.study.irradiance.LightKind;
import darkrim.study.irradiance.SurfaceMap;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A relative irradiance.
 *
 * @param value the value; NaN where it is not known
 * @param error its standard error; 0 where it is exact, infinite where it is unknown
 * @param behindFacets whether it is none behind the facets, but not for certain behind the curved surfaces that they stand for
 */
public record Reading(double value, double error, boolean behindFacets) {
    /** Not known. */
    public static final Reading UNKNOWN = new Reading(Double.NaN, Double.POSITIVE_INFINITY);
    /** None, by proof or because nothing can carry light there. */
    public static final Reading NONE = new Reading(0, 0);

    /** None behind the facets; what the curved surfaces that they stand for let through is not known. */
    public static final Reading BEHIND_FACETS = new Reading(0, Double.POSITIVE_INFINITY, true);

    /** Without a doubt about facets. */
    public Reading(double value, double error) {
        this(value, error, false);
    }

    /** Direct light where there is a proof about it; empty where there is none. */
    public static Optional<Reading> proved(DarkProof proof) {
        return switch (proof) {
            case PROVED -> Optional.of(NONE);
            case BEHIND_FACETS -> Optional.of(BEHIND_FACETS);
            case NONE -> Optional.empty();
        };
    }

    /** A sampled mean. Where no sample met light its error is that of a single largest sample: no proof that there is none. */
    public static Reading of(Estimate estimate) {
        if (estimate.largest() == 0) {
            return NONE;
        }
        if (estimate.samples() < 2) {
            return UNKNOWN;
        }
        return estimate.mean() == 0
                ? new Reading(0, estimate.largest() / estimate.samples())
                : new Reading(estimate.mean(), estimate.standardError());
    }

    /** The light of a class in a cell of a map; not known where the cell is empty or nothing was sampled yet. */
    public static Reading of(SurfaceMap map, LightKind kind, int cell) {
        Reading direct = proved(map.cells().isEmpty(cell) ? DarkProof.NONE : map.proof())
                .orElseGet(() -> of(map.direct().get(cell)));
        Reading reflected = of(map.reflected().get(cell));
        return switch (kind) {
            case DIRECT -> direct;
            case ONCE_REFLECTED -> reflected;
            case TOTAL -> direct.and(reflected);
        };
    }

    /** Both lights together; their errors are independent. Where none was found of one, with an error that nobody knows, it is the other. */
    public Reading and(Reading other) {
        if (Double.isNaN(value) || Double.isNaN(other.value)) {
            return UNKNOWN;
        }
        if (behindFacets || other.behindFacets) {
            // Whatever else comes, what the curved surfaces let through is not known.
            Reading known = behindFacets ? other : this;
            return known.value > 0 ? new Reading(known.value, known.error, true) : BEHIND_FACETS;
        }
        if (other.value == 0 && Double.isInfinite(other.error)) {
            return this;
        }
        if (value == 0 && Double.isInfinite(error)) {
            return other;
        }
        return new Reading(value + other.value, Math.sqrt(error * error + other.error * other.error));
    }

    /**
     * In letters, in W/m2 as well where it is known how many a value of 1 stands for, such as {@code 0.708 +- 0.003, 1.42 +- 0.01 W/m2}.
     *
     * @param watts how many, where it is known
     */
    public String words(OptionalDouble watts) {
        if (watts.isEmpty() || !(value > 0)) {
            return words();
        }
        double unit = watts.getAsDouble();
        return words() + ", " + new Reading(value * unit, error * unit).words() + " W/m2";
    }

    /** In letters, such as {@code 0.708 +- 0.003}. */
    public String words() {
        if (behindFacets) {
            String proof = DarkProof.BEHIND_FACETS.words();
            return value > 0 ? new Reading(value, error).words() + ", direct light " + proof : proof;
        }
        if (Double.isNaN(value)) {
            return "not measured";
        }
        if (value == 0 && error > 0) {
            return "none found";
        }
        return error == 0 ? Figures.three(value) : Figures.withError(value, error);
    }
}
