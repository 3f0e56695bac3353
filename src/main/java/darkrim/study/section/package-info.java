/** Sections through a layout: what a plane cuts of its parts, and the rays that limit the light in it. */
package darkrim.study.section;
