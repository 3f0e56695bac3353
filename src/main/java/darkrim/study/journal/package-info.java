/** Files that keep what a study has finished, so that it can go on after an interruption. */
package darkrim.study.journal;
