package darkrim.cli;

import darkrim.study.MarginScope;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads which margins to look for. */
final class MarginChoice implements ITypeConverter<MarginScope> {
    @Override
    public MarginScope convert(String text) {
        return switch (text) {
            case "none" -> MarginScope.NONE;
            case "least" -> MarginScope.LEAST;
            case "all" -> MarginScope.ALL;
            default ->
                throw new TypeConversionException("'" + text + "' names no margins, expected one of none, least, all");
        };
    }
}
