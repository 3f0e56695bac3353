/**
 * Sections through a layout: what a plane cuts of its parts, and the rays that limit the light in it.
 *
 * <p>In: a checked layout and a {@code SectionPlane}. Out: a {@code LayoutSection}: outlines that the plane cuts,
 * the pupil's rim, limiting edges, and rays that graze them, in mm. Main types: {@code BodyCut} cuts a solid,
 * {@code EdgeSearch} finds the edges that limit, {@code RaySearch} the rays past them, {@code SectionMargins} the
 * margins that belong there.
 *
 * <p>It must not know: paper, scales, line widths: present.drawing has these. Begin to read: {@code
 * LayoutSection}.
 */
package darkrim.study.section;
