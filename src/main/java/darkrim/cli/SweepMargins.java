package darkrim.cli;

import darkrim.layout.form.Wording;
import darkrim.study.MarginScope;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads which margins a sweep looks for. */
final class SweepMargins implements ITypeConverter<MarginScope> {
    @Override
    public MarginScope convert(String text) {
        return switch (text) {
            case "none" -> MarginScope.NONE;
            case "least" -> MarginScope.REQUIREMENTS;
            default ->
                throw new TypeConversionException(
                        "'" + Wording.shortened(text) + "' names no margins, expected least or none");
        };
    }
}
