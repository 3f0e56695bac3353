package darkrim.trace;

import java.util.Optional;

/**
 * Which kernel this process uses: the one with vectors where the module for them has been switched on, which is done as Java starts, and the
 * processor has vectors of 256 bits; the scalar one otherwise. The system property {@code darkrim.kernel} with the value {@code scalar} switches
 * vectors off.
 */
public final class KernelChoice {
    private static final String PROPERTY = "darkrim.kernel";

    /** Incubating, and so in no process that does not ask for it. */
    private static final String MODULE = "jdk.incubator.vector";

    private KernelChoice() {}

    /** The kernel in use, in a few words. */
    public static String description() {
        return Kernel.CHOSEN.description();
    }

    /** Whether the module for vectors has been switched on. */
    static boolean hasVectors() {
        return ModuleLayer.boot().findModule(MODULE).isPresent();
    }

    static Kernel kernel() {
        if ("scalar".equals(System.getProperty(PROPERTY))) {
            return new ScalarKernel();
        }
        return vector().orElseGet(ScalarKernel::new);
    }

    /** The kernel with vectors, where this process can run it. Its class must not be looked at elsewhere. */
    static Optional<Kernel> vector() {
        if (!hasVectors()) {
            return Optional.empty();
        }
        try {
            return Optional.of(Class.forName("darkrim.trace.VectorKernel")
                    .asSubclass(Kernel.class)
                    .getDeclaredConstructor()
                    .newInstance());
        } catch (ReflectiveOperationException | LinkageError e) {
            // Built without it, or for another state of the incubating interface, or the processor's vectors are too
            // short.
            return Optional.empty();
        }
    }
}
