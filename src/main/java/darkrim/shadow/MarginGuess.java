package darkrim.shadow;

/**
 * Where a search for the least margin of some surfaces begins: near what it was in a layout that differs little. A wrong guess costs time; it
 * does not change what is proved.
 *
 * @param surface name of the surface that is likely to have it
 * @param millimetres what it is likely to be, mm
 */
public record MarginGuess(String surface, double millimetres) {}
