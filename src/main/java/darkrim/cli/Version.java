package darkrim.cli;

import darkrim.trace.KernelChoice;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Properties;
import picocli.CommandLine.IVersionProvider;

/** The version that the build wrote into the program. */
final class Version implements IVersionProvider {
    private static final String RESOURCE = "/darkrim/version.properties";

    /** The number, such as {@code 0.1.0}. */
    static String number() {
        try (InputStream stream = Version.class.getResourceAsStream(RESOURCE)) {
            if (stream == null) {
                throw new IllegalStateException("the program was built without " + RESOURCE);
            }
            Properties properties = new Properties();
            properties.load(stream);
            return properties.getProperty("version");
        } catch (IOException problem) {
            throw new UncheckedIOException(problem);
        }
    }

    @Override
    public String[] getVersion() {
        return new String[] {"Darkrim " + number(), "Rays are traced by " + KernelChoice.description() + "."};
    }
}
