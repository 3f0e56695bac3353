/** Many points over ranges of named dimensions, where requirements change sides, and what lets an interrupted study go on. */
package darkrim.study.sweep;
