package darkrim.present.json;

import darkrim.diagnostic.Place;

/** A place in the layout file, lines and columns from 1. */
record PlaceDocument(String file, int line, int column) {
    static PlaceDocument of(Place place) {
        return new PlaceDocument(place.file(), place.line(), place.column());
    }
}
