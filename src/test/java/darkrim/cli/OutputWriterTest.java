package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.Writer;
import org.junit.jupiter.api.Test;

/** A result that did not arrive is not passed over in silence. */
class OutputWriterTest {
    private final StringWriter errors = new StringWriter();

    @Test
    void whatArrivesKeepsItsCode() {
        StringWriter target = new StringWriter();
        OutputWriter output = OutputWriter.to(target);
        output.print("result");
        assertThat(delivered(output)).isEqualTo(ExitCode.FAIL);
        assertThat(target).hasToString("result");
        assertThat(errors.toString()).isEmpty();
    }

    @Test
    void whatIsLostIsToldWithTheReason() {
        OutputWriter output = OutputWriter.to(failing("No space left on device"));
        output.print("result");
        assertThat(delivered(output)).isEqualTo(ExitCode.UNUSABLE);
        assertThat(errors)
                .hasToString("darkrim: the result could not be written to standard output: No space left on device; "
                        + "what it holds is not complete.\n");
    }

    @Test
    void whoeverClosesThePipeHasSeenEnough() {
        OutputWriter output = OutputWriter.to(failing("Broken pipe"));
        output.print("result");
        assertThat(delivered(output)).isEqualTo(ExitCode.FAIL);
        assertThat(errors.toString()).isEmpty();
    }

    private int delivered(OutputWriter output) {
        return output.delivered(ExitCode.FAIL, new PrintWriter(errors));
    }

    /** A device that takes nothing. */
    private static Writer failing(String why) {
        return new Writer() {
            @Override
            public void write(char[] letters, int from, int count) throws IOException {
                throw new IOException(why);
            }

            @Override
            public void flush() {}

            @Override
            public void close() {}
        };
    }
}
