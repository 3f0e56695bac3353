/** Laws of reflection: mirrors, diffuse surfaces and lobes; their reflectance, bounds and sampling. Knows neither geometry nor light. */
package darkrim.reflection;
