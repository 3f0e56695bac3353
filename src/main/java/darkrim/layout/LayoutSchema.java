package darkrim.layout;

import darkrim.layout.form.SchemaWriter;
import tools.jackson.core.util.DefaultIndenter;
import tools.jackson.core.util.DefaultPrettyPrinter;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;

/** The JSON Schema of layout files, for editors. It follows from the same table as the reading. */
public final class LayoutSchema {
    private LayoutSchema() {}

    /** The schema, draft 2020-12, as it stands in docs/layout.schema.json. */
    public static String text() {
        DefaultIndenter indenter = new DefaultIndenter("  ", "\n");
        DefaultPrettyPrinter printer =
                new DefaultPrettyPrinter().withObjectIndenter(indenter).withArrayIndenter(indenter);
        JsonMapper mapper = JsonMapper.builder()
                .enable(SerializationFeature.INDENT_OUTPUT)
                .defaultPrettyPrinter(printer)
                .build();
        return mapper.writeValueAsString(SchemaWriter.schema(
                        LayoutKeys.LAYOUT,
                        "Darkrim layout",
                        "A beam, detectors and the baffle in front of them, and what must hold."))
                + "\n";
    }
}
