package darkrim.view.work;

/**
 * Light that comes to a surface by another.
 *
 * @param via name of the surface that reflects it
 * @param part whether by the mirror or the diffuse part of its finish, in a word
 * @param share share of all once-reflected light of the receiver, 0 to 1; NaN where only the order is known
 * @param light what it gives, where that is known
 */
public record PathFact(String via, String part, double share, Reading light) {
    /** Whether by the mirror part. */
    public boolean mirror() {
        return part.equals("mirror");
    }
}
