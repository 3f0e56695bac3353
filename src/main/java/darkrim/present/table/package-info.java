/**
 * Results as tables for other programs: comma-separated values, JSON, and the report of tests that build servers
 * read.
 *
 * <p>In: results. Out: a {@code DataTable}, as CSV or JSON, and the report of tests. Main types: {@code
 * CheckTables}, {@code PartTables} and {@code PointTable} make tables, {@code JunitReport} the report
 * (docs/build-server.md).
 *
 * <p>It must not know: columns of studies, which stand with the study that reads them back. Begin to read: {@code
 * DataTable}.
 */
package darkrim.present.table;
