package darkrim.verdict;

/** What can be said of a requirement. */
public enum Verdict {
    /** It holds: proved, or sampled at the stated confidence. */
    PASS,
    /** It does not hold: a witness, or sampled at the stated confidence. */
    FAIL,
    /** Neither is shown within the budget. */
    UNDECIDED;

    /** Both must hold: one failure fails, then one doubt leaves it undecided. */
    public Verdict and(Verdict other) {
        if (this == FAIL || other == FAIL) {
            return FAIL;
        }
        return this == UNDECIDED ? UNDECIDED : other;
    }

    /** Whether it outweighs another where both must hold. */
    public boolean isWorseThan(Verdict other) {
        return this != other && and(other) == this;
    }
}
