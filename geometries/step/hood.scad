// The hood of hood.geo for OpenSCAD 2021.01:
//   openscad --export-format binstl -o hood.stl hood.scad
// Circles are polygons whose corners lie on them: 120 corners on a radius of 28 mm keep within 0.0096 mm.
$fn = 120;
rotate_extrude()
  polygon(concat(
    [[24, 0], [26, 0]],
    [for (i = [0:12]) [26 + 2 * sin(180 * i / 12), 12 - 2 * cos(180 * i / 12)]],
    [[26, 30], [20, 30], [24, 27]]));
