package darkrim.study.journal;

import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import java.util.zip.CRC32C;

/**
 * A line with a check sum as its last field: CRC-32C (RFC 3720, section 12.1), eight hexadecimal digits, over all that stands before its comma. It
 * finds every change of up to 32 bits in a row, and of all other changes all but one in 4e9: what a failing disk makes of a line is not believed.
 */
final class SummedLine {
    static final String END = "\r\n";

    /** Name of the column. */
    private static final String NAME = "crc32c";

    private static final int DIGITS = 8;

    private SummedLine() {}

    /** The names of columns, with that of the sum behind them. */
    static String header(String names) {
        return body(names) + "," + NAME + END;
    }

    /** A line with its end, and with its sum. */
    static String of(String line) {
        String body = body(line);
        return body + "," + sum(body) + END;
    }

    /**
     * The line as it was before it got its sum.
     *
     * @throws IllegalArgumentException if the sum is missing or not its own
     */
    static String read(String summed) {
        int comma = summed.length() - END.length() - DIGITS - 1;
        if (comma < 0 || !summed.substring(comma).equals("," + sum(summed.substring(0, comma)) + END)) {
            throw new IllegalArgumentException("the check sum is not that of the line");
        }
        return summed.substring(0, comma) + END;
    }

    private static String body(String line) {
        if (!line.endsWith(END)) {
            throw new IllegalArgumentException("a line without its end");
        }
        return line.substring(0, line.length() - END.length());
    }

    private static String sum(String body) {
        CRC32C sum = new CRC32C();
        sum.update(body.getBytes(StandardCharsets.UTF_8));
        return HexFormat.of().toHexDigits((int) sum.getValue());
    }
}
