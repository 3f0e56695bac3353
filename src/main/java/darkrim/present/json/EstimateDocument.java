package darkrim.present.json;

import darkrim.light.Estimate;

/** A sampled mean; what is unknown is null. Relative irradiance, or a share of the pupil. */
record EstimateDocument(Double mean, Double standardError, long samples, Double largestSample) {
    static EstimateDocument of(Estimate estimate) {
        return new EstimateDocument(
                estimate.samples() == 0 ? null : finite(estimate.mean()),
                finite(estimate.standardError()),
                estimate.samples(),
                finite(estimate.largest()));
    }

    /** The number, or null where JSON has no word for it. */
    static Double finite(double value) {
        return Double.isFinite(value) ? value : null;
    }
}
