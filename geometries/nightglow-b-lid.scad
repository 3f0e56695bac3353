// The lid of nightglow-b.yaml for OpenSCAD 2021.01:
//   openscad -o nightglow-b-lid.stl nightglow-b-lid.scad
// Lengths in mm, heights above the active surface.
spacing = 40.2 * (1 - 2.4 / 320);
side = 37;
bottom = 1.6;
top = 2.4;
land = 0.05;
widening = (top - land - bottom) * tan(30);

module opening() {
  translate([-side / 2, -side / 2, top - land - 0.001]) cube([side, side, 1]);
  hull() {
    translate([-side / 2, -side / 2, top - land - 0.0000001]) cube([side, side, 0.0000001]);
    // Goes on below the lid, so that the two do not share a face.
    translate([-side / 2 - 2 * widening, -side / 2 - 2 * widening, 2 * bottom - top + land])
      cube([side + 4 * widening, side + 4 * widening, 0.0000001]);
  }
}

difference() {
  translate([-65, -65, bottom]) cube([130, 130, top - bottom]);
  for (x = [-0.5, 0.5], y = [-0.5, 0.5]) translate([x * spacing, y * spacing, 0]) opening();
}
