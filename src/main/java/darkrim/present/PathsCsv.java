package darkrim.present;

import darkrim.light.Reflector;
import darkrim.scene.Surface;
import darkrim.study.journal.CsvLine;
import darkrim.study.path.PathResult;
import darkrim.study.path.ReceiverPaths;
import darkrim.study.path.TopPath;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Light paths as comma-separated values (RFC 4180): a line each, in the order of the report. What there is one of for each reflection stands
 * in one field, in the order in which light meets the surfaces, with {@code ;} between.
 */
public final class PathsCsv {
    private static final List<String> HEADER = List.of(
            "receiver",
            "reflections",
            "kind",
            "via",
            "by",
            "incidence [deg]",
            "share",
            "irradiance",
            "standard error",
            "brightest on receiver x [mm]",
            "brightest on receiver y [mm]",
            "brightest on receiver z [mm]",
            "share there",
            "on last surface x [mm]",
            "on last surface y [mm]",
            "on last surface z [mm]",
            "share on last surface there",
            "line [mm]");

    private PathsCsv() {}

    /** All paths, with a header that names the units. */
    public static String of(PathResult result) {
        StringBuilder text = new StringBuilder(CsvLine.of(HEADER));
        for (ReceiverPaths receiver : result.receivers()) {
            for (TopPath path : receiver.strongest()) {
                text.append(CsvLine.of(
                        fields(receiver.receiver(), path, result.scene().reflecting())));
            }
        }
        return text.toString();
    }

    private static List<String> fields(Surface receiver, TopPath path, List<Surface> surfaces) {
        List<Reflector> reflectors = path.path().reflectors();
        List<String> fields = new ArrayList<>(List.of(
                receiver.name(),
                String.valueOf(path.path().order()),
                PathWords.kind(path.path()),
                joined(reflectors, each -> surfaces.get(each.surface()).name()),
                joined(reflectors, PathWords::part),
                joined(path.incidences(), each -> String.valueOf(each.mean())),
                String.valueOf(path.share()),
                String.valueOf(path.irradiance().mean()),
                String.valueOf(path.irradiance().standardError())));
        fields.addAll(coordinates(path.onReceiver().centre()));
        fields.add(String.valueOf(path.onReceiver().share()));
        fields.addAll(coordinates(path.onLast().centre()));
        fields.add(String.valueOf(path.onLast().share()));
        fields.add(joined(path.example(), point -> String.join(" ", coordinates(point))));
        return fields;
    }

    private static <T> String joined(List<T> all, Function<T, String> text) {
        return all.stream().map(text).collect(Collectors.joining(";"));
    }

    private static List<String> coordinates(Vector3D point) {
        return List.of(String.valueOf(point.getX()), String.valueOf(point.getY()), String.valueOf(point.getZ()));
    }
}
