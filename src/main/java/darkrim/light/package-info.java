/** Finishes, beam sampling, direct and reflected transport, tallies. Every number comes with its standard error and sample count. */
package darkrim.light;
