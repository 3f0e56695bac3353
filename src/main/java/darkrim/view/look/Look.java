package darkrim.view.look;

import darkrim.view.camera.Camera;
import darkrim.view.parts.Section;
import java.util.Collection;
import java.util.Collections;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * All that the viewer has chosen to see. Surfaces go by name, so that a choice outlives a change of the layout. Immutable.
 *
 * @param camera where the viewer stands
 * @param light the class of light
 * @param source name of the source whose light it is; empty for the beam
 * @param scale how values become colours
 * @param hidden names of hidden surfaces
 * @param selected name of the selected surface
 * @param section the section plane, where there is one
 * @param ruler the ruler
 * @param verdictMarks whether keep-dark faces are outlined and lettered by verdict
 * @param cells whether mapped surfaces are coloured cell by cell
 */
public record Look(
        Camera camera,
        Light light,
        Optional<String> source,
        ScaleChoice scale,
        Set<String> hidden,
        Optional<String> selected,
        Optional<Section> section,
        Ruler ruler,
        boolean verdictMarks,
        boolean cells) {
    /** Copies the set. */
    public Look {
        hidden = Collections.unmodifiableSet(new TreeSet<>(hidden));
    }

    /** A first look. */
    public static Look from(Camera camera) {
        return new Look(
                camera,
                Light.DIRECT,
                Optional.empty(),
                ScaleChoice.FIRST,
                Set.of(),
                Optional.empty(),
                Optional.empty(),
                Ruler.EMPTY,
                true,
                true);
    }

    /** Whether a surface is shown. */
    public boolean shows(String surface) {
        return !hidden.contains(surface);
    }

    /** From elsewhere. */
    public Look with(Camera other) {
        return new Look(other, light, source, scale, hidden, selected, section, ruler, verdictMarks, cells);
    }

    /** In another light. */
    public Look with(Light other) {
        return new Look(camera, other, source, scale, hidden, selected, section, ruler, verdictMarks, cells);
    }

    /** In the light of a source, or of the beam. */
    public Look litBy(Optional<String> other) {
        return new Look(camera, light, other, scale, hidden, selected, section, ruler, verdictMarks, cells);
    }

    /** Whether verdicts are marked on faces: they are about the light of the beam, and not shown with another. */
    public boolean marksVerdicts() {
        return verdictMarks && source.isEmpty();
    }

    /** The light that is shown, for people, such as {@code direct, of moon}. */
    public String lightWords() {
        return light.words()
                + (light == Light.NONE ? "" : source.map(name -> ", of " + name).orElse(""));
    }

    /** By another scale. */
    public Look with(ScaleChoice other) {
        return new Look(camera, light, source, other, hidden, selected, section, ruler, verdictMarks, cells);
    }

    /** With another ruler. */
    public Look with(Ruler other) {
        return new Look(camera, light, source, scale, hidden, selected, section, other, verdictMarks, cells);
    }

    /** Cut by a plane, or whole. */
    public Look cut(Optional<Section> other) {
        return new Look(camera, light, source, scale, hidden, selected, other, ruler, verdictMarks, cells);
    }

    /** With another surface selected, or none. */
    public Look selecting(Optional<String> other) {
        return new Look(camera, light, source, scale, hidden, other, section, ruler, verdictMarks, cells);
    }

    /** With or without the marks of verdicts. */
    public Look marking(boolean marks) {
        return new Look(camera, light, source, scale, hidden, selected, section, ruler, marks, cells);
    }

    /** With or without the cells of maps. */
    public Look celled(boolean on) {
        return new Look(camera, light, source, scale, hidden, selected, section, ruler, verdictMarks, on);
    }

    /** With only these hidden. */
    public Look hidingOnly(Collection<String> surfaces) {
        return new Look(
                camera, light, source, scale, Set.copyOf(surfaces), selected, section, ruler, verdictMarks, cells);
    }

    /** With these hidden, too. */
    public Look hiding(Collection<String> surfaces) {
        Set<String> all = new TreeSet<>(hidden);
        all.addAll(surfaces);
        return hidingOnly(all);
    }

    /** With these shown again. */
    public Look showing(Collection<String> surfaces) {
        Set<String> left = new TreeSet<>(hidden);
        left.removeAll(surfaces);
        return hidingOnly(left);
    }

    /** With these shown and all others hidden. */
    public Look isolating(Collection<String> surfaces, Collection<String> all) {
        Set<String> others = new TreeSet<>(all);
        others.removeAll(surfaces);
        return hidingOnly(others);
    }
}
