/** Checks: one, and many. */
package darkrim.study;
