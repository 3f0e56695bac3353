/** Results as tables for other programs: comma-separated values, JSON, and the report of tests that build servers read. */
package darkrim.present.table;
