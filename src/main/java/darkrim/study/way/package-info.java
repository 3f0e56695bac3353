/** Ways that light takes through a layout, as lines that anyone can draw. */
package darkrim.study.way;
