/** Everything that is looked at for the review of a layout. */
package darkrim.study.review;
