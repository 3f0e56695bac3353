package darkrim.present.geometry;

import darkrim.present.picture.LightUnit;
import darkrim.study.irradiance.CheckedLight;
import darkrim.study.irradiance.DarkProof;
import darkrim.study.irradiance.LightKind;
import darkrim.study.journal.CsvLine;
import darkrim.verdict.Verdict;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The surfaces of a scene as comma-separated values (RFC 4180): what the numbers in a grid of VTK stand for, and the light on each. */
public final class SurfaceCsv {
    private SurfaceCsv() {}

    /**
     * A line for each surface.
     *
     * @param faces the surfaces
     * @param unit in what light is given; empty leaves light out
     * @param checked what a check found, where light is in it
     */
    public static String of(List<LitFaces> faces, Optional<LightUnit> unit, Optional<CheckedLight> checked) {
        List<String> head = new ArrayList<>(List.of("number", "surface", "part", "finish", "area [mm2]"));
        unit.ifPresent(each -> {
            String in = each.unit().isEmpty() ? "" : " [" + each.unit() + "]";
            for (LightKind kind : List.of(LightKind.DIRECT, LightKind.ONCE_REFLECTED)) {
                head.add(kind.words() + in);
                head.add("standard error of " + kind.words() + in);
            }
            head.add("verdict on light");
            head.add("proof about direct light");
        });
        StringBuilder text = new StringBuilder(CsvLine.of(head));
        for (LitFaces face : faces) {
            List<String> line = new ArrayList<>(List.of(
                    String.valueOf(face.surface().index()),
                    face.surface().name(),
                    face.part(),
                    face.surface().finish().name(),
                    CsvLine.number(face.surface().area())));
            unit.ifPresent(each -> {
                for (LightKind kind : List.of(LightKind.DIRECT, LightKind.ONCE_REFLECTED)) {
                    line.add(known(face.map().mean(kind) * each.perRelative()));
                    line.add(known(face.map().meanError(kind) * each.perRelative()));
                }
                line.add(checked.map(CheckedLight::verdicts)
                        .map(all -> all.get(face.surface().index()))
                        .map(Verdict::name)
                        .map(name -> name.toLowerCase(Locale.ROOT))
                        .orElse(""));
                line.add(
                        face.map().proof() == DarkProof.NONE
                                ? ""
                                : face.map().proof().words());
            });
            text.append(CsvLine.of(line));
        }
        return text.toString();
    }

    private static String known(double value) {
        return Double.isFinite(value) ? CsvLine.number(value) : "";
    }
}
