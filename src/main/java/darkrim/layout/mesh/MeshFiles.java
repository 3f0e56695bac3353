package darkrim.layout.mesh;

import darkrim.diagnostic.Findings;
import darkrim.diagnostic.Place;
import darkrim.geom.mesh.FacetMesh;
import darkrim.layout.form.Wording;
import java.io.IOException;
import java.io.Serializable;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The mesh files that a layout names, each read once: parts that share a file share its facets, and a study is about one state of a file
 * however long it runs. Can be sent to another machine once read. Safe for use by many threads.
 */
public final class MeshFiles implements Serializable {
    private static final long serialVersionUID = 1L;

    /** No file system has a folder of this name. */
    private static final String NOWHERE = "\0";

    private final String folder;
    private final Map<Key, MeshFile> known = new HashMap<>();

    private MeshFiles(String folder) {
        this.folder = folder;
    }

    /** A file by its name in the layout, and how fine its facets are to be, in mm and degrees; 0 where it has facets. */
    private record Key(String name, double tolerance, double angle) implements Serializable {}

    /**
     * Files beside a layout.
     *
     * @param layout name of the layout file
     */
    public static MeshFiles beside(String layout) {
        try {
            Path parent = Path.of(layout).getParent();
            return new MeshFiles(parent == null ? "" : parent.toString());
        } catch (InvalidPathException noPath) {
            return new MeshFiles("");
        }
    }

    /** None: every file that is asked for is one that cannot be read. For a look at what is no mesh, which need not wait for meshes. */
    public static MeshFiles none() {
        return new MeshFiles(NOWHERE);
    }

    /**
     * Reads a file of facets, or gives what was read before.
     *
     * @param name its name as the layout gives it, from the folder of the layout
     * @param anywhere whether it may lie outside that folder
     * @param place where the layout names it
     * @param findings receives what is wrong
     * @return empty, with a finding, if it cannot be used
     */
    public Optional<MeshFile> read(String name, boolean anywhere, Place place, Findings findings) {
        return read(new Key(name, 0, 0), anywhere, place, findings);
    }

    /** Whether a file holds surfaces that have to be meshed, by its name. */
    public static boolean isMeshed(String name) {
        return StepFile.isNamed(name);
    }

    /**
     * Meshes a file of surfaces, or gives what was meshed before.
     *
     * @param name its name as the layout gives it, from the folder of the layout
     * @param tolerance how far facets may lie from the true surface, above 0, mm
     * @param angle greatest angle between neighbouring facets of a curved face, above 0, degrees
     * @param anywhere whether it may lie outside that folder
     * @param place where the layout names it
     * @param findings receives what is wrong
     * @return empty, with a finding, if it cannot be used
     */
    public Optional<MeshFile> meshed(
            String name, double tolerance, double angle, boolean anywhere, Place place, Findings findings) {
        return read(new Key(name, tolerance, angle), anywhere, place, findings);
    }

    /**
     * Looks whether a file is one that may be read, and reads nothing.
     *
     * @param name its name as the layout gives it, from the folder of the layout
     * @param anywhere whether it may lie outside that folder
     * @param place where the layout names it
     * @param findings receives what is wrong
     */
    public void find(String name, boolean anywhere, Place place, Findings findings) {
        readable(name, place, findings, () -> found(name, anywhere, place, findings));
    }

    private synchronized Optional<MeshFile> read(Key key, boolean anywhere, Place place, Findings findings) {
        MeshFile before = known.get(key);
        if (before != null && (anywhere || !before.outside())) {
            return Optional.of(before);
        }
        Optional<MeshFile> read = readable(key.name, place, findings, () -> open(key, anywhere, place, findings));
        read.ifPresent(file -> known.put(key, file));
        return read;
    }

    /** Work on a file that the system may refuse. */
    private interface Work<T> {
        Optional<T> done() throws IOException;
    }

    private static <T> Optional<T> readable(String name, Place place, Findings findings, Work<T> work) {
        try {
            return work.done();
        } catch (NoSuchFileException missing) {
            error(findings, place, name, "there is no such file beside the layout");
        } catch (AccessDeniedException denied) {
            error(findings, place, name, "you may not read it");
        } catch (IOException | InvalidPathException problem) {
            error(
                    findings,
                    place,
                    name,
                    "it cannot be read: " + Wording.shortened(String.valueOf(problem.getMessage())));
        }
        return Optional.empty();
    }

    /** What was read: a line for each file with its name and SHA-256, by name. */
    public synchronized List<String> hashes() {
        return known.entrySet().stream()
                .map(file -> "mesh " + Wording.oneLine(file.getKey().name) + " SHA-256 "
                        + file.getValue().sha256()
                        + file.getValue()
                                .meshing()
                                .map(meshing -> " meshed by " + meshing.program())
                                .orElse(""))
                .sorted()
                .distinct()
                .toList();
    }

    /** Where a file lies, links followed, and whether that is outside the folder. */
    private record Found(Path real, boolean outside) {}

    private Optional<Found> found(String name, boolean anywhere, Place place, Findings findings) throws IOException {
        Path base = Path.of(folder).toRealPath();
        Path real = Path.of(folder).resolve(name).toRealPath();
        boolean outside = !real.startsWith(base);
        if (outside && !anywhere) {
            findings.error(
                    "mesh-outside",
                    place,
                    "mesh file '" + Wording.shortened(name)
                            + "' lies outside the folder of the layout, expected it within, or"
                            + " 'outside_folder: true' where that is meant");
            return Optional.empty();
        }
        if (!Files.isRegularFile(real)) {
            error(findings, place, name, "it is not an ordinary file");
            return Optional.empty();
        }
        return Optional.of(new Found(real, outside));
    }

    private Optional<MeshFile> open(Key key, boolean anywhere, Place place, Findings findings) throws IOException {
        Optional<Found> found = found(key.name, anywhere, place, findings);
        if (found.isEmpty()) {
            return Optional.empty();
        }
        boolean outside = found.get().outside();
        String shown = Wording.oneLine(Path.of(folder).resolve(key.name).toString());
        try {
            MeshReader reader = new MeshReader(found.get().real());
            if (key.tolerance > 0) {
                StepFile.Meshed meshed = reader.meshed(new StepFile.Fineness(key.tolerance, key.angle));
                return Optional.of(
                        new MeshFile(shown, reader.sha256(), outside, meshed.mesh(), Optional.of(meshed.meshing())));
            }
            FacetMesh mesh = reader.read();
            return Optional.of(new MeshFile(shown, reader.sha256(), outside, mesh, Optional.empty()));
        } catch (MeshFault fault) {
            findings.error(fault.code(), new Place(shown, fault.line(), fault.column()), fault.getMessage());
            return Optional.empty();
        }
    }

    private static void error(Findings findings, Place place, String name, String why) {
        findings.error("mesh-unreadable", place, "mesh file '" + Wording.shortened(name) + "': " + why);
    }
}
