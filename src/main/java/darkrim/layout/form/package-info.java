/**
 * Reads a YAML text against a table of keys: places, units, formulas, suggestions, and the JSON Schema of the same table. It knows nothing
 * of baffles.
 */
package darkrim.layout.form;
