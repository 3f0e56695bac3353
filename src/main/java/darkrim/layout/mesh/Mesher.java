package darkrim.layout.mesh;

import darkrim.geom.mesh.FacetMesh;
import darkrim.layout.form.Wording;
import java.io.BufferedReader;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * The program that turns STEP files into facets: gmsh, a general-purpose mesher, where it is installed. It works in a folder with copies of
 * nothing but the file, under fixed names, so that no name of the user's is ever an argument.
 *
 * @param program where it is
 * @param seconds how long each run may take
 * @param version its version
 */
record Mesher(Path program, int seconds, String version) {
    /** How long a run may take, s. */
    static final int PATIENCE_SECONDS = 300;

    static final String PART = "part.step";

    private static final String FACETS = "facets.stl";
    private static final long MOST_BYTES = 1L << 31;
    /** Address space, bytes, where the system can hold a program to it. */
    private static final long MOST_MEMORY = 1L << 32;

    private static final Path HOLDS_MEMORY = Path.of("/usr/bin/prlimit");
    private static final Pattern VERSION = Pattern.compile("(?m)^\\s*(\\d[\\w.+-]{0,40})\\s*$");
    private static final Pattern COLOUR = Pattern.compile("\\x1b\\[[0-9;]{0,20}m");

    /**
     * The mesher that is installed.
     *
     * @param searchPath folders to look into, as the system lists them; relative ones are passed over
     * @param seconds how long each run may take
     * @param folder an empty folder to work in
     * @throws MeshFault if there is none, or it does not tell its version
     */
    static Mesher find(String searchPath, int seconds, Path folder) throws IOException, MeshFault {
        Path program = program(searchPath)
                .orElseThrow(() -> new MeshFault(
                        "mesher-missing",
                        "STEP files are read with the program gmsh, and it is not on the PATH; expected it installed (Debian, Ubuntu:"
                                + " sudo apt install gmsh; macOS: brew install gmsh; Windows: unpack it from gmsh.info and"
                                + " add its folder to the PATH), or the part as STL or OBJ"));
        BoundedProcess.Outcome told = new BoundedProcess(folder, Math.min(seconds, 60), MOST_BYTES)
                .run(limited(program, List.of("--version")));
        var version = VERSION.matcher(told.printed());
        if (told.end() != BoundedProcess.End.DONE || !version.find()) {
            throw failed(program, "does not tell its version", told);
        }
        return new Mesher(program, seconds, "gmsh " + version.group(1));
    }

    private static Optional<Path> program(String searchPath) {
        boolean windows = File.separatorChar == '\\';
        for (String folder : searchPath.split(Pattern.quote(File.pathSeparator), -1)) {
            try {
                Path program = Path.of(folder).resolve(windows ? "gmsh.exe" : "gmsh");
                if (program.isAbsolute() && Files.isRegularFile(program) && Files.isExecutable(program)) {
                    return Optional.of(program);
                }
            } catch (InvalidPathException noPath) {
                // Such an entry holds no program.
            }
        }
        return Optional.empty();
    }

    /**
     * The facets of the file {@link #PART}, mm; each face of the part is a group.
     *
     * @param folder the folder with it
     * @param deflection how far facets are to lie from the surface at most, mm; the program does not always keep to it
     * @param angle greatest angle between neighbouring facets of a face, degrees
     */
    FacetMesh mesh(Path folder, double deflection, double angle) throws IOException, MeshFault {
        Files.deleteIfExists(folder.resolve(FACETS));
        List<String> command = new ArrayList<>(List.of("-0", "-v", "2", "-nopopup"));
        // Versions differ in what a length means unless told; those that do not know the option mean millimetres.
        set(command, "Mesh.StlLinearDeflectionRelative", "0");
        set(command, "Mesh.StlLinearDeflection", Double.toString(deflection));
        set(command, "Mesh.StlAngularDeflection", Double.toString(Math.toRadians(angle)));
        set(command, "Mesh.StlOneSolidPerSurface", "1");
        command.addAll(List.of("-format", "stl", "-o", FACETS, PART));
        BoundedProcess.Outcome outcome = new BoundedProcess(folder, seconds, MOST_BYTES).run(limited(program, command));
        Path facets = folder.resolve(FACETS);
        if (outcome.end() != BoundedProcess.End.DONE) {
            throw failed(
                    program,
                    switch (outcome.end()) {
                        case TOO_LONG -> "took longer than " + seconds + " s: give a larger chord_tolerance";
                        case TOO_MUCH -> "wrote more than " + MOST_BYTES + " bytes: give a larger chord_tolerance";
                        default -> "could not mesh it";
                    },
                    outcome);
        }
        if (!Files.isRegularFile(facets) || Files.size(facets) == 0) {
            throw failed(program, "wrote no facets", outcome);
        }
        try (BufferedReader text = Files.newBufferedReader(facets, StandardCharsets.ISO_8859_1)) {
            return TextStl.read(text, MeshReader.MOST_FACETS);
        } catch (MeshFault | SolidLines.LineTooLong garbled) {
            if (garbled instanceof MeshFault fault && fault.code().equals("mesh-too-large")) {
                throw new MeshFault(
                        "mesh-too-large",
                        "it takes more than " + MeshReader.MOST_FACETS
                                + " facets, expected fewer: give a larger chord_tolerance");
            }
            throw failed(program, "wrote what is no STL file", outcome);
        }
    }

    private static void set(List<String> command, String option, String value) {
        command.addAll(List.of("-setnumber", option, value));
    }

    /** The command, held to some memory where the system has a program for that. */
    private static List<String> limited(Path program, List<String> arguments) {
        List<String> command = new ArrayList<>();
        if (Files.isExecutable(HOLDS_MEMORY)) {
            command.addAll(List.of(HOLDS_MEMORY.toString(), "--as=" + MOST_MEMORY, "--"));
        }
        command.add(program.toString());
        command.addAll(arguments);
        return command;
    }

    private static MeshFault failed(Path program, String what, BoundedProcess.Outcome outcome) {
        String said = COLOUR.matcher(outcome.printed())
                .replaceAll("")
                .lines()
                .map(String::strip)
                .filter(line -> line.toLowerCase(Locale.ROOT).contains("err"))
                .findFirst()
                .map(line -> "; it says: "
                        + Wording.shortened(line.replaceAll("[* ]+", " ").strip()))
                .orElse("");
        return new MeshFault(
                "mesher-failed",
                "the mesher " + Wording.oneLine(program.toString()) + " " + what + said
                        + "; expected the facets of a STEP file");
    }
}
