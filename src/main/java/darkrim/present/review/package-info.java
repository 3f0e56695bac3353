/** The review file: what was found of a layout, with pictures, as one page for a browser and as a document to print. */
package darkrim.present.review;
