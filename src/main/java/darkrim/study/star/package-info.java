/** Where a star must not stand: once-reflected light over the position of a star around the detectors. */
package darkrim.study.star;
