/**
 * The law of black bodies: what a surface of a temperature emits within a band of wavelengths. Numbers in, numbers
 * out.
 *
 * <p>In: a temperature, K, and a band, um. Out: radiance in W or photons/s for m2 and sr. Main type: {@code
 * Planck}; tests hold it against the law of Stefan and Boltzmann and against published values.
 *
 * <p>It must not know: surfaces and their emissivity: study.pixel multiplies. Begin to read: {@code Planck}.
 */
package darkrim.emission;
