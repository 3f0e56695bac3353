/**
 * Drawings of sections on paper: marks in mm, and the files they are written into.
 *
 * <p>In: a {@code study.section.LayoutSection}. Out: a sheet of {@code Mark}s in mm, and its bytes as SVG, PDF or
 * DXF. Main types: {@code SectionSheet} lays out the sheet from {@code WholeView}, {@code PartsView} and {@code
 * DetailViews}; {@code SvgSheet}, {@code PdfSheet} and {@code DxfSection} write; {@code DrawnScale} picks a scale.
 *
 * <p>It must not know: where rays come from: it draws what study.section found. Begin to read: {@code
 * SectionSheet}.
 */
package darkrim.present.drawing;
