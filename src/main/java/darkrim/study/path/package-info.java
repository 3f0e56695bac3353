/**
 * Light after up to eight reflections: by which surfaces it comes, where it is brightest, and lines that anyone
 * can draw.
 *
 * <p>In: a layout file, receivers, how many reflections ({@code PathSettings}). Out: a {@code PathResult}: for
 * each receiver its paths with share, error, angles of incidence, the brightest {@code Spot} and a line that
 * anyone can draw. Main types: {@code PathStudy} follows light back from receivers, {@code TopPath} is one path
 * with all that is told of it. docs/decisions/0028 has the reasons.
 *
 * <p>It must not know: verdicts: nothing here decides. Begin to read: {@code PathStudy}.
 */
package darkrim.study.path;
