package darkrim.cli;

import darkrim.layout.form.Wording;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads the name of a file. */
final class FileName implements ITypeConverter<Path> {
    @Override
    public Path convert(String text) {
        if (text.isBlank()) {
            throw new TypeConversionException("expected the name of a file, got '" + Wording.shortened(text) + "'");
        }
        try {
            return Path.of(text);
        } catch (InvalidPathException refused) {
            throw new TypeConversionException("'" + Wording.shortened(text)
                    + "' is not the name of a file here; if it has letters beyond ASCII, expected a locale that has"
                    + " them, such as LC_ALL=C.UTF-8");
        }
    }
}
