/** How what is built differs from what is drawn, and what that does to the requirements. */
package darkrim.study.tolerance;
