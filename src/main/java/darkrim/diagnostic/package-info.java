/** Findings about what the user wrote, each with its place. A leaf: it imports nothing else of Darkrim. */
package darkrim.diagnostic;
