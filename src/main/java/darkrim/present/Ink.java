package darkrim.present;

import darkrim.verdict.Verdict;

/** Colour for verdicts, or none. Verdicts are words first; colour adds nothing that the words do not say. */
public enum Ink {
    /** Letters only. */
    PLAIN,
    /** Verdicts in the eight standard colours of a terminal (ECMA-48, select graphic rendition). */
    COLOUR;

    private static final String RESET = "\u001b[0m";

    /** The verdict as a word. */
    String word(Verdict verdict) {
        return dye(verdict, verdict.name());
    }

    /** A cell of a table that holds nothing but a verdict and space, with the word in its colour. */
    String cell(String cell) {
        for (Verdict verdict : Verdict.values()) {
            if (cell.strip().equals(verdict.name())) {
                return cell.replace(verdict.name(), word(verdict));
            }
        }
        return cell;
    }

    private String dye(Verdict verdict, String text) {
        if (this == PLAIN) {
            return text;
        }
        String colour = switch (verdict) {
            case PASS -> "\u001b[32m";
            case FAIL -> "\u001b[1;31m";
            case UNDECIDED -> "\u001b[33m";
        };
        return colour + text + RESET;
    }
}
