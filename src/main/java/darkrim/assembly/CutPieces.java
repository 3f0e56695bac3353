package darkrim.assembly;

import darkrim.geom.Outline;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.layout.CutShape;
import darkrim.layout.CutShape.ColdStop;
import darkrim.layout.CutShape.Extruded;
import darkrim.layout.CutShape.Honeycomb;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/** Parts whose outlines go straight through along z. */
final class CutPieces {
    private CutPieces() {}

    /**
     * The pieces of a part.
     *
     * @throws IllegalArgumentException if its sizes do not make a body
     */
    static Pieces of(CutShape shape) {
        if (shape instanceof Extruded extruded) {
            return extruded(extruded);
        } else if (shape instanceof Honeycomb comb) {
            return honeycomb(comb);
        }
        return coldStop((ColdStop) shape);
    }

    private static Pieces extruded(Extruded part) {
        List<Vector2D> loop = part.outline().corners();
        Mesh mesh = Mesh.solid("");
        mesh.band(part.sides()::get, Mesh.at(0, loop), Mesh.at(part.length(), loop));
        mesh.level("top", part.length(), loop, List.of(), true);
        mesh.level("base", 0, loop, List.of(), false);
        return Pieces.of(mesh);
    }

    /** A cell and its name. */
    private record Cell(String name, List<Vector2D> loop) {}

    private static Pieces honeycomb(Honeycomb comb) {
        Border rim = Border.ofMaterial(comb.outer());
        List<Cell> cells = cells(comb);
        if (cells.isEmpty()) {
            throw new IllegalArgumentException("no whole cell fits within its outline");
        }
        double top = comb.height() + comb.thickness();
        Mesh mesh = Mesh.solid("");
        List<List<Vector2D>> holes = cells.stream().map(Cell::loop).toList();
        mesh.level("top", top, rim.loop(), holes, true);
        mesh.level("underside", comb.height(), rim.loop(), holes, false);
        mesh.band(i -> "rim" + rim.steps().get(i), Mesh.at(comb.height(), rim.loop()), Mesh.at(top, rim.loop()));
        for (Cell cell : cells) {
            mesh.band(i -> cell.name(), Mesh.at(top, cell.loop()), Mesh.at(comb.height(), cell.loop()));
        }
        return Pieces.of(mesh, rim.chordError());
    }

    /**
     * Whole cells about the middle, row j from below, cell i from the left within the widest row. Rows lie sqrt(3)/2 of a step apart, every
     * second one moved by half a step.
     */
    private static List<Cell> cells(Honeycomb comb) {
        double step = comb.cell() + comb.wall();
        double rowStep = step * StrictMath.sqrt(0.75);
        List<Vector2D> hexagon = TurnedPieces.hexagon(comb.cell());
        int columns = (int) Math.ceil(comb.outer().reach() / step);
        int rows = (int) Math.ceil(comb.outer().reach() / rowStep);
        List<Cell> cells = new ArrayList<>();
        int row = 0;
        for (int j = -rows; j <= rows; j++) {
            double moved = Math.floorMod(j, 2) == 0 ? 0 : 0.5;
            int column = 0;
            for (int i = -columns - 1; i <= columns; i++) {
                Vector2D centre = Vector2D.of((i + moved) * step, j * rowStep);
                List<Vector2D> loop = hexagon.stream().map(centre::add).toList();
                if (loop.stream().allMatch(corner -> isWithin(comb.outer(), corner, comb.wall()))) {
                    row += column == 0 ? 1 : 0;
                    column++;
                    cells.add(new Cell("cell[" + column + "," + row + "]", loop));
                }
            }
        }
        return cells;
    }

    /** Whether a point lies within an outline by a distance, mm. */
    private static boolean isWithin(Outline outer, Vector2D point, double by) {
        if (outer instanceof Ring ring) {
            double inside = ring.radius()
                    * StrictMath.cos(
                            Math.PI / RoundSides.forRadius(ring.radius()).count());
            return point.norm() + by <= inside;
        }
        List<Vector2D> corners = ((Polygon) outer).corners();
        double x = Math.abs(corners.get(0).getX());
        double y = Math.abs(corners.get(0).getY());
        // A grain more, so that a cell that fits exactly is not lost in rounding.
        double slack = 1e-12 * (x + y);
        return Math.abs(point.getX()) + by <= x + slack && Math.abs(point.getY()) + by <= y + slack;
    }

    private static Pieces coldStop(ColdStop stop) {
        RoundSides rimSides = RoundSides.forRadius(stop.outerRadius(), stop.chord());
        RoundSides sides = RoundSides.forRadius(stop.openingRadius(), stop.chord());
        double error = Math.max(rimSides.chordError(stop.outerRadius()), sides.chordError(stop.openingRadius()));
        TurnedPieces.requireWall(stop.outerRadius() - stop.openingRadius(), error);
        TurnedPieces.requireWall(stop.openingRadius() - stop.hubRadius(), error);
        List<Vector2D> rim = rimSides.inside(stop.outerRadius());
        List<Sector> sectors = new ArrayList<>();
        for (int i = 0; i < stop.arms(); i++) {
            sectors.add(Sector.of(stop, i, sides.count()));
        }
        double top = stop.height() + stop.thickness();
        Mesh mesh = Mesh.solid("");
        List<List<Vector2D>> holes = sectors.stream().map(Sector::loop).toList();
        mesh.level("top", top, rim, holes, true);
        mesh.level("underside", stop.height(), rim, holes, false);
        mesh.band(i -> "rim", Mesh.at(stop.height(), rim), Mesh.at(top, rim));
        for (int i = 0; i < stop.arms(); i++) {
            Sector sector = sectors.get(i);
            String name = "opening/" + (i + 1) + "/";
            mesh.band(
                    side -> name + sector.faces().get(side),
                    Mesh.at(top, sector.loop()),
                    Mesh.at(stop.height(), sector.loop()));
        }
        return Pieces.of(mesh, error);
    }

    /**
     * The opening between arm i and the next: an arc of the rim of the opening, an arm, an arc of the hub, an arm. The polygon of the rim lies
     * around its arc, that of the hub inside: never more material than the true part.
     */
    private record Sector(List<Vector2D> loop, List<String> faces) {
        static Sector of(ColdStop stop, int number, int fullTurn) {
            double from = 2 * Math.PI * number / stop.arms();
            double to = 2 * Math.PI * (number + 1) / stop.arms();
            double outer = StrictMath.asin(stop.armWidth() / 2 / stop.openingRadius());
            double inner = StrictMath.asin(stop.armWidth() / 2 / stop.hubRadius());
            List<Vector2D> loop = new ArrayList<>();
            List<String> faces = new ArrayList<>();
            double arc = to - from - 2 * outer;
            int steps = Math.max(1, (int) Math.ceil(fullTurn * arc / (2 * Math.PI)));
            double around = stop.openingRadius() / StrictMath.cos(arc / steps / 2);
            loop.add(polar(stop.openingRadius(), from + outer));
            faces.add("rim");
            for (int i = 0; i < steps; i++) {
                loop.add(polar(around, from + outer + arc * (i + 0.5) / steps));
                faces.add("rim");
            }
            loop.add(polar(stop.openingRadius(), to - outer));
            faces.add("arm-" + (number + 1 == stop.arms() ? 1 : number + 2));
            double hubArc = to - from - 2 * inner;
            int hubSteps = Math.max(1, (int) Math.ceil(fullTurn * hubArc / (2 * Math.PI)));
            for (int i = 0; i < hubSteps; i++) {
                loop.add(polar(stop.hubRadius(), to - inner - hubArc * i / hubSteps));
                faces.add("hub");
            }
            loop.add(polar(stop.hubRadius(), from + inner));
            faces.add("arm-" + (number + 1));
            return new Sector(List.copyOf(loop), List.copyOf(faces));
        }

        private static Vector2D polar(double radius, double angle) {
            return Vector2D.of(radius * StrictMath.cos(angle), radius * StrictMath.sin(angle));
        }
    }
}
