/* page-text.c: text on a page: set by cap height, aligned, wrapped, cut, with a halo */
#include "draw/drawing.h"
#include "draw/plain-words.h"
#include "draw/svg-writer.h"

/* How far letters hang below the baseline, as a share of their cap height. */
#define DESCENT_PER_CAP 0.30
#define HALO_PER_CAP 0.55
#define HALO_ALPHA 0.92
#define USUAL_WEIGHT 400

static double
width_mm (PangoLayout *layout)
{
  int width;
  pango_layout_get_size (layout, &width, NULL);
  return (double)width / PANGO_SCALE;
}

static PangoLayout *
lay_out (SqDrawing *drawing, const char *text, const SqType *type)
{
  static const PangoAlignment alignments[] = { PANGO_ALIGN_LEFT, PANGO_ALIGN_CENTER,
                                               PANGO_ALIGN_RIGHT };
  PangoLayout *layout = pango_layout_new (drawing->text);
  PangoFontDescription *font = pango_font_description_from_string ("Inter,Sans");
  PangoAttrList *attributes = pango_attr_list_new ();
  double em_mm = type->cap_mm / SQ_CAP_PER_EM;

  pango_font_description_set_weight (font, type->weight > 0 ? (PangoWeight)type->weight
                                                            : PANGO_WEIGHT_NORMAL);
  pango_font_description_set_absolute_size (font, em_mm * PANGO_SCALE);
  pango_layout_set_font_description (layout, font);
  pango_font_description_free (font);

  pango_attr_list_insert (attributes, pango_attr_font_features_new ("tnum=1"));
  if (type->tracking_em != 0.0)
    pango_attr_list_insert (
      attributes, pango_attr_letter_spacing_new ((int)(type->tracking_em * em_mm * PANGO_SCALE)));
  pango_layout_set_attributes (layout, attributes);
  pango_attr_list_unref (attributes);

  g_autofree char *plain = sq_plain_words (text);
  pango_layout_set_text (layout, plain, -1);
  pango_layout_set_alignment (layout, alignments[type->align]);
  pango_layout_set_single_paragraph_mode (layout, type->one_line);
  /* Where one line fits, it stands by our own alignment: within a set width a script that runs from
   * right to left would be moved to the other side. */
  if (type->width_mm > 0.0 && !(type->one_line && width_mm (layout) <= type->width_mm)) {
    pango_layout_set_width (layout, (int)(type->width_mm * PANGO_SCALE));
    pango_layout_set_wrap (layout, PANGO_WRAP_WORD_CHAR);
    if (type->one_line)
      pango_layout_set_ellipsize (layout, PANGO_ELLIPSIZE_END);
  }
  return layout;
}

/* From the first baseline to the last. */
static double
lines_mm (PangoLayout *layout)
{
  PangoLayoutIter *iter = pango_layout_get_iter (layout);
  int first = pango_layout_iter_get_baseline (iter), last;
  while (pango_layout_iter_next_line (iter))
    ;
  last = pango_layout_iter_get_baseline (iter);
  pango_layout_iter_free (iter);
  return (double)(last - first) / PANGO_SCALE;
}

/* Of what the layout aligns within: the width that was set, else its own. */
static double
set_width_mm (PangoLayout *layout)
{
  int set = pango_layout_get_width (layout);
  return set >= 0 ? (double)set / PANGO_SCALE : width_mm (layout);
}

/* Left edge of the layout relative to its point. */
static double
left_mm (PangoLayout *layout, const SqType *type)
{
  double width = set_width_mm (layout);
  return type->align == SQ_ALIGN_LEFT ? 0.0 : type->align == SQ_ALIGN_CENTRE ? -width / 2 : -width;
}

static void
show_in_svg (SqDrawing *drawing, SqPaperPoint corner, PangoLayout *layout, const SqType *type)
{
  static const SqSvgAnchor anchors[] = { SQ_SVG_LEFT, SQ_SVG_MIDDLE, SQ_SVG_RIGHT };
  double em_mm = type->cap_mm / SQ_CAP_PER_EM;
  const SqSvgType look = { .size_mm = em_mm,
                           .weight = type->weight > 0 ? type->weight : USUAL_WEIGHT,
                           .tracking_mm = type->tracking_em * em_mm,
                           .colour = type->colour,
                           .halo_mm = type->halo ? type->cap_mm * HALO_PER_CAP : 0.0,
                           .halo_colour = sq_ink (drawing->view, SQ_PAPER),
                           .halo_alpha = HALO_ALPHA };
  sq_svg_text (drawing->svg, corner, anchors[type->align], layout, &look);
}

static void
show_halo (SqDrawing *drawing, SqPaperPoint corner, PangoLayout *layout, const SqType *type)
{
  cairo_t *cr = drawing->cairo;
  SqColour ground = sq_ink (drawing->view, SQ_PAPER);
  cairo_new_path (cr);
  cairo_move_to (cr, corner.x_mm, corner.y_mm);
  pango_cairo_layout_path (cr, layout);
  cairo_set_source_rgba (cr, ground.red, ground.green, ground.blue, HALO_ALPHA);
  cairo_set_line_width (cr, type->cap_mm * HALO_PER_CAP);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_set_dash (cr, NULL, 0, 0.0);
  cairo_stroke (cr);
}

static void
show (SqDrawing *drawing, SqPaperPoint corner, PangoLayout *layout, const SqType *type)
{
  cairo_t *cr = drawing->cairo;
  if (type->halo)
    show_halo (drawing, corner, layout, type);
  cairo_set_source_rgb (cr, type->colour.red, type->colour.green, type->colour.blue);
  cairo_move_to (cr, corner.x_mm, corner.y_mm);
  pango_cairo_show_layout (cr, layout);
  cairo_new_path (cr); /* showing a layout leaves a current point behind */
}

double
sq_draw_text (SqDrawing *drawing, SqPaperPoint at, const char *text, const SqType *type)
{
  g_autoptr (PangoLayout) layout = lay_out (drawing, text, type);
  SqPaperPoint corner = { left_mm (layout, type),
                          -(double)pango_layout_get_baseline (layout) / PANGO_SCALE };
  sq_draw_enter (drawing, at, type->turn_rad);
  if (drawing->svg != NULL)
    show_in_svg (drawing, corner, layout, type);
  else
    show (drawing, corner, layout, type);
  sq_draw_leave (drawing);
  return lines_mm (layout);
}

SqPaperBox
sq_text_box (SqDrawing *drawing, const char *text, const SqType *type)
{
  g_autoptr (PangoLayout) layout = lay_out (drawing, text, type);
  double width = width_mm (layout), set = set_width_mm (layout);
  double left = left_mm (layout, type) + (type->align == SQ_ALIGN_LEFT     ? 0.0
                                          : type->align == SQ_ALIGN_CENTRE ? (set - width) / 2
                                                                           : set - width);
  return (SqPaperBox){ left, -type->cap_mm, width,
                       type->cap_mm * (1.0 + DESCENT_PER_CAP) + lines_mm (layout) };
}

double
sq_text_width_mm (SqDrawing *drawing, const char *text, const SqType *type)
{
  g_autoptr (PangoLayout) layout = lay_out (drawing, text, type);
  return width_mm (layout);
}
