/** Maps of light on flat surfaces as files for other programs. */
package darkrim.present.map;
