/** How far parts keep apart, warm, cold, and while they are put together. */
package darkrim.study.clearance;
