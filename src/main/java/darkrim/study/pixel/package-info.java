/** What pixels see: every surface's projected solid angle, how much of it the beam strikes, and what it emits. */
package darkrim.study.pixel;
