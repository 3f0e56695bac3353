/** How materials contract when they are cooled. */
package darkrim.material;
