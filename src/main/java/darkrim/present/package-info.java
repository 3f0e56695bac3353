/** Results in words, tables and JSON. Reads results only and computes nothing that a verdict rests on. */
package darkrim.present;
