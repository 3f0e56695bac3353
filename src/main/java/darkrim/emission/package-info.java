/** The law of black bodies: what a surface of a temperature emits within a band of wavelengths. Numbers in, numbers out. */
package darkrim.emission;
