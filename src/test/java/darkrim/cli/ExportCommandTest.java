package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.Outside;
import darkrim.assembly.Assembly;
import darkrim.assembly.Body;
import darkrim.diagnostic.Findings;
import darkrim.layout.Layout;
import darkrim.layout.LayoutReader;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

class ExportCommandTest {
    private static final String COLD = "geometries/nightglow-80k.yaml";
    /** The validator of those who wrote the standard, by its version in the registry of node. */
    private static final String VALIDATOR = "gltf-validator@2.0.0-dev.3.10";

    @TempDir
    Path folder;

    private String at(String name) {
        return folder.resolve(name).toString();
    }

    private static Assembly assembly(boolean warm) {
        Layout layout = LayoutReader.read(Path.of(COLD)).layout().orElseThrow();
        return Assembly.of(warm ? layout.warm() : layout, new Findings());
    }

    /** Volumes by the divergence theorem, from the numbers in the file. */
    private static Map<String, Double> volumes(Path stl) throws Exception {
        Map<String, Double> volumes = new LinkedHashMap<>();
        String solid = "";
        List<double[]> corners = new ArrayList<>();
        for (String line : Files.readAllLines(stl)) {
            String[] words = line.strip().split(" ", -1);
            if (words[0].equals("solid")) {
                solid = words[1];
            } else if (words[0].equals("vertex")) {
                corners.add(new double[] {
                    Double.parseDouble(words[1]), Double.parseDouble(words[2]), Double.parseDouble(words[3])
                });
            } else if (words[0].equals("endfacet")) {
                double[] a = corners.get(0);
                double[] b = corners.get(1);
                double[] c = corners.get(2);
                double six = a[0] * (b[1] * c[2] - b[2] * c[1])
                        - a[1] * (b[0] * c[2] - b[2] * c[0])
                        + a[2] * (b[0] * c[1] - b[1] * c[0]);
                volumes.merge(solid, six / 6, Double::sum);
                corners.clear();
            }
        }
        return volumes;
    }

    @Test
    void solidsInStlHaveTheVolumesOfTheAssemblyColdAndWarm() throws Exception {
        double[] lid = new double[2];
        for (boolean warm : new boolean[] {false, true}) {
            String file = at(warm ? "warm.stl" : "cold.stl");
            Run run = warm ? Run.of("export", COLD, "--warm", "-o", file) : Run.of("export", COLD, "-o", file);
            assertThat(run.code()).as(run.errors()).isZero();
            Map<String, Double> volumes = volumes(Path.of(file));
            for (Body body : assembly(warm).bodies()) {
                if (body.solid()) {
                    assertThat(volumes.get(body.name())).isCloseTo(body.volume(), within(1e-9 * body.volume()));
                }
            }
            lid[warm ? 1 : 0] = volumes.get("lid");
        }
        assertThat(lid[0]).isLessThan(lid[1]);
    }

    @Test
    void theObjComesBackAsAMeshWithTheSameVolume() throws Exception {
        assertThat(Run.of("export", COLD, "--only", "lid/**", "-o", at("lid.obj"))
                        .code())
                .isZero();
        Files.writeString(folder.resolve("back.yaml"), """
                title: back
                units: {length: mm}
                finishes: {black: {diffuse: 0.04}}
                beam: {pupil: {shape: disc, diameter: 40, distance: 300}}
                parts: {lid: {kind: mesh, file: lid.obj, unit: mm, finish: black}}
                """);
        Layout layout = LayoutReader.read(folder.resolve("back.yaml")).layout().orElseThrow();
        Body back = Assembly.of(layout, new Findings()).bodies().get(0);
        Body lid = assembly(false).bodies().stream()
                .filter(body -> body.name().equals("lid"))
                .findFirst()
                .orElseThrow();
        assertThat(back.solid()).isTrue();
        assertThat(back.volume()).isCloseTo(lid.volume(), within(1e-9 * lid.volume()));
    }

    @Test
    void meshioReadsAreasAndLightOfTheGrid() throws Exception {
        String layout = "geometries/nightglow-a.yaml";
        Run run = Run.of(
                "export",
                layout,
                "--samples",
                "2e6",
                "--cells",
                "mosaic/die[1,1]/active",
                "--cells-along",
                "5",
                "--cell-samples",
                "16",
                "-o",
                at("s.vtu"),
                "-o",
                at("s.csv"));
        assertThat(run.code()).as(run.errors()).isZero();
        String read = Outside.python("meshio", """
                import sys, meshio, numpy as np
                m = meshio.read(sys.argv[1])
                p = m.points
                t = m.cells[0].data
                a = np.linalg.norm(np.cross(p[t[:,1]]-p[t[:,0]], p[t[:,2]]-p[t[:,0]]), axis=1)/2
                s = m.cell_data['surface'][0]
                r = m.cell_data['once_reflected'][0]
                for i in np.unique(s): print(i, repr(float(a[s==i].sum())), repr(float((a*r)[s==i].sum()/a[s==i].sum())))
                """, at("s.vtu"));
        Map<String, CSVRecord> table = new LinkedHashMap<>();
        MapsCommandTest.records(folder.resolve("s.csv")).forEach(line -> table.put(line.get("number"), line));
        String[] lines = read.strip().split("\n", -1);
        assertThat(lines).hasSize(table.size());
        int lit = 0;
        for (String line : lines) {
            String[] words = line.split(" ", -1);
            CSVRecord known = table.get(words[0]);
            double area = Double.parseDouble(known.get("area [mm2]"));
            assertThat(Double.parseDouble(words[1])).isCloseTo(area, within(1e-9 * area));
            if (!known.get("once-reflected light").isEmpty()) {
                double mean = Double.parseDouble(known.get("once-reflected light"));
                assertThat(Double.parseDouble(words[2])).isCloseTo(mean, within(1e-9 * mean));
                lit += mean > 0 ? 1 : 0;
            }
        }
        assertThat(lit).isPositive();
    }

    @Test
    void theGlbHoldsThePartsByNameInMetres() throws Exception {
        assertThat(Run.of("export", "geometries/nightglow-b.yaml", "--light", "none", "-o", at("s.glb"))
                        .code())
                .isZero();
        ByteBuffer file =
                ByteBuffer.wrap(Files.readAllBytes(folder.resolve("s.glb"))).order(ByteOrder.LITTLE_ENDIAN);
        assertThat(file.getInt(0)).isEqualTo(0x46546c67);
        assertThat(file.getInt(8)).isEqualTo(file.capacity());
        byte[] head = new byte[file.getInt(12)];
        file.get(20, head);
        JsonNode json = JsonMapper.builder().build().readTree(new String(head, StandardCharsets.UTF_8));
        List<String> names = new ArrayList<>();
        json.get("nodes").forEach(node -> names.add(node.get("name").asString()));
        assertThat(names).contains("mosaic", "lid", "walls", "lid/opening[1,2]/land/-y");
        double widest = 0;
        for (JsonNode accessor : json.get("accessors")) {
            if (accessor.has("max")) {
                widest = Math.max(widest, accessor.get("max").get(0).asDouble());
            }
        }
        // Half of a lid of 130 mm, to single precision.
        assertThat(widest).isCloseTo(0.065, within(1e-8));
    }

    @Test
    void theValidatorOfTheStandardFindsNothingWrongWithTheGlb() throws Exception {
        Path modules = Path.of("target", "gltf-validator").toAbsolutePath();
        Assumptions.assumeTrue(Outside.has("node", "--version") && Outside.has("npm", "--version"), "no node and npm");
        Assumptions.assumeTrue(
                Files.isDirectory(modules.resolve("node_modules"))
                        || Outside.has(
                                "npm", "install", "--prefix", modules.toString(), "--no-audit", "--no-fund", VALIDATOR),
                "the validator could not be fetched");
        for (String light : List.of("none", "reflected")) {
            String file = at(light + ".glb");
            Run run = Run.of(
                    "export",
                    "geometries/nightglow-a.yaml",
                    "--samples",
                    "2e6",
                    "--light",
                    light,
                    "--cells",
                    "mosaic/die[1,1]/active",
                    "--cells-along",
                    "5",
                    "--cell-samples",
                    "16",
                    "-o",
                    file);
            assertThat(run.code()).as(run.errors()).isZero();
            Outside.Said said = Outside.run(List.of(
                    "node",
                    "-e",
                    "const v = require(process.argv[1]); const f = require('fs');"
                            + "v.validateBytes(new Uint8Array(f.readFileSync(process.argv[2]))).then(r =>"
                            + " console.log(r.issues.numErrors, r.issues.numWarnings, r.info.totalTriangleCount));",
                    modules.resolve("node_modules/gltf-validator").toString(),
                    file));
            assertThat(said.text()).startsWith("0 0 ");
        }
    }

    @Test
    void wrongEndingsAndPatternsAreRefused() {
        Run run = Run.of("export", "geometries/nightglow-b.yaml", "--only", "nothing/**", "-o", at("s.step"));
        assertThat(run.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(run.errors()).contains("expected a name that ends in", "--only: 'nothing/**' selects no surface");
        assertThat(folder).isEmptyDirectory();
    }
}
