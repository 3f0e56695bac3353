package darkrim.layout;

import darkrim.diagnostic.Finding;
import darkrim.diagnostic.Findings;
import darkrim.diagnostic.Place;
import darkrim.layout.form.Fields;
import darkrim.layout.form.Wording;
import darkrim.reflection.Reflection;
import java.util.Map;
import java.util.Optional;

/** A finish of a layout that stands for an entry of the finish library. */
record LibraryFinish(Findings findings) {
    /** The finish; empty, with a finding, where it cannot be had. */
    Optional<FinishSpec> read(String name, Place place, Fields fields, Optional<Band> band) {
        Place at = fields.place("library");
        if (hasOtherKeys(fields)) {
            findings.error(
                    "finish-keys",
                    fields.place(),
                    "the finish '" + name + "' is an entry of the library and has values of its own,"
                            + " expected no other key than source and emissivity");
            return Optional.empty();
        }
        String wanted = fields.text("library");
        Optional<FinishLibrary.Entry> entry = FinishLibrary.entry(wanted);
        if (entry.isEmpty()) {
            findings.error(
                    "unknown-finish",
                    at,
                    "the finish library has no '" + Wording.shortened(wanted) + "', "
                            + Wording.suggestion(wanted, FinishLibrary.names()));
            return Optional.empty();
        }
        Findings own = new Findings();
        Optional<Reflection> reflection = entry.get().reflection(band, own);
        for (Finding finding : own.sorted()) {
            findings.error(finding.code(), at, "library entry '" + wanted + "': " + finding.message());
        }
        new FinishReader(band, SideFiles.known("", Map.of()), findings)
                .warnOfDye(entry.get().keys(), fields);
        String source = fields.text("source");
        return reflection.map(found -> new FinishSpec(
                name,
                found,
                source.isEmpty() ? entry.get().what() + ": " + entry.get().source() : source,
                place));
    }

    private static boolean hasOtherKeys(Fields fields) {
        return FinishKeys.LAWS.stream().anyMatch(fields::has)
                || isGiven(fields, "diffuse")
                || isGiven(fields, "mirror")
                || fields.flag("dyed");
    }

    /** A value that is not the default of 0. */
    private static boolean isGiven(Fields fields, String key) {
        return fields.find(key).orElseThrow() instanceof Fields || fields.number(key) != 0;
    }
}
