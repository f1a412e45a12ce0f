/* figure-text.c: stops and ratios as every page, table and panel writes them */
#include "base/figure-text.h"

#include "base/quantity.h"

#include <math.h>
#include <string.h>

#define DASH "–"
#define MINUS "\u2212"
#define NO_BREAK_SPACE "\u00a0"

char *
sq_stops_text (double stops, gboolean signed_up)
{
  if (!isfinite (stops))
    return g_strdup (DASH);
  g_autofree char *text = sq_quantity_format (stops, SQ_STOPS, SQ_METRIC);
  char *unit = strstr (text, NO_BREAK_SPACE);
  if (unit != NULL)
    *unit = '\0';
  gboolean plain =
    g_str_has_prefix (text, MINUS) || g_str_has_prefix (text, "+") || g_str_equal (text, "0");
  return signed_up && !plain ? g_strconcat ("+", text, NULL) : g_steal_pointer (&text);
}

char *
sq_ratio_text (double ratio)
{
  if (!isfinite (ratio))
    return g_strdup (DASH);
  char digits[G_ASCII_DTOSTR_BUF_SIZE];
  g_ascii_formatd (digits, sizeof digits, ratio < 9.95 ? "%.1f" : "%.0f", ratio);
  return g_strconcat (digits, " : 1", NULL);
}

char *
sq_stops_in_words (double stops)
{
  g_autofree char *text = sq_quantity_format (stops, SQ_STOPS, SQ_METRIC);
  /* What rounds to 0 has no sign; the minus is in the text already. */
  gboolean plus = isfinite (stops) && stops > 0.0 && text[0] != '0';
  return g_strconcat (plus ? "+" : "", text, NULL);
}
