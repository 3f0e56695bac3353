package darkrim.cli;

import darkrim.present.picture.ColourScale;
import darkrim.present.picture.ScenePicture;
import darkrim.present.picture.Subject;
import darkrim.scene.DistantBody;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.study.NoSuchPoint;
import darkrim.study.SurfaceNames;
import darkrim.study.irradiance.ExampleRay;
import darkrim.study.irradiance.LightKind;
import darkrim.study.irradiance.LitLayout;
import darkrim.study.irradiance.SurfaceMap;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** Parts with the light on them. */
record PartsDrawing(DrawingTask task, DrawnParts look) implements Drawing {
    private static final List<String> CELLS = List.of("**/active", "**/opening*/**");
    private static final int ALONG = 24;
    private static final int SAMPLES = 128;

    @Override
    public void check(Scene scene) throws NoSuchPoint {
        if (look.path().isPresent()) {
            SurfaceNames.find(scene, look.path().get());
        }
    }

    /** A ray to the surface that was asked for, of each class of light that is shown. */
    private List<List<Vector3D>> paths(LitLayout lit) {
        LightKind kind = task.light().light().orElse(LightKind.TOTAL);
        Optional<Surface> receiver = look.path().flatMap(lit.scene()::surface);
        if (receiver.isEmpty()) {
            return List.of();
        }
        ExampleRay rays = new ExampleRay(lit.checked());
        List<List<Vector3D>> paths = new ArrayList<>();
        if (kind != LightKind.ONCE_REFLECTED) {
            rays.direct(receiver.get()).ifPresent(paths::add);
        }
        if (kind != LightKind.DIRECT) {
            rays.reflected(receiver.get()).ifPresent(paths::add);
        }
        return task.source().isPresent()
                ? paths.stream().map(path -> shortened(path, lit.scene())).toList()
                : paths;
    }

    /** A ray from far away, begun at twice the reach of the parts: near enough to be drawn. */
    private static List<Vector3D> shortened(List<Vector3D> path, Scene scene) {
        List<Vector3D> shorter = new ArrayList<>(path);
        shorter.set(0, DistantBody.drawn(scene.reach(), path.get(0), path.get(1)));
        return shorter;
    }

    @Override
    public LitLayout.Fineness fineness() {
        SurfacePatterns cells =
                new SurfacePatterns("--cells", task.light().cells().orElse(CELLS));
        return task.fineness(cells::selects, ALONG, SAMPLES);
    }

    @Override
    public boolean judged() {
        return true;
    }

    @Override
    public String what(LitLayout lit) {
        String ray = look.path()
                .map(name -> paths(lit).isEmpty() ? " No ray to " + name + " was found." : " Ray to " + name + ".")
                .orElse("");
        return task.light().light().map(kind -> task.beginning(kind) + ". ").orElse("") + look.words() + ray;
    }

    @Override
    public byte[] png(LitLayout lit) {
        BitSet shown = look.shown(lit.scene());
        List<SurfaceMap> maps = shown.stream().mapToObj(lit.maps()::get).toList();
        ColourScale scale = task.scale(lit, maps);
        Subject subject = task.subject(
                lit, shown, scale, look.outlines() ? lit.checked().verdicts() : Map.of(), look.section(), paths(lit));
        return new ScenePicture(subject, task.text(lit, List.of(), what(lit), scale))
                .png(
                        look.view(lit.scene(), subject.corners()),
                        task.size().width(),
                        task.size().height(),
                        task.effort().threads());
    }
}
