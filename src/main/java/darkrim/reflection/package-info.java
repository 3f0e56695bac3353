/**
 * Laws of reflection: mirrors, diffuse surfaces and lobes; their reflectance, bounds and sampling. Knows neither
 * geometry nor light.
 *
 * <p>In: angles and constants of a finish. Out: reflectance, a bound that holds everywhere, a direction by chance.
 * Main types: {@code Reflection}, {@code Lobe}, {@code BrdfTable}, {@code Fresnel}.
 *
 * <p>It must not know: surfaces, scenes and the beam. Begin to read: {@code Reflection}.
 */
package darkrim.reflection;
