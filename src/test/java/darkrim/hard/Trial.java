package darkrim.hard;

/** Something that reads a file of any content. */
interface Trial {
    /** What became of an input. */
    enum End {
        /** Refused with findings. */
        REFUSED,
        /** Read, and used as far as the trial goes. */
        USED
    }

    /** What it reads, for the report. */
    String name();

    /** An input that chance makes, and that no earlier one tells of. */
    byte[] input(java.util.SplittableRandom random);

    /**
     * Reads an input.
     *
     * @throws Exception only if the program is at fault: refusals are an answer
     */
    End read(byte[] input) throws Exception;
}
