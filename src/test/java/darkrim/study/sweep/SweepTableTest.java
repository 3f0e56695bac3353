package darkrim.study.sweep;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import darkrim.study.LayoutFamily;
import darkrim.study.journal.CsvLine;
import org.junit.jupiter.api.Test;

/** Points as comma-separated values. */
class SweepTableTest {
    private static final LayoutFamily FAMILY = Sweeps.slit(
            "'dark, \"here\"': {surfaces: screen/back, direct: none}",
            "mean: {surfaces: screen/front, direct: {at_most: 0.1}}",
            "reflected: {surfaces: screen/front, once_reflected: {at_most: 1.0e-3}}",
            "cells: {surfaces: screen/front, direct: {at_most: 0.1, per: cell}}",
            "seen: {surfaces: screen/front, pupil_seen: {at_least: 0.5}}");

    @Test
    void aLineReadBackIsTheSamePointToTheLastBit() throws Exception {
        SweepResult result = Sweeps.run(FAMILY, Sweeps.grid(FAMILY, "slit = -30, 3, 4"));
        SweepTable table = new SweepTable(result.variations(), FAMILY.written().requirements());
        assertThat(result.points()).hasSize(3);
        for (SweepPoint point : result.points()) {
            assertThat(table.read(table.line(point), point.number())).isEqualTo(point);
        }
    }

    @Test
    void everyLineHasTheColumnsOfTheHeaderAndEndsAsTheStandardSays() throws Exception {
        SweepResult result = Sweeps.run(FAMILY, Sweeps.grid(FAMILY, "slit = -30, 3"));
        SweepTable table = new SweepTable(result.variations(), FAMILY.written().requirements());
        // RFC 4180: lines end in CRLF, a field with a comma or a quote is quoted and quotes are doubled
        assertThat(table.header())
                .startsWith("point,slit [mm],verdict,")
                .contains(",\"dark, \"\"here\"\" margin [mm]\",")
                .contains(",mean value [relative irradiance],")
                .contains(",seen margin [mm],")
                .endsWith("\r\n");
        int columns = CsvLine.fields(table.header()).size();
        assertThat(result.points())
                .allSatisfy(
                        point -> assertThat(CsvLine.fields(table.line(point))).hasSize(columns));
    }

    @Test
    void aLineOfAnotherTableIsRefused() {
        SweepTable table = new SweepTable(java.util.List.of(), FAMILY.written().requirements());
        assertThatThrownBy(() -> table.read("1,2\r\n", 1)).isInstanceOf(IllegalArgumentException.class);
    }
}
