/**
 * Irradiance over surfaces, cell by cell, for maps that grow finer while they are looked at.
 *
 * <p>In: a placed layout and surfaces split into cells. Out: a {@code SurfaceMap} for each: mean irradiance and
 * standard error cell by cell. Main types: {@code SurfaceCells} splits, {@code MapSampling} samples in rounds of
 * which each adds to the last, {@code LitLayout} is a checked layout with its maps, {@code SourceLight} the light
 * of a source beside the beam.
 *
 * <p>It must not know: colours and units of pictures. Begin to read: {@code MapSampling}.
 */
package darkrim.study.irradiance;
