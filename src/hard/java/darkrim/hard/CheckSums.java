package darkrim.hard;

import darkrim.present.json.JsonResult;
import darkrim.study.Check;
import darkrim.study.Effort;
import darkrim.study.MarginScope;
import darkrim.verdict.Watch;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;

/**
 * Sums of the results of checks without the times they took: {@code CheckSums SAMPLES MINUTES THREADS,... LAYOUT...} prints a line for each layout
 * and number of threads, until the time is over.
 */
public final class CheckSums {
    private CheckSums() {}

    /** Checks one layout after the other. */
    public static void main(String[] arguments) throws Exception {
        long samples = Long.parseLong(arguments[0]);
        long end = System.nanoTime() + (long) (Double.parseDouble(arguments[1]) * 60e9);
        int[] numbers = Arrays.stream(arguments[2].split(",", -1))
                .mapToInt(Integer::parseInt)
                .toArray();
        List<String> layouts = Arrays.asList(arguments).subList(3, arguments.length);
        for (String layout : layouts) {
            if (System.nanoTime() > end) {
                return;
            }
            for (int threads : numbers) {
                Effort effort = new Effort(threads, Optional.empty(), Optional.of(samples), MarginScope.LEAST);
                String result = JsonResult.of(Check.coldAndWarm(Path.of(layout), effort, Watch.NONE), "0");
                byte[] sum = MessageDigest.getInstance("SHA-256")
                        .digest(result.replaceAll("\"[a-z]+_s\" : [0-9.E-]+", "")
                                .getBytes(StandardCharsets.UTF_8));
                System.out.println(layout + " " + threads + " " + HexFormat.of().formatHex(sum));
            }
        }
    }
}
