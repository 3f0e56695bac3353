/** What happens while a dimension is dragged: verdicts, margins and light that follow, without any window. */
package darkrim.study.live;
