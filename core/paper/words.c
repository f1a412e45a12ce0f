/* words.c: figures as the pages write them, in every locale alike */
#include "paper/words.h"

#include <math.h>
#include <string.h>

#define DASH "–"
#define NO_BREAK_SPACE "\xc2\xa0"

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
      g_str_has_prefix (text, "−") || g_str_has_prefix (text, "+") || g_str_equal (text, "0");
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
sq_fine_length_text (double length_m, SqUnits units)
{
  char digits[G_ASCII_DTOSTR_BUF_SIZE];
  double value = units == SQ_IMPERIAL ? length_m / 0.0254 : length_m * 1000.0;
  g_ascii_formatd (digits, sizeof digits, value < 9.95 ? "%.1f" : "%.0f", value);
  return g_strconcat (digits, NO_BREAK_SPACE, units == SQ_IMPERIAL ? "in" : "mm", NULL);
}

const char *
sq_said (const char *text)
{
  return text != NULL ? text : "";
}
