package darkrim.view.window;

import darkrim.view.camera.Box;
import darkrim.view.camera.Camera;
import javafx.scene.ParallelCamera;
import javafx.scene.PerspectiveCamera;
import javafx.scene.SubScene;
import javafx.scene.transform.Affine;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Puts the viewer's place into the terms of JavaFX, whose y runs down and z away from the viewer. The world is moved, the camera stays where
 * it is.
 */
final class CameraRig {
    /** Lines are drawn this share of their distance nearer, so that the faces that they bound do not hide them. */
    private static final double LIFT = 4e-4;
    /** The nearest that is drawn, as a share of the farthest: the depth buffer tells no more apart. */
    private static final double NEAREST = 2e-4;

    private final PerspectiveCamera perspective = new PerspectiveCamera(true);
    private final ParallelCamera parallel = new ParallelCamera();
    private final Affine faces = new Affine();
    private final Affine[] lines = new Affine[5];
    /** Where the copies of bold lines stand beside the first, pixels. */
    private static final double[][] SHIFTS = {{0, 0}, {0.75, 0}, {-0.75, 0}, {0, 0.75}, {0, -0.75}};

    CameraRig() {
        perspective.setFieldOfView(Camera.FIELD);
        perspective.setVerticalFieldOfView(true);
        for (int i = 0; i < lines.length; i++) {
            lines[i] = new Affine();
        }
    }

    /** The place of faces. */
    Affine faces() {
        return faces;
    }

    /** The place of the copies of lines: the first for thin ones, all of them for bold ones. */
    Affine[] lines() {
        return lines;
    }

    /**
     * Moves the world.
     *
     * @param view where it is shown
     * @param camera where the viewer stands
     * @param box the box around all that is drawn
     */
    void apply(SubScene view, Camera camera, Box box) {
        double width = view.getWidth();
        double height = view.getHeight();
        if (width <= 0 || height <= 0) {
            return;
        }
        Vector3D middle = camera.seen(box.centre());
        double radius = Math.max(1e-6, box.radius()) * 1.01;
        if (camera.parallel()) {
            view.setCamera(parallel);
            double scale = height / camera.span();
            // The camera draws what lies within half the longer side of the view.
            double depthScale = 0.49 * Math.max(width, height) / radius;
            for (int i = -1; i < lines.length; i++) {
                double lift = i < 0 ? 0 : LIFT * camera.span() * depthScale / 4;
                double right = i < 0 ? 0 : SHIFTS[i][0];
                double down = i < 0 ? 0 : SHIFTS[i][1];
                set(i < 0 ? faces : lines[i], camera, new double[] {scale, scale, depthScale}, new double[] {
                    width / 2 + right, height / 2 + down, depthScale * middle.getZ() - lift
                });
            }
        } else {
            view.setCamera(perspective);
            double distance = camera.distance();
            double far = Math.max(distance - middle.getZ() + radius, distance * 1e-3);
            perspective.setFarClip(far);
            perspective.setNearClip(Math.max(far * NEAREST, distance - middle.getZ() - radius));
            double pixel = camera.span() / height;
            for (int i = -1; i < lines.length; i++) {
                double size = i < 0 ? 1 : 1 - LIFT;
                double right = i < 0 ? 0 : SHIFTS[i][0] * pixel;
                double down = i < 0 ? 0 : SHIFTS[i][1] * pixel;
                set(i < 0 ? faces : lines[i], camera, new double[] {size, size, size}, new double[] {
                    right, down, size * distance
                });
            }
        }
    }

    private static void set(Affine affine, Camera camera, double[] scale, double[] shift) {
        Vector3D right = camera.right().multiply(scale[0]);
        Vector3D down = camera.up().multiply(-scale[1]);
        Vector3D away = camera.back().multiply(-scale[2]);
        Vector3D focus = camera.focus();
        affine.setToTransform(
                right.getX(),
                right.getY(),
                right.getZ(),
                shift[0] - right.dot(focus),
                down.getX(),
                down.getY(),
                down.getZ(),
                shift[1] - down.dot(focus),
                away.getX(),
                away.getY(),
                away.getZ(),
                shift[2] - away.dot(focus));
    }
}
