/** How well a baffle keeps the light of a body beside the field off the detectors. */
package darkrim.study.rejection;
