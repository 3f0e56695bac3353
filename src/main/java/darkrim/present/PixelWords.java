package darkrim.present;

import darkrim.study.pixel.PixelSight;
import darkrim.study.pixel.PixelView;
import darkrim.study.pixel.SeenThing;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Sentences about what pixels see. */
final class PixelWords {
    private PixelWords() {}

    /** The answer first: what the worst point sees. */
    static List<String> summary(PixelView view) {
        if (view.sights().isEmpty()) {
            return List.of("Stopped before any point was looked at.");
        }
        boolean warm = view.warmth().isPresent();
        PixelSight worst = view.sights().stream()
                .max(Comparator.comparingDouble(sight ->
                        warm ? sight.warm().photons().mean() : sight.lit().mean()))
                .orElseThrow();
        String point = Printable.of(worst.place().point().text());
        List<String> sentences = new ArrayList<>();
        if (warm) {
            sentences.add((view.sights().size() == 1 ? "" : "The most of all points looked at: ") + point + " gets "
                    + Figures.withError(
                            worst.warm().photons().mean(),
                            worst.warm().photons().standardError())
                    + " warm photons/s on " + (worst.hasPixel() ? "its pixel" : "1 mm2") + from(worst)
                    + ". Hold this against the dark current.");
        }
        double lit = worst.lit().mean();
        sentences.add(point + " sees "
                + (lit == 0
                        ? "no surface that the beam strikes, as far as rays tell."
                        : Figures.three(lit) + " sr of surfaces that the beam strikes" + via(worst) + "."));
        view.search().ifPresent(search -> sentences.add(search(search)));
        return sentences;
    }

    private static String from(PixelSight sight) {
        return sight.things().stream()
                .filter(thing -> thing.photons() > 0)
                .max(Comparator.comparingDouble(SeenThing::photons))
                .map(most -> ", "
                        + Figures.percent(
                                most.photons() / sight.warm().photons().mean()) + " of them by way of "
                        + Printable.of(most.name()))
                .orElse("");
    }

    private static String via(PixelSight sight) {
        return sight.things().stream()
                .filter(thing -> thing.lit().mean() > 0)
                .max(Comparator.comparingDouble(thing -> thing.lit().mean()))
                .map(most -> ", most of it " + Printable.of(most.name()))
                .orElse("");
    }

    private static String search(PixelView.Search search) {
        return "The worst pixel is the one with "
                + (search.byWarmth()
                        ? "the most warm light"
                        : "the largest projected solid angle of surfaces that the beam strikes")
                + " among " + Figures.counted(search.tried(), "place") + ": a grid of " + search.grid() + " x "
                + search.grid() + " on " + Figures.all(search.areas(), "active area") + ", then around the worst in "
                + search.halvings() + " halved steps, " + Figures.counted(search.raysEach(), "ray")
                + " each. This is a search, no proof: a pixel between the places may be worse.";
    }

    /** What the columns mean, and what is left out. */
    static List<String> notes(PixelView view) {
        List<String> notes = new ArrayList<>();
        notes.add(
                "Projected solid angle: solid angle weighted by the cosine at the point; all together pi. Struck: the "
                        + "same, counted by the share of the pupil that shines on each place that is seen. Once reflected: relative "
                        + "irradiance at the point, by the estimate that 'darkrim check' uses. Errors are standard errors.");
        if (view.warmth().isPresent()) {
            notes.add("Emits: what the surface itself sends to the pixel. Reflects: warm light of all surfaces that it "
                    + "sends on, after any number of reflections. Not counted: windows, straps and cables, parts that the "
                    + "layout does not have, and surfaces that are warmer than stated.");
            if (view.layout().warmth().orElseThrow().surroundings().isEmpty()
                    && view.sights().stream().anyMatch(sight -> sight.seen(SeenThing.Kind.OPEN) > 0)) {
                notes.add(
                        "CAUTION: where no part is met, nothing is emitted, for the layout states no temperature of its "
                                + "surroundings. What stands there in truth adds to these numbers.");
            }
            if (view.layout().warmth().orElseThrow().pupil().isEmpty()) {
                notes.add("Light of the beam itself and warm optics behind the pupil are not in these numbers.");
            }
        } else {
            notes.add("The layout says nothing of temperatures (key warmth), so no warm light was followed.");
        }
        if (view.sights().stream().anyMatch(sight -> sight.seen(SeenThing.Kind.INSIDE) > 0)) {
            notes.add("CAUTION: some rays begin or run inside a solid part: parts run into one another there.");
        }
        return notes;
    }
}
