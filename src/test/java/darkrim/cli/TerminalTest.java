package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.junit.jupiter.api.Test;

class TerminalTest {
    private static final Terminal LOOKED_AT = new Terminal(true, true);

    @Test
    void colourNeedsATerminalThatCanAndAUserWhoDoesNotMind() {
        assertThat(LOOKED_AT.colour(Map.of("TERM", "xterm"))).isTrue();
        assertThat(LOOKED_AT.colour(Map.of("TERM", "dumb"))).isFalse();
        assertThat(LOOKED_AT.colour(Map.of())).isFalse();
        assertThat(LOOKED_AT.colour(Map.of("TERM", "xterm", "NO_COLOR", "1"))).isFalse();
        // https://no-color.org: present and not an empty string.
        assertThat(LOOKED_AT.colour(Map.of("TERM", "xterm", "NO_COLOR", ""))).isTrue();
        assertThat(new Terminal(false, true).colour(Map.of("TERM", "xterm"))).isFalse();
    }

    @Test
    void progressNeedsAnErrorStreamThatIsATerminal() {
        assertThat(LOOKED_AT.progress(Map.of("TERM", "xterm"))).isTrue();
        assertThat(LOOKED_AT.progress(Map.of("TERM", "dumb"))).isFalse();
        assertThat(new Terminal(true, false).progress(Map.of("TERM", "xterm"))).isFalse();
    }
}
