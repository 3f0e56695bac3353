package darkrim.layout.mesh;

import darkrim.geom.mesh.FacetDeviation;
import darkrim.geom.mesh.FacetMesh;
import darkrim.layout.form.Wording;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.util.Locale;
import java.util.OptionalDouble;

/**
 * A STEP file (ISO 10303-21), meshed by a program that is installed beside Darkrim. What the program promises is not relied on: its facets
 * are measured with a mesh of a quarter of the tolerance, and the finer is taken until the coarser one holds.
 *
 * @param fineness how fine its facets are to be
 * @param searchPath where to look for the program, as the system lists folders
 * @param seconds how long each run of it may take
 */
record StepFile(Fineness fineness, String searchPath, int seconds) {
    private static final long MOST_BYTES = 1L << 28;
    private static final String START = "ISO-10303-21";
    private static final int MOST_TRIES = 4;
    /** A face within so much of the tolerance of a plane need not get more facets when asked for finer ones. */
    private static final double FLAT = 0.01;

    private static final double FINER = 4;
    /** Facets of a finer mesh are off by about as much less as it is finer: its corners show only the rest. */
    private static final double UNSEEN = FINER / (FINER - 1);

    /**
     * How fine facets are to be.
     *
     * @param tolerance how far they may lie from the true surface, mm
     * @param angle greatest angle between neighbours of a curved face, degrees
     */
    record Fineness(double tolerance, double angle) {}

    /** What was read. */
    record Meshed(FacetMesh mesh, Meshing meshing) {}

    /** Whether a file is one, by the end of its name. */
    static boolean isNamed(String name) {
        String lower = name.toLowerCase(Locale.ROOT);
        return lower.endsWith(".step") || lower.endsWith(".stp");
    }

    /**
     * Meshes a file.
     *
     * @param file the file
     * @param digest takes its bytes
     */
    Meshed read(Path file, MessageDigest digest) throws IOException, MeshFault {
        long size = Files.size(file);
        if (size > MOST_BYTES) {
            throw new MeshFault("mesh-too-large", "the file has " + size + " bytes, expected at most " + MOST_BYTES);
        }
        try (InputStream stream = Files.newInputStream(file)) {
            String start = new String(stream.readNBytes(512), StandardCharsets.ISO_8859_1).stripLeading();
            if (!start.startsWith(START)) {
                throw new MeshFault("mesh-form", 1, 1, "the file is no STEP file, expected it to begin with " + START);
            }
        }
        try (WorkFolder folder = WorkFolder.create()) {
            try (DigestInputStream stream = new DigestInputStream(Files.newInputStream(file), digest)) {
                Files.copy(stream, folder.path().resolve(Mesher.PART));
            }
            return meshed(Mesher.find(searchPath, seconds, folder.path()), folder.path());
        }
    }

    private Meshed meshed(Mesher mesher, Path folder) throws IOException, MeshFault {
        double tolerance = fineness.tolerance();
        double deflection = tolerance / 2;
        FacetMesh mesh = mesher.mesh(folder, deflection, fineness.angle());
        double deviation = Double.POSITIVE_INFINITY;
        for (int tries = 0; tries < MOST_TRIES; tries++) {
            deflection /= FINER;
            FacetMesh finer = mesher.mesh(folder, deflection, fineness.angle() / 2);
            OptionalDouble measured = FacetDeviation.of(mesh, finer, FLAT * tolerance);
            if (measured.isEmpty()) {
                throw new MeshFault(
                        "mesher-failed",
                        "the mesher " + mesher.version()
                                + " finds other faces in it when asked for finer facets, expected the same");
            }
            deviation = UNSEEN * measured.getAsDouble();
            if (deviation <= tolerance) {
                return new Meshed(
                        mesh.withoutNames(), new Meshing(mesher.version(), tolerance, fineness.angle(), deviation));
            }
            mesh = finer;
        }
        if (deviation == Double.POSITIVE_INFINITY) {
            throw new MeshFault(
                    "mesher-failed",
                    "the mesher " + mesher.version()
                            + " makes no finer facets of a curved face when asked for them, so that it cannot be told how far they"
                            + " lie from it: give another chord_tolerance");
        }
        throw new MeshFault(
                "mesher-failed",
                "facets of the mesher " + mesher.version() + " lie up to " + Wording.number(deviation)
                        + " mm from the surface however fine they are asked for, expected at most "
                        + Wording.number(tolerance) + " mm: give a larger chord_tolerance");
    }
}
