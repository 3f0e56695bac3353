package darkrim.present.picture;

import java.util.List;

/**
 * What is written on a picture.
 *
 * @param title the layout with its revision
 * @param what what the picture shows, one line
 * @param foot where it comes from and how to read it, a paragraph each
 */
public record PictureText(String title, String what, List<String> foot) {
    /** Copies the list. */
    public PictureText {
        foot = List.copyOf(foot);
    }
}
