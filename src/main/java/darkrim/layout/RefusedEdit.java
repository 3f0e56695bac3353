package darkrim.layout;

import darkrim.diagnostic.Place;

/** A value cannot be put into the text of a layout file; the message says where and why. */
public final class RefusedEdit extends Exception {
    private static final long serialVersionUID = 1L;

    private final transient Place place;

    /**
     * @param place where
     * @param why what is in the way, and what was expected
     */
    public RefusedEdit(Place place, String why) {
        super(place + ": " + why);
        this.place = place;
    }

    /** Where. */
    public Place place() {
        return place;
    }
}
