/** What the viewer has chosen to see, as values that do not change, with the way back. No window. */
package darkrim.view.look;
