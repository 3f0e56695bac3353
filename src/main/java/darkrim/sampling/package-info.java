/** Random streams that depend on names and numbers, never on threads. A leaf: it imports nothing else of Darkrim. */
package darkrim.sampling;
