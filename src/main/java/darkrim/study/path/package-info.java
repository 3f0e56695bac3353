/** Light after up to eight reflections: by which surfaces it comes, where it is brightest, and lines that anyone can draw. */
package darkrim.study.path;
