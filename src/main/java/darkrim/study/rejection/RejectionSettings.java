package darkrim.study.rejection;

import darkrim.scene.DistantBody;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a rejection curve is to hold.
 *
 * @param source name of the source in the layout, where it is one
 * @param body the body; its direction is not used
 * @param irradiance irradiance of a plane that faces the body, W/m2, where known
 * @param angles angles off axis, degrees, rising
 * @param azimuths directions about z, degrees
 * @param onto pattern of the surfaces on which light is counted
 * @param most reflections that are followed, at least 1
 * @param batches batches of samples for each number
 */
public record RejectionSettings(
        Optional<String> source,
        DistantBody body,
        OptionalDouble irradiance,
        List<Double> angles,
        List<Double> azimuths,
        String onto,
        int most,
        int batches) {
    /** Samples of a batch. */
    public static final int BATCH = 8192;

    /** Copies the lists. */
    public RejectionSettings {
        angles = List.copyOf(angles);
        azimuths = List.copyOf(azimuths);
        if (angles.isEmpty() || azimuths.isEmpty() || most < 1 || batches < 1) {
            throw new IllegalArgumentException("a rejection curve needs angles, reflections and samples");
        }
    }

    /** Samples for each number and surface. */
    public long samples() {
        return (long) batches * BATCH;
    }
}
