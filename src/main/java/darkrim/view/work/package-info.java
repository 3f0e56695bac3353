/** What is worked out for the window, away from it: layouts read, light measured, results read back. */
package darkrim.view.work;
