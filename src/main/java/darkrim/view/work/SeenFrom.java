package darkrim.view.work;

import darkrim.present.picture.SeenPicture;
import darkrim.study.PointName;
import darkrim.study.irradiance.SurfaceMap;
import darkrim.view.look.Light;
import darkrim.view.parts.Stage;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What a point sees, as far as it is known by now. Immutable.
 *
 * @param point the point
 * @param stage the layout in which it was looked for
 * @param lighting the light, with what was known of it
 * @param light the class of light that is shown
 * @param picture what it sees; empty where there is no such point
 * @param maps the light on what is seen, cell by cell, by number of the surface, as far as it is sampled
 * @param share how much of the pupil is seen, in words; empty until it is known
 * @param hidden what hides the rest, the one that hides most first
 * @param refused why there is no such point; otherwise empty
 * @param finished whether nothing more is to come
 */
public record SeenFrom(
        PointName point,
        Stage stage,
        Lighting lighting,
        Light light,
        Optional<SeenPicture> picture,
        Map<Integer, SurfaceMap> maps,
        String share,
        List<String> hidden,
        String refused,
        boolean finished) {
    /** Copies the collections. */
    public SeenFrom {
        maps = Map.copyOf(maps);
        hidden = List.copyOf(hidden);
    }

    static SeenFrom refused(PointName point, Stage stage, Lighting lighting, Light light, String why) {
        return new SeenFrom(point, stage, lighting, light, Optional.empty(), Map.of(), "", List.of(), why, true);
    }

    SeenFrom with(SeenPicture other, Map<Integer, SurfaceMap> found, boolean last) {
        return new SeenFrom(point, stage, lighting, light, Optional.of(other), found, share, hidden, refused, last);
    }

    SeenFrom with(String seenShare, List<String> hiding) {
        return new SeenFrom(point, stage, lighting, light, picture, maps, seenShare, hiding, refused, finished);
    }

    /** The light at a place of a surface that is seen; empty where it is not known cell by cell, and where no light is shown. */
    public Optional<Reading> cell(SeenPicture.Seen seen) {
        SurfaceMap map = maps.get(seen.surface());
        if (map == null || light == Light.NONE) {
            return Optional.empty();
        }
        int cell = map.cells()
                .cellAt(
                        seen.facet(),
                        seen.point().getX(),
                        seen.point().getY(),
                        seen.point().getZ());
        Reading reading = Reading.of(map, light.kind(), cell);
        return Double.isNaN(reading.value()) ? Optional.empty() : Optional.of(reading);
    }
}
