package darkrim.study.comparison;

/**
 * A surface that differs.
 *
 * @param name its name
 * @param areaBefore area in the first layout, mm2; 0 where it is not there
 * @param areaAfter area in the second, mm2; 0 where it is not there
 * @param moved distance between the middles of its facets, mm; NaN where it is not in both
 * @param cornerMoved the greatest distance that a corner of a facet moved, mm; NaN where it is not in both or has another number of facets
 * @param finishBefore name of its finish in the first; empty where it is not there
 * @param finishAfter name of its finish in the second
 */
public record SurfaceChange(
        String name,
        double areaBefore,
        double areaAfter,
        double moved,
        double cornerMoved,
        String finishBefore,
        String finishAfter) {
    /** Whether it is in both and stands for another number of facets, so that its corners cannot be compared. */
    public boolean otherFacets() {
        return !added() && !gone() && Double.isNaN(cornerMoved);
    }

    /** Whether it is only in the second layout. */
    public boolean added() {
        return finishBefore.isEmpty();
    }

    /** Whether it is only in the first layout. */
    public boolean gone() {
        return finishAfter.isEmpty();
    }
}
