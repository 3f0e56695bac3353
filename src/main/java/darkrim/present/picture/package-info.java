/** Pictures of the light: colours and scales, and scenes drawn by the ray core, without any display. */
package darkrim.present.picture;
