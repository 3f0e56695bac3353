package darkrim.cli;

import darkrim.layout.form.Wording;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/**
 * Angles off axis: a range with a step, or a list.
 *
 * @param degrees the angles, rising, each once
 */
record Angles(List<Double> degrees) {
    private static final int MOST = 1000;

    /** Copies the list. */
    Angles {
        degrees = List.copyOf(degrees);
    }

    /** Reads them: {@code 0 to 80 step 5} or {@code 5, 10, 20}. */
    static final class Reader implements ITypeConverter<Angles> {
        private static final String NUMBER = "\\s*([0-9]*\\.?[0-9]+)\\s*";
        private static final Pattern RANGE = Pattern.compile(NUMBER + "to" + NUMBER + "step" + NUMBER);
        private static final Pattern LIST = Pattern.compile("[0-9., ]+");

        @Override
        public Angles convert(String text) {
            List<Double> degrees = new ArrayList<>();
            Matcher range = RANGE.matcher(text);
            try {
                if (range.matches()) {
                    BigDecimal step = new BigDecimal(range.group(3));
                    BigDecimal to = new BigDecimal(range.group(2));
                    for (BigDecimal at = new BigDecimal(range.group(1));
                            step.signum() > 0 && at.compareTo(to) <= 0 && degrees.size() <= MOST;
                            at = at.add(step)) {
                        degrees.add(at.doubleValue());
                    }
                } else if (LIST.matcher(text).matches()) {
                    for (String each : List.of(text.split(",", -1))) {
                        degrees.add(Double.parseDouble(each.strip()));
                    }
                }
            } catch (NumberFormatException noNumber) {
                throw refused(text);
            }
            List<Double> rising = degrees.stream().sorted().distinct().toList();
            if (rising.isEmpty() || rising.size() > MOST || rising.get(rising.size() - 1) >= 90) {
                throw refused(text);
            }
            return new Angles(rising);
        }

        private static TypeConversionException refused(String text) {
            return new TypeConversionException("expected angles from 0 to less than 90 degrees, at most " + MOST
                    + ", such as '0 to 80 step 5' or '5, 10, 20', got '" + Wording.shortened(text) + "'");
        }
    }
}
