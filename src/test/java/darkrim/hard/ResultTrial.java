package darkrim.hard;

import darkrim.present.Results;
import darkrim.present.json.JsonResult;
import darkrim.present.json.SavedCheck;
import darkrim.present.json.SavedResult;
import darkrim.study.Check;
import darkrim.study.Effort;
import darkrim.study.irradiance.PlacedLayout;
import darkrim.verdict.Watch;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.SplittableRandom;

/** Changed results of a check, as {@code draw} and {@code view} read them. */
final class ResultTrial implements Trial {
    private final Path file;
    private final PlacedLayout placed;
    private final byte[] whole;

    /**
     * @param folder where the files go
     */
    ResultTrial(Path folder) throws Exception {
        file = folder.resolve("fuzzed.json");
        Path layout = folder.resolve("slit.yaml");
        Files.writeString(
                layout,
                Results.yaml(
                        "",
                        "dark: {surfaces: '{left,right}/back', direct: none}",
                        "dim: {surfaces: screen/front, once_reflected: {at_most: 0.5}}"));
        placed = PlacedLayout.of(layout);
        whole = JsonResult.of(Check.of(layout, new Effort(1, Optional.of(1L), Optional.of(20_000L)), Watch.NONE), "1")
                .getBytes(StandardCharsets.UTF_8);
    }

    @Override
    public String name() {
        return "results";
    }

    @Override
    public byte[] input(SplittableRandom random) {
        return new Mutation(random).of(whole, whole);
    }

    @Override
    public End read(byte[] input) throws Exception {
        Files.write(file, input);
        try {
            SavedCheck.read(file, placed);
            return End.USED;
        } catch (SavedResult.Unusable refused) {
            return End.REFUSED;
        }
    }
}
