/* scale.c: the usual drawing scales, metric and imperial */
#include "paper/scale.h"

#include "base/error.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define LEAST_DENOMINATOR 1.0
#define MOST_DENOMINATOR 10000.0

static const double metric[] = { 5, 10, 20, 25, 50, 100, 200, 500, 1000, 2000, 5000, 10000 };

static const struct {
  double denominator;
  const char *inches;
} imperial[] = {
  { 4, "3" },     { 12, "1" },   { 16, "3/4" },   { 24, "1/2" },   { 32, "3/8" },   { 48, "1/4" },
  { 64, "3/16" }, { 96, "1/8" }, { 128, "3/32" }, { 192, "1/16" }, { 384, "1/32" }, { 768, "1/64" },
};

static gboolean
parse_equation (const char *text, const char *equals, double *denominator)
{
  g_autofree char *left = g_strndup (text, equals - text);
  double paper_m, set_m;
  /* A bare number is in inches or feet nowhere: both sides must name their unit. */
  if (strpbrk (left, "\"'cmnft\xe2") == NULL || strpbrk (equals + 1, "\"'cmnft\xe2") == NULL)
    return FALSE;
  if (!sq_quantity_parse (left, SQ_LENGTH, SQ_IMPERIAL, NAN, &paper_m, NULL) ||
      !sq_quantity_parse (equals + 1, SQ_LENGTH, SQ_IMPERIAL, NAN, &set_m, NULL))
    return FALSE;
  *denominator = set_m / paper_m;
  return paper_m > 0.0;
}

static gboolean
parse_ratio (const char *text, const char *colon, double *denominator)
{
  g_autofree char *left = g_strndup (text, colon - text);
  double one;
  if (!sq_quantity_parse (left, SQ_PLAIN, SQ_METRIC, NAN, &one, NULL) || one != 1.0)
    return FALSE;
  return sq_quantity_parse (colon + 1, SQ_PLAIN, SQ_METRIC, NAN, denominator, NULL);
}

gboolean
sq_scale_parse (const char *text, double *denominator, GError **error)
{
  const char *equals = strchr (text, '='), *colon = strchr (text, ':');
  double found = NAN;
  gboolean understood = equals != NULL  ? parse_equation (text, equals, &found)
                        : colon != NULL ? parse_ratio (text, colon, &found)
                                        : FALSE;
  g_autofree char *shown = g_utf8_make_valid (text, MIN (strlen (text), 40));
  if (!understood) {
    g_set_error (error, SQ_ERROR, SQ_ERROR_USAGE,
                 _ ("scale: \"%s\" is no scale, expected such as 1:50 or 1/4\"=1'"), shown);
    return FALSE;
  }
  if (!(found >= LEAST_DENOMINATOR && found <= MOST_DENOMINATOR)) {
    g_set_error (error, SQ_ERROR, SQ_ERROR_USAGE, _ ("scale: %s is outside 1:1 to 1:10000"), shown);
    return FALSE;
  }
  /* 48.00000000000001 is 48 */
  *denominator = fabs (found - round (found)) < 1e-9 * found ? round (found) : found;
  return TRUE;
}

char *
sq_scale_format (double denominator, SqUnits units)
{
  if (units == SQ_IMPERIAL)
    for (guint k = 0; k < G_N_ELEMENTS (imperial); k++)
      if (imperial[k].denominator == denominator)
        return g_strdup_printf ("%s\" = 1'-0\"", imperial[k].inches);
  char digits[G_ASCII_DTOSTR_BUF_SIZE];
  g_ascii_formatd (digits, sizeof digits, "%.8g", denominator);
  return g_strdup_printf ("1:%s", digits);
}

double
sq_scale_usual (SqUnits units, guint n)
{
  if (units == SQ_IMPERIAL)
    return n < G_N_ELEMENTS (imperial) ? imperial[n].denominator : 0.0;
  return n < G_N_ELEMENTS (metric) ? metric[n] : 0.0;
}

gboolean
sq_scale_fits (double denominator,
               double width_m,
               double height_m,
               double field_width_mm,
               double field_height_mm)
{
  const double slack_mm = 0.01;
  return width_m * 1000.0 / denominator <= field_width_mm + slack_mm &&
         height_m * 1000.0 / denominator <= field_height_mm + slack_mm;
}

double
sq_scale_fit (
  SqUnits units, double width_m, double height_m, double field_width_mm, double field_height_mm)
{
  double denominator;
  for (guint n = 0; (denominator = sq_scale_usual (units, n)) > 0.0; n++)
    if (sq_scale_fits (denominator, width_m, height_m, field_width_mm, field_height_mm))
      return denominator;
  return 0.0;
}
