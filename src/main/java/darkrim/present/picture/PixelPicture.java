package darkrim.present.picture;

import darkrim.study.SurfacePoint;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** The scene as one point of a surface sees it, with the pupil outlined. */
public final class PixelPicture {
    private final ScenePicture picture;
    private final Fisheye sight;

    /**
     * @param subject what is seen
     * @param text what is written on it
     * @param at the point
     * @param up the direction along the surface that is up in the picture
     * @param halfAngle angle from the middle of the picture to its rim, deg, above 0 and up to 90
     */
    public PixelPicture(Subject subject, PictureText text, SurfacePoint at, Vector3D up, double halfAngle) {
        picture = new ScenePicture(subject, text);
        sight = Fisheye.of(at, up, halfAngle, subject.scene().beam().pupil());
    }

    /**
     * Draws it.
     *
     * @param width width, pixels
     * @param height height, pixels
     * @param threads number of threads; never changes the picture
     * @return a PNG file
     */
    public byte[] png(int width, int height, int threads) {
        return picture.png(aspect -> sight, width, height, threads);
    }
}
