/** What to change so that a layout passes. */
package darkrim.study.advice;
