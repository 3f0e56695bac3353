/** How parts lie against each other: overlaps, and sheets on faces. */
package darkrim.study.contact;
