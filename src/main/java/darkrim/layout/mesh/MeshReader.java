package darkrim.layout.mesh;

import darkrim.geom.mesh.FacetMesh;
import java.io.BufferedInputStream;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Locale;

/** Reads one mesh file, by its content: binary STL, text STL, or OBJ by the end of its name. For use once. */
final class MeshReader {
    /** Most facets of a file. */
    static final int MOST_FACETS = 4_000_000;
    /** A text file of so many facets is no larger. */
    private static final long MOST_BYTES = 1L << 31;

    private static final int LOOK = 512;

    private final Path file;
    private final MessageDigest digest;

    MeshReader(Path file) {
        this.file = file;
        try {
            digest = MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every Java platform has SHA-256", impossible);
        }
    }

    /** SHA-256 of what was read. */
    String sha256() {
        return HexFormat.of().formatHex(digest.digest());
    }

    /** Has a STEP file meshed by the program that is installed. */
    StepFile.Meshed meshed(StepFile.Fineness fineness) throws IOException, MeshFault {
        String searchPath = String.valueOf(System.getenv("PATH"));
        return new StepFile(fineness, searchPath, Mesher.PATIENCE_SECONDS).read(file, digest);
    }

    FacetMesh read() throws IOException, MeshFault {
        long size = Files.size(file);
        if (size > MOST_BYTES) {
            throw new MeshFault("mesh-too-large", "the file has " + size + " bytes, expected at most " + MOST_BYTES);
        }
        byte[] head;
        try (InputStream stream = Files.newInputStream(file)) {
            head = stream.readNBytes(LOOK);
        }
        refusePacked(head);
        try (DigestInputStream stream =
                new DigestInputStream(new BufferedInputStream(Files.newInputStream(file), 1 << 16), digest)) {
            FacetMesh mesh = read(stream, head, size);
            stream.transferTo(OutputStream.nullOutputStream());
            return mesh;
        } catch (UncheckedIOException problem) {
            if (problem.getCause() instanceof SolidLines.LineTooLong longLine) {
                throw fault(longLine);
            }
            throw problem.getCause();
        } catch (SolidLines.LineTooLong problem) {
            throw fault(problem);
        }
    }

    private FacetMesh read(InputStream stream, byte[] head, long size) throws IOException, MeshFault {
        String name = String.valueOf(file.getFileName()).toLowerCase(Locale.ROOT);
        if (name.endsWith(".obj")) {
            if (isBinary(head)) {
                throw new MeshFault("mesh-form", "the file is not text, expected the lines of an OBJ file");
            }
            return ObjFile.read(text(stream), MOST_FACETS);
        }
        if (!name.endsWith(".stl")) {
            throw new MeshFault(
                    "mesh-form", "the name ends in none of .stl, .obj, .step and .stp, expected one of these");
        }
        long stated = head.length < BinaryStl.HEADER
                ? -1
                : Integer.toUnsignedLong(
                        ByteBuffer.wrap(head).order(ByteOrder.LITTLE_ENDIAN).getInt(80));
        // Some programs begin the title of a binary file with the word solid: the length decides.
        if (stated >= 0 && size == BinaryStl.bytes(stated)) {
            requireFew(stated);
            return BinaryStl.read(stream);
        }
        String start = new String(head, StandardCharsets.ISO_8859_1).stripLeading();
        if (start.regionMatches(true, 0, "solid", 0, 5) && !isBinary(head)) {
            return TextStl.read(text(stream), MOST_FACETS);
        }
        if (stated < 0) {
            throw new MeshFault(
                    "mesh-form",
                    "the file has " + size + " bytes and no word 'solid' at its start, expected an STL file");
        }
        throw new MeshFault(
                "mesh-form",
                "byte 80: the header states " + stated + " facets, which take " + BinaryStl.bytes(stated)
                        + " bytes, but the file has " + size + ": it is cut off, or no STL file, expected a whole one");
    }

    private static MeshFault fault(SolidLines.LineTooLong problem) {
        return new MeshFault("mesh-form", problem.line(), 1, "a line has more than 1000 characters, expected fewer");
    }

    private static void requireFew(long facets) throws MeshFault {
        if (facets > MOST_FACETS) {
            throw new MeshFault(
                    "mesh-too-large", "byte 80: the file has " + facets + " facets, expected at most " + MOST_FACETS);
        }
    }

    private static BufferedReader text(InputStream stream) {
        return new BufferedReader(new InputStreamReader(stream, StandardCharsets.UTF_8), 1 << 16);
    }

    /** Whether there are bytes that no text has. */
    private static boolean isBinary(byte[] head) {
        for (byte b : head) {
            if (b >= 0 && b < ' ' && b != '\t' && b != '\n' && b != '\r' && b != '\f') {
                return true;
            }
        }
        return false;
    }

    private static void refusePacked(byte[] head) throws MeshFault {
        boolean zip = head.length > 3 && head[0] == 'P' && head[1] == 'K' && head[2] < 9;
        boolean gzip = head.length > 1 && head[0] == 0x1f && head[1] == (byte) 0x8b;
        if (zip || gzip) {
            throw new MeshFault(
                    "mesh-form", "the file is packed (" + (zip ? "zip" : "gzip") + "), expected it unpacked");
        }
    }
}
