package darkrim.present.review;

/**
 * What a review says of how it came about.
 *
 * @param version version of the program
 * @param date the date, as it is to be written
 * @param command the command that makes it again, without its output
 */
public record Imprint(String version, String date, String command) {}
