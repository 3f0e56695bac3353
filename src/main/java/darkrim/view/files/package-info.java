/** Files that the window reads and writes beside results: the layout that someone edits, pictures, what it remembers. */
package darkrim.view.files;
