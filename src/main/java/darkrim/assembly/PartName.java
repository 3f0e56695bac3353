package darkrim.assembly;

/** The part in the path of a body or a surface, such as {@code mosaic} of {@code mosaic[1,2]/die[1,1]/edge/+x}. */
public final class PartName {
    private PartName() {}

    /** The first step of a path, without the number of a copy. */
    public static String of(String path) {
        String copy = ofCopy(path);
        int number = copy.indexOf('[');
        return number < 0 ? copy : copy.substring(0, number);
    }

    /** The first step of a path, with the number of a copy where the part is repeated. */
    public static String ofCopy(String path) {
        int end = path.indexOf('/');
        return end < 0 ? path : path.substring(0, end);
    }
}
