package darkrim.cli;

import darkrim.layout.form.Wording;
import darkrim.study.irradiance.LightKind;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a class of light that is measured by itself. */
final class MapLight implements ITypeConverter<LightKind> {
    @Override
    public LightKind convert(String text) {
        return switch (text) {
            case "direct" -> LightKind.DIRECT;
            case "reflected" -> LightKind.ONCE_REFLECTED;
            default ->
                throw new TypeConversionException(
                        "'" + Wording.shortened(text) + "' names no light, expected direct or reflected");
        };
    }
}
