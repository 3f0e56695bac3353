/**
 * What happens while a dimension is dragged: verdicts, margins and light that follow, without any window.
 *
 * <p>In: positions of named dimensions, from any thread. Out: {@code LiveState}s of the latest position in growing
 * {@code LiveDetail}. Main types: {@code LiveLayout} takes moves and drops what is out of date, {@code LiveStep}
 * works out one position, {@code WriteBack} puts values into the file and keeps all else. docs/decisions/0019 has
 * the reasons.
 *
 * <p>It must not know: JavaFX, and how states are shown. Begin to read: {@code LiveLayout}.
 */
package darkrim.study.live;
