package darkrim.cli;

import darkrim.layout.SourceSpec;
import darkrim.layout.form.Wording;
import darkrim.present.Printable;
import darkrim.present.picture.ColourScale;
import darkrim.present.picture.LightUnit;
import darkrim.present.picture.MapPicture;
import darkrim.present.picture.PictureText;
import darkrim.present.picture.PictureWords;
import darkrim.present.picture.PixelPicture;
import darkrim.present.picture.ScenePicture;
import darkrim.present.picture.Section;
import darkrim.present.picture.Subject;
import darkrim.scene.DistantBody;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.study.Effort;
import darkrim.study.NoSuchPoint;
import darkrim.study.SurfaceNames;
import darkrim.study.SurfacePoint;
import darkrim.study.SurfaceRectangle;
import darkrim.study.irradiance.ExampleRay;
import darkrim.study.irradiance.LightKind;
import darkrim.study.irradiance.LitLayout;
import darkrim.study.irradiance.MapSampling.Round;
import darkrim.study.irradiance.SurfaceCells;
import darkrim.study.irradiance.SurfaceMap;
import darkrim.trace.FacetTree;
import darkrim.verdict.Verdict;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** One kind of picture that {@link DrawCommand} makes: what must be sampled for it, and how it is drawn. */
sealed interface Drawing {
    /** Samples of once-reflected light for each one of direct light: most of them find nothing. */
    int REFLECTED = 16;

    /**
     * What every picture is given.
     *
     * @param source the source whose light is shown; empty for the beam
     * @param light how light is coloured
     * @param size size of the picture
     * @param date a date to be written
     * @param effort threads to work with
     */
    record Given(
            Optional<SourceSpec.Distant> source,
            DrawnLight light,
            PictureSize size,
            Optional<String> date,
            Effort effort) {
        LitLayout.Fineness fineness(Predicate<String> cells, int along, int samples) {
            int direct = light.samples(samples);
            Optional<LightKind> kind = light.light();
            boolean noDirect = kind.isEmpty() || kind.get() == LightKind.ONCE_REFLECTED;
            boolean noReflected = kind.isEmpty() || kind.get() == LightKind.DIRECT;
            return new LitLayout.Fineness(
                    cells, light.along(along), new Round(noDirect ? 0 : direct, noReflected ? 0 : REFLECTED * direct));
        }

        LightUnit unit(LitLayout lit) {
            return LightUnit.of(source, lit.scene());
        }

        ColourScale scale(LitLayout lit, List<SurfaceMap> maps) {
            return light.choice().scale(unit(lit), maps);
        }

        PictureText text(LitLayout lit, List<String> notes, String what, ColourScale scale) {
            return words(lit, notes).text(what, light.light(), unit(lit), scale);
        }

        private PictureWords words(LitLayout lit, List<String> notes) {
            List<String> all = lit.stopped()
                    ? Stream.concat(
                                    notes.stream(),
                                    Stream.of("The work was stopped before its end: values may be missing."))
                            .toList()
                    : notes;
            return new PictureWords(lit.layout(), lit.checked().seed(), Version.number(), date, all);
        }

        Subject subject(
                LitLayout lit,
                BitSet shown,
                ColourScale scale,
                Map<Integer, Verdict> verdicts,
                Optional<Section> section,
                List<List<Vector3D>> paths) {
            return new Subject(
                    lit.scene(),
                    shown,
                    light.light(),
                    lit.maps(),
                    scale,
                    unit(lit).perRelative(),
                    verdicts,
                    section,
                    paths);
        }
    }

    /**
     * Refuses what a scene does not have, before any work.
     *
     * @throws NoSuchPoint saying why
     */
    void check(Scene scene) throws NoSuchPoint;

    /** What must be sampled. */
    LitLayout.Fineness fineness();

    /** Whether a whole check comes first; otherwise proofs alone, where the picture shows neither verdicts nor whole surfaces. */
    boolean judged();

    /** What it shows, one line. */
    String what(LitLayout lit) throws NoSuchPoint;

    /** The picture, a PNG file. */
    byte[] png(LitLayout lit) throws NoSuchPoint;

    /** Parts with the light on them. */
    record Parts(Given given, DrawnParts look) implements Drawing {
        private static final List<String> CELLS = List.of("**/active", "**/opening*/**");
        private static final int ALONG = 24;
        private static final int SAMPLES = 128;

        @Override
        public void check(Scene scene) throws NoSuchPoint {
            if (look.path().isPresent()) {
                SurfaceNames.find(scene, look.path().get());
            }
        }

        /** A ray to the surface that was asked for, of each class of light that is shown. */
        private List<List<Vector3D>> paths(LitLayout lit) {
            LightKind kind = given.light().light().orElse(LightKind.TOTAL);
            Optional<Surface> receiver = look.path().flatMap(lit.scene()::surface);
            if (receiver.isEmpty()) {
                return List.of();
            }
            ExampleRay rays = new ExampleRay(lit.checked());
            List<List<Vector3D>> paths = new ArrayList<>();
            if (kind != LightKind.ONCE_REFLECTED) {
                rays.direct(receiver.get()).ifPresent(paths::add);
            }
            if (kind != LightKind.DIRECT) {
                rays.reflected(receiver.get()).ifPresent(paths::add);
            }
            return given.source().isPresent()
                    ? paths.stream().map(path -> shortened(path, lit.scene())).toList()
                    : paths;
        }

        /** A ray from far away, begun at twice the reach of the parts: near enough to be drawn. */
        private static List<Vector3D> shortened(List<Vector3D> path, Scene scene) {
            List<Vector3D> shorter = new ArrayList<>(path);
            shorter.set(0, DistantBody.drawn(scene.reach(), path.get(0), path.get(1)));
            return shorter;
        }

        @Override
        public LitLayout.Fineness fineness() {
            SurfacePatterns cells =
                    new SurfacePatterns("--cells", given.light().cells().orElse(CELLS));
            return given.fineness(cells::selects, ALONG, SAMPLES);
        }

        @Override
        public boolean judged() {
            return true;
        }

        @Override
        public String what(LitLayout lit) {
            String ray = look.path()
                    .map(name -> paths(lit).isEmpty() ? " No ray to " + name + " was found." : " Ray to " + name + ".")
                    .orElse("");
            return given.light()
                            .light()
                            .map(kind -> beginning(given, kind) + ". ")
                            .orElse("")
                    + look.words()
                    + ray;
        }

        @Override
        public byte[] png(LitLayout lit) {
            BitSet shown = look.shown(lit.scene());
            List<SurfaceMap> maps = shown.stream().mapToObj(lit.maps()::get).toList();
            ColourScale scale = given.scale(lit, maps);
            Subject subject = given.subject(
                    lit,
                    shown,
                    scale,
                    look.outlines() ? lit.checked().verdicts() : Map.of(),
                    look.section(),
                    paths(lit));
            return new ScenePicture(subject, given.text(lit, List.of(), what(lit), scale))
                    .png(
                            look.view(lit.scene(), subject.corners()),
                            given.size().width(),
                            given.size().height(),
                            given.effort().threads());
        }
    }

    /** A flat map of one surface. */
    record FlatMap(Given given, String surface) implements Drawing {
        private static final int ALONG = 24;
        private static final int SAMPLES = 512;

        @Override
        public void check(Scene scene) throws NoSuchPoint {
            Surface found = SurfaceNames.find(scene, surface);
            if (!SurfaceCells.isFlat(scene, found)) {
                throw new NoSuchPoint("'" + surface + "' is not flat, so that it has no flat map; name a flat surface");
            }
        }

        @Override
        public LitLayout.Fineness fineness() {
            return given.fineness(surface::equals, ALONG, SAMPLES);
        }

        @Override
        public boolean judged() {
            return false;
        }

        @Override
        public String what(LitLayout lit) throws NoSuchPoint {
            LightKind kind = given.light().light().orElseThrow();
            MapPicture picture = picture(lit);
            String stretched = picture.stretch().words();
            return beginning(given, kind) + " on " + surface + ": " + picture.summary() + "."
                    + (stretched.isEmpty() ? "" : " " + stretched);
        }

        private SurfaceMap map(LitLayout lit) throws NoSuchPoint {
            return lit.maps().get(SurfaceNames.find(lit.scene(), surface).index());
        }

        private ColourScale scale(LitLayout lit) throws NoSuchPoint {
            return given.scale(lit, List.of(map(lit)));
        }

        private MapPicture picture(LitLayout lit) throws NoSuchPoint {
            return new MapPicture(
                    map(lit),
                    given.light().light().orElseThrow(),
                    scale(lit),
                    given.unit(lit).perRelative());
        }

        @Override
        public byte[] png(LitLayout lit) throws NoSuchPoint {
            return picture(lit)
                    .png(
                            given.text(lit, List.of(), what(lit), scale(lit)),
                            given.size().width(),
                            given.size().height());
        }
    }

    /** What one point sees. */
    record SeenFrom(Given given, DrawnParts look, PointOption at, double halfAngle) implements Drawing {
        private static final int ALONG = 12;
        private static final int SAMPLES = 64;

        @Override
        public void check(Scene scene) throws NoSuchPoint {
            point(scene);
        }

        private SurfacePoint point(Scene scene) throws NoSuchPoint {
            FacetTree tree = FacetTree.build(scene.corners(), scene.copyPlanes(), scene.bound());
            return SurfacePoint.of(scene, tree, at.surface(), at.u(), at.v());
        }

        @Override
        public LitLayout.Fineness fineness() {
            SurfacePatterns cells =
                    new SurfacePatterns("--cells", given.light().cells().orElse(List.of("**")));
            return given.fineness(cells::selects, ALONG, SAMPLES);
        }

        @Override
        public boolean judged() {
            return given.light().cells().isPresent();
        }

        @Override
        public String what(LitLayout lit) {
            return beginning(given, given.light().light().orElseThrow()) + " on what " + at.surface() + " sees at "
                    + Wording.number(at.u()) + "," + Wording.number(at.v()) + ", to "
                    + Wording.number(halfAngle) + " deg from the direction that it faces.";
        }

        @Override
        public byte[] png(LitLayout lit) throws NoSuchPoint {
            SurfacePoint point = point(lit.scene());
            ColourScale scale = given.scale(lit, lit.maps());
            Subject subject = given.subject(lit, look.shown(lit.scene()), scale, Map.of(), Optional.empty(), List.of());
            List<String> notes = List.of(
                    "The distance from the middle grows in proportion to the angle. Right and up are as layouts are"
                            + " drawn: an eye at the point would see right and left exchanged. Blue-green line: outline of "
                            + given.source()
                                    .map(each -> Printable.of(each.name()))
                                    .orElse("the pupil") + ".");
            return new PixelPicture(
                            subject,
                            given.text(lit, notes, what(lit), scale),
                            point,
                            SurfaceRectangle.of(lit.scene(), point.surface()).alongV(),
                            halfAngle)
                    .png(
                            given.size().width(),
                            given.size().height(),
                            given.effort().threads());
        }
    }

    /** Which light of what, at the beginning of a sentence. */
    private static String beginning(Given given, LightKind kind) {
        String words = kind.words();
        String of =
                given.source().map(each -> " of " + Printable.of(each.name())).orElse("");
        return Character.toUpperCase(words.charAt(0)) + words.substring(1) + of;
    }
}
