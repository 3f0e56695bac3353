/** A result as a JSON document; docs/result.schema.json describes it. The records have the names of its keys, in camel case. */
package darkrim.present.json;
