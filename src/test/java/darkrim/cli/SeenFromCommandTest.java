package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.present.Ink;
import darkrim.verdict.StoppingWatch;
import darkrim.verdict.Watch;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SeenFromCommandTest {
    private static final String LAYOUT = "geometries/nightglow-b.yaml";
    private static final String RIM = "mosaic/die[1,1]/rim/+x";

    @TempDir
    Path folder;

    private final StringWriter output = new StringWriter();
    private final StringWriter errors = new StringWriter();

    private int run(String... arguments) {
        return run(Watch.NONE, arguments);
    }

    private int run(Watch watch, String... arguments) {
        return Main.run(
                new Surroundings(OutputWriter.to(output), new PrintWriter(errors), Ink.PLAIN, () -> watch), arguments);
    }

    @Test
    void aPointIsDescribedWithExactAndSampledValuesSideBySide() {
        assertThat(run("seen-from", LAYOUT, "--at", RIM, "--samples", "2e4", "--seed", "3"))
                .isEqualTo(ExitCode.DONE);
        assertThat(errors.toString()).isEmpty();
        // From the layout: the lower corner of the land stands at x = edge, 2.35 mm above the point at x = -1.368; past
        // it the
        // segment of the pupil beyond x = -cut is seen, outside the hole.
        double edge = -40.2 / 2 * (1 - 2.4 / 320) + 37.0 / 2;
        double cut = 1.368 + (-1.368 - edge) * 320 / 2.35;
        double segment = 22.5 * 22.5 * Math.acos(cut / 22.5) - cut * Math.sqrt(22.5 * 22.5 - cut * cut);
        String share = String.format(Locale.ROOT, "%.6g", segment / (Math.PI * (22.5 * 22.5 - 6 * 6)));
        assertThat(output.toString())
                .contains(
                        RIM + " at 0.5,0.5 sees 18.0 % of the pupil.\n",
                        "point    (-1.368, -20.1, 0) mm, facing +z\n",
                        "seed 3, 20,000 samples\n",
                        "share of the pupil   " + share + "  ",
                        " standard errors\n",
                        "lid/opening[1,1]/bevel/+x  ");
        assertThat(output.toString().lines()).allMatch(line -> line.length() <= 100);
    }

    @Test
    void aSurfaceThatIsProvedDarkSeesNone() {
        assertThat(run("seen-from", LAYOUT, "--at", "mosaic/die[1,1]/edge/+x", "--samples", "1e3"))
                .isEqualTo(ExitCode.DONE);
        assertThat(output.toString())
                .contains("mosaic/die[1,1]/edge/+x at 0.5,0.5 sees none of the pupil.\n")
                .containsPattern("share of the pupil +none +none seen +none\n")
                .containsPattern(
                        "The polygons leave a share of \\d\\.\\d\\de-11; up to \\d\\.\\d\\de-1\\d it cannot be told from");
    }

    @Test
    void theDrawingIsWrittenAndReplacedOnlyWhenAsked() throws Exception {
        Path svg = folder.resolve("seen.svg");
        String[] arguments = {"seen-from", LAYOUT, "--at", RIM + ":0.2,0.8", "--samples", "1e3", "--svg", svg.toString()
        };
        assertThat(run(arguments)).isEqualTo(ExitCode.DONE);
        assertThat(svg).content().startsWith("<?xml").endsWith("</svg>\n");
        Files.writeString(svg, "mine");
        output.getBuffer().setLength(0);
        assertThat(run(arguments)).isEqualTo(ExitCode.UNUSABLE);
        assertThat(svg).hasContent("mine");
        assertThat(output.toString()).isEmpty();
        assertThat(errors.toString())
                .isEqualTo("darkrim: --svg " + svg
                        + ": there is such a file already; --overwrite replaces it; nothing was done.\n");
        assertThat(run(Stream.concat(Stream.of(arguments), Stream.of("--overwrite"))
                        .toArray(String[]::new)))
                .isEqualTo(ExitCode.DONE);
        assertThat(svg).content().startsWith("<?xml");
        try (Stream<Path> files = Files.list(folder)) {
            assertThat(files.toList()).isEqualTo(List.of(svg));
        }
    }

    @Test
    void anUnknownSurfaceIsAnsweredWithTheNearestNames() {
        assertThat(run("seen-from", LAYOUT, "--at", "mosaic/die[1,1]/rims/+x")).isEqualTo(ExitCode.UNUSABLE);
        assertThat(errors.toString())
                .startsWith("darkrim: --at: there is no surface 'mosaic/die[1,1]/rims/+x'; the nearest names are "
                        + "'mosaic/die[1,1]/rim/+x', ");
        assertThat(output.toString()).isEmpty();
    }

    @Test
    void aPatternOrHostileNameIsNoSurface() {
        assertThat(run("seen-from", LAYOUT, "--at", "lid/**\u001b[2J")).isEqualTo(ExitCode.UNUSABLE);
        assertThat(errors.toString()).contains("there is no surface").doesNotContain("\u001b");
    }

    @Test
    void sharesOutsideTheRectangleAreRefused() {
        assertThat(run("seen-from", LAYOUT, "--at", RIM + ":0.5,1.5")).isEqualTo(ExitCode.UNUSABLE);
        assertThat(errors.toString()).contains("two shares from 0 to 1").contains("seen-from --help");
    }

    @Test
    void withoutAPointNothingIsDone() {
        assertThat(run("seen-from", LAYOUT)).isEqualTo(ExitCode.UNUSABLE);
        assertThat(errors.toString()).contains("--at");
    }

    @Test
    void aLayoutWithErrorsIsRefusedWithAllOfThem() throws Exception {
        Path file = Files.writeString(folder.resolve("bad.yaml"), "title: x\nbeam: {}\n");
        assertThat(run("seen-from", file.toString(), "--at", "a")).isEqualTo(ExitCode.UNUSABLE);
        assertThat(errors.toString()).contains(file + ":").contains("in the layout; nothing was checked.");
    }

    @Test
    void aFileThatIsNotThereIsRefused() {
        assertThat(run("seen-from", folder.resolve("none.yaml").toString(), "--at", "a"))
                .isEqualTo(ExitCode.UNUSABLE);
        assertThat(errors.toString()).contains("none.yaml").doesNotContain("Exception");
    }

    @Test
    void stoppedWorkEndsWithTheCodeForIt() {
        Watch stopAtOnce = StoppingWatch.after(0);
        assertThat(run(stopAtOnce, "seen-from", LAYOUT, "--at", RIM)).isEqualTo(ExitCode.UNDECIDED);
        assertThat(output.toString())
                .contains("sees 18.0 % of the pupil", "0 samples when it was stopped", "not sampled");
    }

    @Test
    void aBreakOfTheProgramNamesTheLayoutAndShowsNoStackTrace() {
        Watch broken = new Watch() {
            @Override
            public void progress(String step, long done, long most) {
                throw new IllegalStateException("broken on purpose");
            }

            @Override
            public boolean stop() {
                return false;
            }
        };
        assertThat(run(broken, "seen-from", LAYOUT, "--at", RIM)).isEqualTo(ExitCode.BROKEN);
        assertThat(errors.toString())
                .contains("the program broke while checking " + LAYOUT)
                .doesNotContain("at darkrim", "broken on purpose");
    }

    @Test
    void helpExplainsQuotesAndExitCodes() {
        assertThat(run("seen-from", "--help")).isZero();
        assertThat(output.toString()).contains("single quotes", "Exit codes:", "--svg=FILE", "SURFACE[:u,v]");
    }
}
