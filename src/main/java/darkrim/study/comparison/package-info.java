/** What one layout does to another. */
package darkrim.study.comparison;
