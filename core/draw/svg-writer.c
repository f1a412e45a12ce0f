/* svg-writer.c: a page as SVG: the elements, and the groups they stand in */
#include "draw/svg-writer.h"

#include "draw/svg-private.h"

#include <math.h>

/* cairo keeps a path in 256ths of its unit: with units finer than the millimetre the file is right
 * to its last digit, and a hundred metres of paper still fit. */
#define UNITS_PER_MM 32.0
#define TOLERANCE_MM 0.02 /* of arcs against circles: finer than any printer's dot */

struct SqSvg {
  double width_mm, height_mm;
  cairo_t *cairo;
  GString *body, *definitions;
  guint n_clips, n_fades;
  GPtrArray *groups;     /* char: what holds now, an attribute each, the outermost first */
  guint uses[SQ_LAYERS]; /* how many groups each layer has */
  SqLayer layer;
  gboolean layer_open;
  guint groups_open; /* within the layer's */
};

static const cairo_user_data_key_t svg_key;

SqSvg *
sq_svg_new (double width_mm, double height_mm)
{
  SqSvg *svg = g_new0 (SqSvg, 1);
  cairo_surface_t *nothing = cairo_image_surface_create (CAIRO_FORMAT_A8, 1, 1);
  svg->width_mm = width_mm;
  svg->height_mm = height_mm;
  svg->cairo = cairo_create (nothing);
  cairo_surface_destroy (nothing);
  cairo_scale (svg->cairo, UNITS_PER_MM, UNITS_PER_MM);
  cairo_set_tolerance (svg->cairo, TOLERANCE_MM * UNITS_PER_MM);
  cairo_set_user_data (svg->cairo, &svg_key, svg, NULL);
  svg->body = g_string_new (NULL);
  svg->definitions = g_string_new (NULL);
  svg->groups = g_ptr_array_new_with_free_func (g_free);
  svg->layer = SQ_LAYER_SHEET;
  return svg;
}

void
sq_svg_free (SqSvg *svg)
{
  if (svg == NULL)
    return;
  cairo_destroy (svg->cairo);
  g_string_free (svg->body, TRUE);
  g_string_free (svg->definitions, TRUE);
  g_ptr_array_unref (svg->groups);
  g_free (svg);
}

cairo_t *
sq_svg_cairo (SqSvg *svg)
{
  return svg->cairo;
}

SqSvg *
sq_svg_of (cairo_t *cairo)
{
  return cairo_get_user_data (cairo, &svg_key);
}

static void
close_groups (SqSvg *svg, guint keep)
{
  for (; svg->groups_open > keep; svg->groups_open--)
    g_string_append (svg->body, "</g>\n");
}

static void
close_layer (SqSvg *svg)
{
  close_groups (svg, 0);
  if (svg->layer_open)
    g_string_append (svg->body, "</g>\n");
  svg->layer_open = FALSE;
}

void
sq_svg_layer (SqSvg *svg, SqLayer layer)
{
  if (layer != svg->layer)
    close_layer (svg);
  svg->layer = layer;
}

GString *
sq_svg_open (SqSvg *svg)
{
  if (!svg->layer_open) {
    guint use = ++svg->uses[svg->layer];
    g_string_append_printf (svg->body, "<g id=\"%s", sq_layer_id (svg->layer));
    if (use > 1)
      g_string_append_printf (svg->body, "-%u", use);
    g_string_append (svg->body, "\">\n<title>");
    sq_svg_put_words (svg->body, sq_layer_title (svg->layer));
    g_string_append (svg->body, "</title>\n");
    svg->layer_open = TRUE;
  }
  for (; svg->groups_open < svg->groups->len; svg->groups_open++)
    g_string_append_printf (svg->body, "<g %s>\n",
                            (const char *)g_ptr_array_index (svg->groups, svg->groups_open));
  return svg->body;
}

cairo_matrix_t
sq_svg_page_matrix (const SqSvg *svg)
{
  cairo_matrix_t matrix, finer;
  cairo_get_matrix (svg->cairo, &matrix);
  cairo_matrix_init_scale (&finer, 1.0 / UNITS_PER_MM, 1.0 / UNITS_PER_MM);
  cairo_matrix_multiply (&matrix, &matrix, &finer);
  return matrix;
}

double
sq_svg_page_scale (const cairo_matrix_t *matrix)
{
  return sqrt (fabs (matrix->xx * matrix->yy - matrix->xy * matrix->yx));
}

static void
put_points (GString *to, const cairo_matrix_t *matrix, char command, const cairo_path_data_t *data)
{
  g_string_append_c (to, command);
  for (int k = 1; k < data->header.length; k++) {
    double x_mm = data[k].point.x, y_mm = data[k].point.y;
    cairo_matrix_transform_point (matrix, &x_mm, &y_mm);
    if (k > 1)
      g_string_append_c (to, ' ');
    sq_svg_put_number (to, x_mm);
    g_string_append_c (to, ' ');
    sq_svg_put_number (to, y_mm);
  }
}

/* Takes the current path as the text of a `d` attribute. Returns: (transfer full): NULL for a path
 * that goes nowhere */
static char *
take_path (SqSvg *svg)
{
  cairo_path_t *path = cairo_copy_path (svg->cairo);
  cairo_matrix_t matrix = sq_svg_page_matrix (svg);
  const cairo_path_data_t *move = NULL; /* written when something follows it */
  GString *text = g_string_new (NULL);

  for (int k = 0; k < path->num_data; k += path->data[k].header.length) {
    const cairo_path_data_t *data = &path->data[k];
    if (data->header.type == CAIRO_PATH_MOVE_TO) {
      move = data;
      continue;
    }
    if (move != NULL)
      put_points (text, &matrix, 'M', move);
    move = NULL;
    if (data->header.type == CAIRO_PATH_CLOSE_PATH)
      g_string_append_c (text, 'Z');
    else
      put_points (text, &matrix, data->header.type == CAIRO_PATH_LINE_TO ? 'L' : 'C', data);
  }
  cairo_path_destroy (path);
  cairo_new_path (svg->cairo);
  return g_string_free (text, text->len == 0);
}

static void
put_fill_rule (SqSvg *svg, GString *to, const char *attribute)
{
  if (cairo_get_fill_rule (svg->cairo) == CAIRO_FILL_RULE_EVEN_ODD)
    g_string_append_printf (to, " %s=\"evenodd\"", attribute);
}

static void
put_pen (SqSvg *svg, double width_mm, const double *dash_mm, int n_dashes)
{
  static const char *const caps[] = { NULL, "round", "square" };
  static const char *const joins[] = { NULL, "round", "bevel" };
  const char *cap = caps[cairo_get_line_cap (svg->cairo)];
  const char *join = joins[cairo_get_line_join (svg->cairo)];
  cairo_matrix_t matrix = sq_svg_page_matrix (svg);
  double scale = sq_svg_page_scale (&matrix);

  sq_svg_put_value (svg->body, "stroke-width", width_mm * scale);
  for (int k = 0; k < n_dashes; k++) {
    g_string_append (svg->body, k == 0 ? " stroke-dasharray=\"" : " ");
    sq_svg_put_number (svg->body, dash_mm[k] * scale);
  }
  if (n_dashes > 0)
    g_string_append_c (svg->body, '"');
  if (cap != NULL)
    g_string_append_printf (svg->body, " stroke-linecap=\"%s\"", cap);
  if (join != NULL)
    g_string_append_printf (svg->body, " stroke-linejoin=\"%s\"", join);
}

void
sq_svg_stroke (SqSvg *svg, double width_mm, SqColour colour, const double *dash_mm, int n_dashes)
{
  g_autofree char *path = take_path (svg);
  if (path == NULL || width_mm <= 0.0)
    return;
  sq_svg_open (svg);
  g_string_append_printf (svg->body, "<path d=\"%s\" fill=\"none\"", path);
  sq_svg_put_colour (svg->body, "stroke", colour, 1.0);
  put_pen (svg, width_mm, dash_mm, n_dashes);
  g_string_append (svg->body, "/>\n");
}

void
sq_svg_fill (SqSvg *svg, SqColour colour, double alpha)
{
  g_autofree char *path = take_path (svg);
  if (path == NULL)
    return;
  sq_svg_open (svg);
  g_string_append_printf (svg->body, "<path d=\"%s\"", path);
  sq_svg_put_colour (svg->body, "fill", colour, alpha);
  put_fill_rule (svg, svg->body, "fill-rule");
  g_string_append (svg->body, "/>\n");
}

static void
put_stop (GString *to, double offset, SqColour colour, double alpha)
{
  g_string_append (to, "<stop");
  sq_svg_put_value (to, "offset", offset);
  sq_svg_put_colour (to, "stop-color", colour, 1.0);
  sq_svg_put_value (to, "stop-opacity", alpha);
  g_string_append (to, "/>");
}

void
sq_svg_fade (SqSvg *svg,
             SqColour colour,
             SqPaperPoint from,
             double from_alpha,
             SqPaperPoint to,
             double to_alpha)
{
  cairo_matrix_t matrix = sq_svg_page_matrix (svg);
  g_autofree char *path = take_path (svg);
  if (path == NULL)
    return;
  cairo_matrix_transform_point (&matrix, &from.x_mm, &from.y_mm);
  cairo_matrix_transform_point (&matrix, &to.x_mm, &to.y_mm);
  g_string_append_printf (svg->definitions,
                          "<linearGradient id=\"fade-%u\" gradientUnits=\"userSpaceOnUse\"",
                          ++svg->n_fades);
  sq_svg_put_value (svg->definitions, "x1", from.x_mm);
  sq_svg_put_value (svg->definitions, "y1", from.y_mm);
  sq_svg_put_value (svg->definitions, "x2", to.x_mm);
  sq_svg_put_value (svg->definitions, "y2", to.y_mm);
  g_string_append_c (svg->definitions, '>');
  put_stop (svg->definitions, 0.0, colour, from_alpha);
  put_stop (svg->definitions, 1.0, colour, to_alpha);
  g_string_append (svg->definitions, "</linearGradient>\n");

  sq_svg_open (svg);
  g_string_append_printf (svg->body, "<path d=\"%s\" fill=\"url(#fade-%u)\"", path, svg->n_fades);
  put_fill_rule (svg, svg->body, "fill-rule");
  g_string_append (svg->body, "/>\n");
}

void
sq_svg_clip (SqSvg *svg)
{
  g_autofree char *path = take_path (svg);
  guint number = ++svg->n_clips;
  g_string_append_printf (svg->definitions, "<clipPath id=\"clip-%u\"><path d=\"%s\"", number,
                          path != NULL ? path : "");
  put_fill_rule (svg, svg->definitions, "clip-rule");
  g_string_append (svg->definitions, "/></clipPath>\n");
  g_ptr_array_add (svg->groups, g_strdup_printf ("clip-path=\"url(#clip-%u)\"", number));
}

void
sq_svg_pale (SqSvg *svg, double alpha)
{
  GString *opacity = g_string_new ("opacity=\"");
  sq_svg_put_number (opacity, alpha);
  g_string_append_c (opacity, '"');
  g_ptr_array_add (svg->groups, g_string_free (opacity, FALSE));
}

void
sq_svg_leave (SqSvg *svg)
{
  g_return_if_fail (svg->groups->len > 0);
  g_ptr_array_set_size (svg->groups, (int)svg->groups->len - 1);
  close_groups (svg, MIN (svg->groups_open, svg->groups->len));
}

char *
sq_svg_end (SqSvg *svg, const char *title, const char *about, gsize *length)
{
  GString *file = g_string_new ("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
                                "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\"");
  g_string_append (file, " width=\"");
  sq_svg_put_number (file, svg->width_mm);
  g_string_append (file, "mm\" height=\"");
  sq_svg_put_number (file, svg->height_mm);
  g_string_append (file, "mm\" viewBox=\"0 0 ");
  sq_svg_put_number (file, svg->width_mm);
  g_string_append_c (file, ' ');
  sq_svg_put_number (file, svg->height_mm);
  g_string_append (file, "\"\n font-family=\"Inter, sans-serif\" stroke-miterlimit=\"10\""
                         " xml:space=\"preserve\"\n"
                         " style=\"font-variant-numeric: tabular-nums\">\n"
                         "<title>");
  sq_svg_put_words (file, title);
  g_string_append (file, "</title>\n<desc>");
  sq_svg_put_words (file, about);
  g_string_append (file, "</desc>\n");
  if (svg->definitions->len > 0)
    g_string_append_printf (file, "<defs>\n%s</defs>\n", svg->definitions->str);
  close_layer (svg);
  g_string_append_len (file, svg->body->str, (gssize)svg->body->len);
  g_string_append (file, "</svg>\n");
  *length = file->len;
  return g_string_free (file, FALSE);
}
