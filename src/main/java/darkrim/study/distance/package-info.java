/** How far triangulated surfaces are from one another, where they stand and while one is moved along a straight line. */
package darkrim.study.distance;
