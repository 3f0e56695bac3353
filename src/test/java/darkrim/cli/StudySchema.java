package darkrim.cli;

import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** Holds a document that the program wrote against a published schema. */
final class StudySchema {
    private StudySchema() {}

    /** What is wrong; empty if nothing is. */
    static List<String> problems(String schema, Path document) throws IOException {
        return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(Files.readString(Path.of("docs", schema)), InputFormat.JSON)
                .validate(Files.readString(document), InputFormat.JSON)
                .stream()
                .map(Object::toString)
                .toList();
    }
}
