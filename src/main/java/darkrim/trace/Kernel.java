package darkrim.trace;

/**
 * A way to walk through a tree. All give the same answers to the last bit: they differ in how they look at boxes, and no answer depends on
 * boxes, since facets are tested by {@link FacetTree#meet} alone.
 *
 * <p>Where boxes are entered is compared as whole numbers: the bits of a float that is not negative grow with it, and those of a negative
 * one are negative. So the greater of 0 and some entries is right, and the least of some exits is right or at least negative, and one
 * instruction does it.
 */
abstract class Kernel {
    /** The one that answers for every {@link FacetTree}. */
    static final Kernel CHOSEN = KernelChoice.kernel();

    /** See {@link FacetTree#nearest}. */
    abstract int nearest(FacetTree tree, Ray ray);

    /** See {@link FacetTree#blocked}. */
    abstract boolean blocked(FacetTree tree, Ray ray);

    /** What it is called. */
    abstract String description();
}
