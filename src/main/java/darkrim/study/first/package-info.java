/** A first layout from what a designer knows on the first day: the detectors, the pupil and where the opening's edge may stand. */
package darkrim.study.first;
