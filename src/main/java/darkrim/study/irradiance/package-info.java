/** Irradiance over surfaces, cell by cell, for maps that grow finer while they are looked at. */
package darkrim.study.irradiance;
