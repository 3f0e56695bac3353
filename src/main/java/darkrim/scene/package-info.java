/** What light meets: facets, named surfaces, finishes and the beam. No files, no options. */
package darkrim.scene;
