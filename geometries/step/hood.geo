// The hood of hood.yaml for gmsh 4.8.4, whose modeller is Open CASCADE:
//   gmsh -0 hood.geo -format step -o hood.step
// A tube with a conical lip inside and a round bead outside. Lengths in mm.
SetFactory("OpenCASCADE");
Point(1) = {24, 0, 0};
Point(2) = {26, 0, 0};
Point(3) = {26, 0, 10};
Point(4) = {26, 0, 12};
Point(5) = {26, 0, 14};
Point(6) = {26, 0, 30};
Point(7) = {20, 0, 30};
Point(8) = {24, 0, 27};
Point(9) = {28, 0, 12};
Line(1) = {1, 2};
Line(2) = {2, 3};
Circle(3) = {3, 4, 9};
Circle(8) = {9, 4, 5};
Line(4) = {5, 6};
Line(5) = {6, 7};
Line(6) = {7, 8};
Line(7) = {8, 1};
Curve Loop(1) = {1, 2, 3, 8, 4, 5, 6, 7};
Plane Surface(1) = {1};
Extrude { {0, 0, 1}, {0, 0, 0}, 2 * Pi } { Surface{1}; }
Recursive Delete { Surface{1}; }
