/**
 * Reads a YAML text against a table of keys: places, units, formulas, suggestions, and the JSON Schema of the same
 * table.
 *
 * <p>In: a YAML text and a table of keys. Out: values with places. Main types: {@code FormReader} reads, {@code
 * Key} and {@code Kind} make up the table, {@code Formula} is arithmetic with names, {@code SchemaWriter} writes
 * the schema.
 *
 * <p>It must not know: baffles: which keys there are is said by the package layout. Begin to read: {@code
 * FormReader}.
 */
package darkrim.layout.form;
