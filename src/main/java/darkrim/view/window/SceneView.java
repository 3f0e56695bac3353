package darkrim.view.window;

import darkrim.present.picture.ColourScale;
import darkrim.present.picture.VerdictMark;
import darkrim.scene.Surface;
import darkrim.study.irradiance.SurfaceMap;
import darkrim.verdict.Verdict;
import darkrim.view.camera.Box;
import darkrim.view.camera.Camera;
import darkrim.view.look.Light;
import darkrim.view.look.Look;
import darkrim.view.parts.CoarseFacets;
import darkrim.view.parts.Section;
import darkrim.view.parts.SectionCut;
import darkrim.view.parts.Stage;
import darkrim.view.work.Content;
import darkrim.view.work.Facts;
import darkrim.view.work.Lighting;
import darkrim.view.work.SurfaceFacts;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import javafx.scene.AmbientLight;
import javafx.scene.Group;
import javafx.scene.SceneAntialiasing;
import javafx.scene.SubScene;
import javafx.scene.paint.Color;
import javafx.scene.paint.Material;
import javafx.scene.shape.MeshView;
import javafx.scene.shape.TriangleMesh;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** The parts in three dimensions. It draws a look at a stage and knows nothing of mouse and keys. */
final class SceneView {
    /** Behind the parts. */
    static final Color BACKGROUND = Color.web("#eef1f3");

    private static final int SELECTED = 0xff0067c0;
    private static final int GONE = 0xff20262b;
    private static final int PUPIL = 0xff9a6b00;
    /** Of verdicts that are of another position than the one that is asked for. */
    static final int OUTDATED = 0xff66717a;

    private final Palette palette = new Palette();
    private final CameraRig rig = new CameraRig();
    private final Group faces = new Group();
    private final Group lines = new Group();
    private final CutFaces cutFaces = new CutFaces(palette);
    private final Map<Verdict, BoldLines> marks = new EnumMap<>(Verdict.class);
    private final BoldLines selection = new BoldLines(rig.lines(), palette.line(SELECTED));
    private final MeshView pupil = Meshes.lineView(new TriangleMesh());
    private final BoldLines paths = new BoldLines(rig.lines(), palette.line(PathLines.COLOUR));
    private final BoldLines gone = new BoldLines(rig.lines(), palette.line(GONE));
    private final SubScene view;
    private final List<SurfaceNode> nodes = new ArrayList<>();
    private Optional<Stage> stage = Optional.empty();
    private Box drawn;
    private Vector3D pupilCentre = Vector3D.ZERO;
    private Optional<Section> section = Optional.empty();
    private Set<String> hidden = Set.of();
    private boolean coarse;

    SceneView() {
        pupil.setMaterial(palette.line(PUPIL));
        faces.getTransforms().add(rig.faces());
        lines.getTransforms().add(rig.lines()[0]);
        Group world = new Group(faces, lines);
        for (Verdict verdict : Verdict.values()) {
            BoldLines outline = new BoldLines(
                    rig.lines(), palette.line(VerdictMark.of(verdict).argb()));
            marks.put(verdict, outline);
            world.getChildren().add(outline.group());
        }
        // Lines take their colour from it; faces have no colour but their own glow.
        world.getChildren().addAll(selection.group(), paths.group(), gone.group(), new AmbientLight(Color.WHITE));
        view = new SubScene(world, 100, 100, true, SceneAntialiasing.BALANCED);
        view.setFill(BACKGROUND);
    }

    SubScene node() {
        return view;
    }

    /** Shows another stage. */
    void show(Stage other) {
        stage = Optional.of(other);
        nodes.clear();
        coarse = false;
        CoarseFacets simple = new CoarseFacets(other.scene(), other.box());
        for (Surface surface : other.scene().surfaces()) {
            nodes.add(new SurfaceNode(other.scene(), surface, other.edges().get(surface.index()), simple));
        }
        List<MeshView> faceViews =
                new ArrayList<>(nodes.stream().map(SurfaceNode::faces).toList());
        faceViews.add(cutFaces.faces());
        faces.getChildren().setAll(faceViews);
        List<MeshView> lineViews =
                new ArrayList<>(nodes.stream().map(SurfaceNode::lines).toList());
        lineViews.add(cutFaces.lines());
        lineViews.add(pupil);
        lines.getChildren().setAll(lineViews);
        double[] outline = PupilLines.of(other.scene().beam().pupil());
        pupil.setMesh(Meshes.lines(outline));
        Box around = Box.around(outline);
        pupilCentre = around.centre();
        drawn = other.box().with(around.low()).with(around.high());
        section = Optional.empty();
        hidden = Set.of();
    }

    /** Colours the surfaces, or the cells of their maps, by the light on them. */
    void paint(Look look, Content content, ColourScale scale) {
        gone.show(new double[0]);
        Map<String, SurfaceMap> maps = content.maps(look.source());
        Map<String, SurfaceFacts> known =
                content.lighting(look.source()).map(Lighting::surfaces).orElse(Map.of());
        for (int i = 0; i < nodes.size(); i++) {
            Surface surface = stage.orElseThrow().scene().surfaces().get(i);
            SurfaceMap map = look.cells() ? maps.get(surface.name()) : null;
            if (look.light() == Light.NONE || (map == null && known.isEmpty())) {
                nodes.get(i).paint(palette.part(), palette.line(0xff3a444c));
            } else if (map != null) {
                Material lineMaterial = palette.line(Palette.lineOn(scale.argb(map.mean(Scales.kind(look.light())))));
                nodes.get(i).paint(map, scale, Scales.kind(look.light()), palette.scale(), lineMaterial);
            } else {
                SurfaceFacts light = known.get(surface.name());
                int argb = scale.argb(
                        light == null ? Double.NaN : light.of(look.light()).value());
                nodes.get(i).paint(palette.flat(argb), palette.line(Palette.lineOn(argb)));
            }
        }
    }

    /** Colours each surface by what became of its light, and outlines in strokes what is gone. */
    void paint(Look look, Differences differences) {
        for (int i = 0; i < nodes.size(); i++) {
            int argb = differences.argb(stage.orElseThrow().scene().surfaces().get(i));
            nodes.get(i).paint(palette.flat(argb), palette.line(Palette.lineOn(argb)));
        }
        double stroke = stage.orElseThrow().box().radius() / 30;
        gone.show(BoldLines.dashed(differences.goneEdges(look), stroke, stroke));
    }

    /** Hides and cuts. */
    void arrange(Look look) {
        Stage now = stage.orElseThrow();
        Optional<SectionCut> cut = look.section().map(plane -> new SectionCut(now.scene(), plane));
        boolean otherSection = !look.section().equals(section);
        if (otherSection) {
            nodes.forEach(node -> node.cut(cut));
        }
        if (!look.hidden().equals(hidden)) {
            for (int i = 0; i < nodes.size(); i++) {
                nodes.get(i).show(look.shows(now.scene().surfaces().get(i).name()));
            }
        }
        if (otherSection || !look.hidden().equals(hidden)) {
            cutFaces.fill(now, cut, surface -> look.shows(surface.name()));
        }
        section = look.section();
        hidden = look.hidden();
    }

    /** Outlines the selected surface, and keep-dark surfaces by their verdicts. */
    void outline(Look look, Optional<Facts> facts) {
        Stage now = stage.orElseThrow();
        selection.show(look.selected()
                .flatMap(now.scene()::surface)
                .map(surface -> nodes.get(surface.index()).shownEdges())
                .orElse(new double[0]));
        double pixel = look.camera().fitted(now.box(), 1.6).span() / 700;
        for (Verdict verdict : Verdict.values()) {
            List<double[]> edges = new ArrayList<>();
            if (look.marksVerdicts() && facts.isPresent()) {
                for (Surface surface : now.scene().surfaces()) {
                    SurfaceFacts known = facts.get().surfaces().get(surface.name());
                    if (known != null
                            && known.keptDark().filter(verdict::equals).isPresent()) {
                        edges.add(nodes.get(surface.index()).shownEdges());
                    }
                }
            }
            boolean outdated = facts.filter(Facts::isOutdated).isPresent();
            marks.get(verdict)
                    .paint(palette.line(
                            outdated ? OUTDATED : VerdictMark.of(verdict).argb()));
            double[] all = CutFaces.joined(edges);
            List<Double> dashes = VerdictMark.of(verdict).dashes();
            marks.get(verdict)
                    .show(dashes.isEmpty() ? all : BoldLines.dashed(all, dashes.get(0) * pixel, dashes.get(1) * pixel));
        }
    }

    /** Draws ways of light: six coordinates a line, mm. */
    void draw(double[] ways) {
        paths.show(ways);
    }

    /** Shows very many facets coarsely and without edges while the camera moves, or all as they are; whether anything changed. */
    boolean coarsen(boolean moving) {
        boolean wanted = moving
                && stage.filter(shown -> shown.scene().facetCount() > CoarseFacets.MANY)
                        .isPresent();
        if (wanted == coarse) {
            return false;
        }
        coarse = wanted;
        nodes.forEach(node -> node.coarsen(wanted));
        return true;
    }

    /** Puts the viewer where the look says. */
    void move(Look look) {
        if (drawn != null) {
            Camera camera = look.camera();
            // Just before the eye it would only be in the way.
            double depth = camera.distance() - camera.seen(pupilCentre).getZ();
            pupil.setVisible(camera.parallel() || depth > camera.distance() / 2);
            rig.apply(view, camera, drawn);
        }
    }
}
