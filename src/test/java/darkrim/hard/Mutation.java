package darkrim.hard;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.SplittableRandom;

/** Changes the bytes of a file by chance, as text or as what it is: bits, pieces, numbers, words of its own language. */
final class Mutation {
    private static final List<String> WORDS = List.of(
            "0",
            "-1",
            "-0.0",
            "1e308",
            "1e999",
            "nan",
            "inf",
            "4294967295",
            "2147483647",
            "99999999999999999999",
            "1e-320",
            "{",
            "}",
            "[",
            "]",
            "null",
            "true",
            "\"",
            "'",
            ":",
            ",",
            "\n",
            "\r\n",
            "\t",
            "\u0000",
            "\u001b[2J",
            "\u202e",
            "solid x\n",
            "endsolid\n",
            "facet normal\n",
            "outer loop\n",
            "vertex 1 2\n",
            "f 1 2 3 4\n",
            "f -1 -2 -3\n",
            "f 1//\n",
            "v 1 1\n",
            "*a",
            "&a ",
            "<<: ",
            "--- \n",
            "!!int ");

    private final SplittableRandom random;

    Mutation(SplittableRandom random) {
        this.random = random;
    }

    /** A changed copy; what is taken from another file comes from the second. */
    byte[] of(byte[] whole, byte[] other) {
        byte[] changed = whole;
        int edits = 1 + random.nextInt(3);
        for (int i = 0; i < edits; i++) {
            changed = once(changed, other);
        }
        return changed;
    }

    /** A copy with other numbers, none far from what it was: most of these can be used. */
    byte[] near(byte[] whole) {
        byte[] changed = whole;
        int edits = 1 + random.nextInt(4);
        for (int i = 0; i < edits; i++) {
            String factor = " * " + (float) (0.5 + random.nextDouble());
            int at = random.nextInt(changed.length + 1);
            while (at < changed.length && !(isDigit(changed[at]) && !isDigit(changed[Math.max(0, at - 1)]))) {
                at++;
            }
            changed = random.nextInt(4) == 0
                    ? number(changed, at)
                    : joined(
                            changed,
                            endOfNumber(changed, at),
                            factor.getBytes(StandardCharsets.UTF_8),
                            endOfNumber(changed, at));
        }
        return changed;
    }

    private static int endOfNumber(byte[] whole, int from) {
        int end = from;
        while (end < whole.length && (isDigit(whole[end]) || whole[end] == '.')) {
            end++;
        }
        return end;
    }

    private byte[] once(byte[] whole, byte[] other) {
        int at = random.nextInt(whole.length + 1);
        int end = Math.min(whole.length, at + (random.nextInt(5) == 0 ? random.nextInt(400) : random.nextInt(12)));
        return switch (random.nextInt(8)) {
            case 0 -> joined(whole, at, new byte[0], end);
            case 1 -> joined(whole, at, word(), end);
            case 2 -> joined(whole, at, word(), at);
            case 3 -> joined(whole, at, slice(whole, at, end), at);
            case 4 -> joined(whole, at, piece(other), at);
            case 5 -> number(whole, at);
            case 6 -> slice(whole, 0, random.nextInt(6) == 0 ? at : whole.length);
            default -> flipped(whole);
        };
    }

    private byte[] word() {
        return WORDS.get(random.nextInt(WORDS.size())).getBytes(StandardCharsets.UTF_8);
    }

    private byte[] piece(byte[] other) {
        int from = random.nextInt(other.length + 1);
        return slice(other, from, Math.min(other.length, from + random.nextInt(200)));
    }

    private byte[] flipped(byte[] whole) {
        byte[] changed = whole.clone();
        if (changed.length > 0) {
            int at = random.nextInt(changed.length);
            changed[at] = (byte) (random.nextBoolean() ? changed[at] ^ (1 << random.nextInt(8)) : random.nextInt(256));
        }
        return changed;
    }

    /** The next number from a place on, as another one. */
    private byte[] number(byte[] whole, int from) {
        int start = from;
        while (start < whole.length && !isDigit(whole[start])) {
            start++;
        }
        int end = endOfNumber(whole, start);
        String fresh = random.nextInt(3) == 0
                ? new String(word(), StandardCharsets.UTF_8)
                : String.valueOf((float) Math.scalb(random.nextDouble() - 0.3, random.nextInt(14) - 4));
        return joined(whole, start, fresh.getBytes(StandardCharsets.UTF_8), end);
    }

    private static boolean isDigit(byte letter) {
        return letter >= '0' && letter <= '9';
    }

    private static byte[] slice(byte[] whole, int from, int to) {
        return java.util.Arrays.copyOfRange(whole, from, to);
    }

    /** What comes before {@code at}, then something, then what comes from {@code end} on. */
    private static byte[] joined(byte[] whole, int at, byte[] between, int end) {
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        all.write(whole, 0, at);
        all.writeBytes(between);
        all.write(whole, end, whole.length - end);
        return all.toByteArray();
    }
}
