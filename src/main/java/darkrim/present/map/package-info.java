/**
 * Maps of light on flat surfaces as files for other programs.
 *
 * <p>In: a {@code LightMap} of one flat surface. Out: text or bytes of a file. Main types: {@code MapCsv}, {@code
 * MapFits}, {@code GreyMap}, one for each format; docs/decisions/0037 says why these.
 *
 * <p>It must not know: sampling, and files. Begin to read: {@code LightMap}.
 */
package darkrim.present.map;
