package darkrim.layout;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.util.List;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.schema.CoreSchema;
import tools.jackson.databind.json.JsonMapper;

/** Holds a YAML text against the published schema, as an editor does. */
final class SchemaCheck {
    private static final Schema SCHEMA = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
            .getSchema(LayoutSchema.text(), InputFormat.JSON);

    private SchemaCheck() {}

    /** What the schema has against it. */
    static List<String> problems(String yaml) {
        LoadSettings settings =
                LoadSettings.builder().setSchema(new CoreSchema()).build();
        String json = JsonMapper.builder().build().writeValueAsString(new Load(settings).loadFromString(yaml));
        return SCHEMA.validate(json, InputFormat.JSON).stream()
                .map(Object::toString)
                .toList();
    }
}
