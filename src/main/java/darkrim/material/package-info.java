/**
 * How materials contract when they are cooled.
 *
 * <p>In: a material and a temperature. Out: how much shorter it is. Main types: {@code Material}, {@code
 * MaterialLibrary}, {@code Contraction}.
 *
 * <p>It must not know: parts and their shape. Begin to read: {@code Contraction}.
 */
package darkrim.material;
