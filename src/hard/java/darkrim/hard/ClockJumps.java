package darkrim.hard;

import darkrim.diagnostic.UnusableInput;
import darkrim.present.json.JsonResult;
import darkrim.study.Check;
import darkrim.study.CheckResult;
import darkrim.study.Effort;
import darkrim.study.MarginScope;
import darkrim.verdict.Watch;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/**
 * Checks while the date jumps by hours to and fro: {@code ClockJumps FILE LAYOUT...}, with libfaketime loaded that reads the offset from the file, which is there. Exit
 * code 1 if a result has other bits than without jumps, a time that was measured is not between 0 and what went by, or no jump was seen.
 */
public final class ClockJumps {
    private static final List<String> OFFSETS = List.of("+5h", "-7h", "+400d", "-1d");
    private static final long BETWEEN_MILLISECONDS = 50;
    /** A step of the date that is no ordinary passing of time. */
    private static final long JUMP_MILLISECONDS = 3_600_000;

    private final Path file;
    private volatile boolean over;
    // Read by the other thread after this one has ended.
    private int seen;

    private ClockJumps(Path file) {
        this.file = file;
    }

    /** Checks each layout twice. */
    public static void main(String[] arguments) throws Exception {
        ClockJumps jumps = new ClockJumps(Path.of(arguments[0]));
        List<String> layouts = Arrays.asList(arguments).subList(1, arguments.length);
        List<String> still = layouts.stream().map(ClockJumps::result).toList();
        Thread jumping = new Thread(jumps::jump, "jumping");
        jumping.start();
        int other = 0;
        for (int i = 0; i < layouts.size(); i++) {
            if (!result(layouts.get(i)).equals(still.get(i))) {
                System.out.println(layouts.get(i) + ": other bits while the date jumps");
                other++;
            }
        }
        jumps.over = true;
        jumping.join();
        System.out.println(layouts.size() + " checks, " + jumps.seen + " jumps seen, other bits: " + other);
        System.exit(other == 0 && jumps.seen > 0 ? 0 : 1);
    }

    /** A result without its times, which must be sane. */
    private static String result(String layout) {
        long start = System.nanoTime();
        try {
            Effort effort = new Effort(2, Optional.empty(), Optional.of(500_000L), MarginScope.LEAST);
            CheckResult found = Check.coldAndWarm(Path.of(layout), effort, Watch.NONE);
            double whole = found.timing().whole();
            double went = (System.nanoTime() - start) * 1e-9;
            if (!(whole > 0 && whole <= went)) {
                throw new IllegalStateException(layout + " is said to have taken " + whole + " s of " + went + " s");
            }
            return JsonResult.of(found, "0").replaceAll("\"[a-z]+_s\" : [0-9.E-]+", "");
        } catch (UnusableInput unusable) {
            throw new IllegalArgumentException(unusable);
        }
    }

    private void jump() {
        long last = System.currentTimeMillis();
        for (int i = 0; !over; i++) {
            try {
                // Moved there whole: libfaketime ends a process that reads half an offset.
                Path next = Files.writeString(file.resolveSibling("next"), OFFSETS.get(i % OFFSETS.size()));
                Files.move(next, file, StandardCopyOption.ATOMIC_MOVE);
                TimeUnit.MILLISECONDS.sleep(BETWEEN_MILLISECONDS);
            } catch (IOException unwritable) {
                throw new UncheckedIOException(unwritable);
            } catch (InterruptedException stopped) {
                return;
            }
            long now = System.currentTimeMillis();
            seen += Math.abs(now - last) > JUMP_MILLISECONDS ? 1 : 0;
            last = now;
        }
    }
}
