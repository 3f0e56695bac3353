package darkrim.layout;

import darkrim.layout.form.Wording;

/**
 * The band of wavelengths that a layout is judged in.
 *
 * @param from shortest wavelength, um
 * @param to longest, um
 */
record Band(double from, double to) {
    /** {@code 1 to 2.5 um}. */
    String describe() {
        return Wording.number(from) + " to " + Wording.number(to) + " um";
    }
}
