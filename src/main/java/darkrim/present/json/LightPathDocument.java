package darkrim.present.json;

import com.fasterxml.jackson.annotation.JsonProperty;
import darkrim.present.LightPath;

/** Light that comes from the pupil by one surface to a receiver. */
record LightPathDocument(
        String receiver,
        String via,
        String by,
        @JsonProperty("incidence_deg") double incidence,
        double share,
        double mean,
        Double standardError) {
    static LightPathDocument of(LightPath path) {
        return new LightPathDocument(
                path.receiver().name(),
                path.via().name(),
                path.part(),
                path.incidence(),
                path.share(),
                path.irradiance().mean(),
                EstimateDocument.finite(path.irradiance().standardError()));
    }
}
