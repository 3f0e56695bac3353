/**
 * A result as a JSON document; docs/result.schema.json describes it. The records have the names of its keys, in
 * camel case.
 *
 * <p>In: the result of a study. Out: JSON, and for a window what was saved before. Main types: {@code JsonResult}
 * writes, a record for each object such as {@code ResultDocument} and {@code RequirementDocument}, {@code
 * SavedCheck} reads back.
 *
 * <p>It must not know: how a number came about. A field that is added needs its meaning in the schema and a new
 * page docs/result-fields.md. Begin to read: {@code ResultDocument}.
 */
package darkrim.present.json;
