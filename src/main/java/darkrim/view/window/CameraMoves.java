package darkrim.view.window;

import darkrim.scene.Surface;
import darkrim.view.camera.Box;
import darkrim.view.camera.Camera;
import darkrim.view.camera.Direction;
import darkrim.view.parts.Stage;
import darkrim.view.work.ViewModel;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** From where the parts are looked at, of two layouts side by side by the same camera. */
final class CameraMoves {
    private final ViewModel model;
    private final Eye eye;

    CameraMoves(ViewModel model, Eye eye) {
        this.model = model;
        this.eye = eye;
    }

    /** Everything that is shown, from the same direction. */
    void fit() {
        model.stages().stream()
                .flatMap(stage -> {
                    List<Surface> shown = stage.scene().surfaces().stream()
                            .filter(surface -> model.look().shows(surface.name()))
                            .toList();
                    return shown.isEmpty() ? Stream.empty() : Stream.of(stage.boxAround(shown));
                })
                .reduce(CameraMoves::around)
                .or(this::everything)
                .ifPresent(box -> move(camera -> eye.fitted(camera, box)));
    }

    /** The selected surface, with some room around it. */
    void fitSelection() {
        model.look()
                .selected()
                .ifPresent(name -> model.stages().stream()
                        .flatMap(stage ->
                                stage.scene().surface(name).stream().map(surface -> stage.boxAround(List.of(surface))))
                        .reduce(CameraMoves::around)
                        .ifPresent(box -> {
                            double room = Math.max(0.1 * box.radius(), 0.05);
                            Vector3D around = Vector3D.of(room, room, room);
                            Box roomy = new Box(
                                    box.low().subtract(around), box.high().add(around));
                            move(camera -> eye.fitted(camera, roomy));
                        }));
    }

    /** One of the standard directions, with everything in view. */
    void look(Direction direction) {
        Optional<Box> all = everything();
        move(camera -> {
            Camera turned = camera.from(direction);
            return all.map(box -> eye.fitted(turned, box)).orElse(turned);
        });
    }

    /** From in front, above and to the right, as at first. */
    void home() {
        everything()
                .ifPresent(box -> move(camera -> {
                    Camera first = Camera.at(box, 1);
                    return eye.fitted(first.projecting(camera.parallel()), box);
                }));
    }

    /** Turns the viewer about the middle of the view, deg. */
    void turn(double azimuth, double elevation) {
        move(camera -> camera.orbited(camera.focus(), azimuth, elevation));
    }

    /** Shifts the picture, shares of its height. */
    void shift(double right, double down) {
        move(camera -> camera.panned(right * camera.span(), down * camera.span()));
    }

    /** Nearer (below 1) or farther. */
    void zoom(double factor) {
        move(camera -> camera.zoomed(camera.focus(), factor));
    }

    /** The other projection. */
    void projection() {
        move(camera -> camera.projecting(!camera.parallel()));
    }

    private void move(UnaryOperator<Camera> change) {
        model.change(look -> look.with(change.apply(look.camera())));
    }

    /** The box around everything, of both layouts where two stand side by side. */
    Optional<Box> everything() {
        return model.stages().stream().map(Stage::box).reduce(CameraMoves::around);
    }

    private static Box around(Box one, Box two) {
        return one.with(two.low()).with(two.high());
    }
}
