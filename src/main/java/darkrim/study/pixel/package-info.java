/**
 * What pixels see: every surface's projected solid angle, how much of it the beam strikes, and what it emits.
 *
 * <p>In: a layout file and points, or the wish for the worst one. Out: a {@code PixelView}: what each point sees,
 * thing by thing, with solid angle, lit share and warm light. Main types: {@code PixelView} is the study, {@code
 * WorstSearch} finds the point that sees most, {@code PixelLook} looks, {@code WarmLight} is what is emitted
 * within the band.
 *
 * <p>It must not know: requirements and verdicts. Begin to read: {@code PixelView}.
 */
package darkrim.study.pixel;
