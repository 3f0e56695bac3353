package darkrim.cli;

import darkrim.study.NoSuchPoint;
import darkrim.study.PointName;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/**
 * A point as it is written on the command line: {@code SURFACE} or {@code SURFACE:u,v}.
 *
 * @param surface full name of a surface
 * @param u share across it, 0 to 1
 * @param v likewise, the other way
 */
record PointOption(String surface, double u, double v) {
    /** Reads it. */
    static final class Reader implements ITypeConverter<PointOption> {
        @Override
        public PointOption convert(String text) {
            try {
                PointName name = PointName.read(text);
                return new PointOption(name.surface(), name.u(), name.v());
            } catch (NoSuchPoint refused) {
                throw new TypeConversionException(refused.getMessage());
            }
        }
    }
}
