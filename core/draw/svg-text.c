/* svg-text.c: the lines of a Pango layout as SVG text that can be marked and searched */
#include "draw/svg-private.h"

#define NORMAL_WEIGHT 400
#define LEAST_TURN_DEG 0.001

/* A line is written in one piece, but for what stands beyond a number: not every viewer has figures
 * of one width, and what follows one that is set too narrow should not drift. */
typedef struct {
  int from, to; /* bytes of the layout's text */
  double at_mm; /* from the layout's left edge: where the anchor is */
} Stretch;

typedef struct {
  PangoLayout *layout;
  PangoLayoutLine *line;
  double left_mm, width_mm, baseline_mm; /* in the layout */
  SqSvgAnchor anchor;
  gboolean right_to_left;
} Line;

/* Within a set width Pango sends lines that run from right to left to the other side. */
static SqSvgAnchor
side_of (PangoLayout *layout, SqSvgAnchor anchor, gboolean right_to_left)
{
  if (!right_to_left || anchor == SQ_SVG_MIDDLE || pango_layout_get_width (layout) < 0)
    return anchor;
  return anchor == SQ_SVG_LEFT ? SQ_SVG_RIGHT : SQ_SVG_LEFT;
}

static Line
line_at (PangoLayoutIter *iter, SqSvgAnchor anchor)
{
  PangoLayout *layout = pango_layout_iter_get_layout (iter);
  PangoLayoutLine *line = pango_layout_iter_get_line_readonly (iter);
  gboolean right_to_left = pango_layout_line_get_resolved_direction (line) == PANGO_DIRECTION_RTL;
  PangoRectangle box;
  pango_layout_iter_get_line_extents (iter, NULL, &box);
  return (Line){
    .layout = layout,
    .line = line,
    .left_mm = (double)box.x / PANGO_SCALE,
    .width_mm = (double)box.width / PANGO_SCALE,
    .baseline_mm = (double)pango_layout_iter_get_baseline (iter) / PANGO_SCALE,
    .anchor = side_of (layout, anchor, right_to_left),
    .right_to_left = right_to_left,
  };
}

/* Whether what is shown is what is written, from left to right. */
static gboolean
is_plain (const Line *line)
{
  const guint odd = PANGO_ANALYSIS_FLAG_IS_ELLIPSIS | PANGO_ANALYSIS_FLAG_NEED_HYPHEN;
  for (const GSList *at = line->line->runs; at != NULL; at = at->next) {
    const PangoAnalysis *analysis = &((const PangoGlyphItem *)at->data)->item->analysis;
    if (analysis->level != 0 || (analysis->flags & odd) != 0)
      return FALSE;
  }
  return TRUE;
}

static int
by_offset (gconstpointer a, gconstpointer b)
{
  const PangoGlyphItem *one = a, *other = b;
  return one->item->offset - other->item->offset;
}

/* What @line shows, in the order in which it is read: runs stand in the order of their places. */
static char *
text_shown (const Line *line)
{
  const char *text = pango_layout_get_text (line->layout);
  GSList *runs = g_slist_sort (g_slist_copy (line->line->runs), by_offset);
  GString *shown = g_string_new (NULL);

  for (const GSList *at = runs; at != NULL; at = at->next) {
    const PangoItem *item = ((const PangoGlyphItem *)at->data)->item;
    if (item->analysis.flags & PANGO_ANALYSIS_FLAG_IS_ELLIPSIS)
      g_string_append (shown, "\u2026");
    else
      g_string_append_len (shown, text + item->offset, item->length);
    if (item->analysis.flags & PANGO_ANALYSIS_FLAG_NEED_HYPHEN)
      g_string_append_c (shown, '-');
  }
  g_slist_free (runs);
  return g_strchomp (g_string_free (shown, FALSE));
}

static double
along_mm (const Line *line, int byte)
{
  int x;
  pango_layout_line_index_to_x (line->line, byte, FALSE, &x);
  return line->left_mm + (double)x / PANGO_SCALE;
}

static gboolean
has_figure (const char *text, int from, int to)
{
  while (from < to && !g_ascii_isdigit (text[from]))
    from++;
  return from < to;
}

/* The first place from @from on that is a blank, or is none. */
static int
skip (const char *text, int from, int to, gboolean blanks)
{
  while (from < to && g_unichar_isspace (g_utf8_get_char (text + from)) == blanks)
    from = (int)(g_utf8_next_char (text + from) - text);
  return from;
}

/* Stretches that are anchored at their left end are parted behind a number, those at their right
 * end before it: so the number's error goes where nothing follows. */
static GArray *
part_line (const Line *line)
{
  const char *text = pango_layout_get_text (line->layout);
  gboolean at_right = line->anchor == SQ_SVG_RIGHT;
  int from = line->line->start_index, to = from + line->line->length;
  GArray *stretches = g_array_new (FALSE, FALSE, sizeof (Stretch));
  Stretch stretch = { .from = from };

  for (int word = skip (text, from, to, TRUE), next; word < to; word = next) {
    int end = skip (text, word, to, FALSE);
    next = skip (text, end, to, TRUE);
    gboolean parts = at_right ? has_figure (text, next, skip (text, next, to, FALSE))
                              : has_figure (text, word, end);
    if (next < to && !parts)
      continue;
    stretch.to = at_right || next == to ? end : next;
    stretch.at_mm = along_mm (line, at_right ? stretch.to : stretch.from);
    g_array_append_val (stretches, stretch);
    stretch.from = stretch.to;
  }
  return stretches;
}

static void
put_type (GString *to, const SqSvgType *type, double scale)
{
  sq_svg_put_value (to, "font-size", type->size_mm * scale);
  if (type->weight != NORMAL_WEIGHT)
    g_string_append_printf (to, " font-weight=\"%d\"", type->weight);
  if (type->tracking_mm != 0.0)
    sq_svg_put_value (to, "letter-spacing", type->tracking_mm * scale);
  sq_svg_put_colour (to, "fill", type->colour, 1.0);
  if (type->halo_mm > 0.0) {
    sq_svg_put_colour (to, "stroke", type->halo_colour, type->halo_alpha);
    sq_svg_put_value (to, "stroke-width", type->halo_mm * scale);
    g_string_append (to, " stroke-linejoin=\"round\" paint-order=\"stroke\"");
  }
}

static void
put_turn (GString *to, double turn_deg, SqPaperPoint about)
{
  const double numbers[] = { turn_deg, about.x_mm, about.y_mm };
  if (fabs (turn_deg) < LEAST_TURN_DEG)
    return;
  for (guint k = 0; k < G_N_ELEMENTS (numbers); k++) {
    g_string_append (to, k == 0 ? " transform=\"rotate(" : " ");
    sq_svg_put_number (to, numbers[k]);
  }
  g_string_append (to, ")\"");
}

static void
put_anchor (GString *to, SqSvgAnchor anchor, gboolean right_to_left)
{
  SqSvgAnchor start = right_to_left ? SQ_SVG_RIGHT : SQ_SVG_LEFT;
  if (anchor == SQ_SVG_MIDDLE)
    g_string_append (to, " text-anchor=\"middle\"");
  else if (anchor != start)
    g_string_append (to, " text-anchor=\"end\"");
  if (right_to_left)
    g_string_append (to, " direction=\"rtl\"");
}

/* Writes the tag of a text whose anchor is @along_mm from @corner. Returns: where that is */
static SqPaperPoint
put_tag (SqSvg *svg, SqPaperPoint corner, const Line *line, double along, const SqSvgType *type)
{
  cairo_matrix_t matrix = sq_svg_page_matrix (svg);
  SqPaperPoint at = { corner.x_mm + along, corner.y_mm + line->baseline_mm };
  GString *to = sq_svg_open (svg);

  cairo_matrix_transform_point (&matrix, &at.x_mm, &at.y_mm);
  g_string_append (to, "<text");
  sq_svg_put_value (to, "x", at.x_mm);
  sq_svg_put_value (to, "y", at.y_mm);
  put_type (to, type, sq_svg_page_scale (&matrix));
  put_anchor (to, line->anchor, line->right_to_left);
  put_turn (to, SQ_DEGREES (atan2 (matrix.yx, matrix.xx)), at);
  g_string_append_c (to, '>');
  return at;
}

static void
put_parted (
  SqSvg *svg, SqPaperPoint corner, const Line *line, const GArray *stretches, const SqSvgType *type)
{
  cairo_matrix_t matrix = sq_svg_page_matrix (svg);
  double scale = sq_svg_page_scale (&matrix);
  const Stretch *first = &g_array_index (stretches, Stretch, 0);
  SqPaperPoint at = put_tag (svg, corner, line, first->at_mm, type);
  GString *to = sq_svg_open (svg);

  for (guint k = 0; k < stretches->len; k++) {
    const Stretch *stretch = &g_array_index (stretches, Stretch, k);
    g_autofree char *text = g_strndup (pango_layout_get_text (line->layout) + stretch->from,
                                       (gsize)(stretch->to - stretch->from));
    if (k > 0) {
      g_string_append (to, "<tspan");
      sq_svg_put_value (to, "x", at.x_mm + scale * (stretch->at_mm - first->at_mm));
      g_string_append_c (to, '>');
    }
    sq_svg_put_words (to, text);
    if (k > 0)
      g_string_append (to, "</tspan>");
  }
  g_string_append (to, "</text>\n");
}

static void
put_whole (SqSvg *svg, SqPaperPoint corner, const Line *line, const SqSvgType *type)
{
  g_autofree char *text = text_shown (line);
  double share = line->anchor == SQ_SVG_LEFT ? 0.0 : line->anchor == SQ_SVG_MIDDLE ? 0.5 : 1.0;
  if (*text == '\0')
    return;
  put_tag (svg, corner, line, line->left_mm + share * line->width_mm, type);
  sq_svg_put_words (sq_svg_open (svg), text);
  g_string_append (sq_svg_open (svg), "</text>\n");
}

static void
put_line (SqSvg *svg, SqPaperPoint corner, Line *line, const SqSvgType *type)
{
  g_autoptr (GArray) stretches = is_plain (line) ? part_line (line) : NULL;
  if (stretches == NULL || stretches->len < 2) {
    put_whole (svg, corner, line, type);
    return;
  }
  if (line->anchor == SQ_SVG_MIDDLE)
    line->anchor = SQ_SVG_LEFT; /* each stretch stands where it starts */
  put_parted (svg, corner, line, stretches, type);
}

void
sq_svg_text (
  SqSvg *svg, SqPaperPoint corner, SqSvgAnchor anchor, PangoLayout *layout, const SqSvgType *type)
{
  PangoLayoutIter *iter = pango_layout_get_iter (layout);
  do {
    Line line = line_at (iter, anchor);
    put_line (svg, corner, &line, type);
  } while (pango_layout_iter_next_line (iter));
  pango_layout_iter_free (iter);
}
