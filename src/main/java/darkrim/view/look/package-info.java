/**
 * What the viewer has chosen to see, as values that do not change, with the way back. No window.
 *
 * <p>In: one choice after another. Out: a {@code Look}: what is shown, hidden, cut, selected and measured, and in
 * which colours. Main types: {@code Look}, {@code LookLine} with those who follow it, {@code History} for back and
 * forth.
 *
 * <p>It must not know: JavaFX; how a look is drawn. Begin to read: {@code Look}.
 */
package darkrim.view.look;
