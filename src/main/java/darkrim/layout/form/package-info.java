/**
 * Reads a YAML text against a table of keys: places, units, formulas, suggestions, and the JSON Schema of the same
 * table. It knows nothing of baffles.
 *
 * <p>In: a YAML text and a table of keys. Out: values with places. Main types: {@code FormReader} reads, {@code Key}
 * and {@code Kind} make up the table, {@code Formula} is arithmetic with names, {@code SchemaWriter} writes the
 * schema.
 */
package darkrim.layout.form;
