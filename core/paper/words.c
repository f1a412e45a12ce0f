/* words.c: figures as the pages write them, in every locale alike */
#include "paper/words.h"

#define NO_BREAK_SPACE "\xc2\xa0"

char *
sq_fine_length_text (double length_m, SqUnits units)
{
  char digits[G_ASCII_DTOSTR_BUF_SIZE];
  double value = units == SQ_IMPERIAL ? length_m * 1000.0 / SQ_INCH_MM : length_m * 1000.0;
  g_ascii_formatd (digits, sizeof digits, value < 9.95 ? "%.1f" : "%.0f", value);
  return g_strconcat (digits, NO_BREAK_SPACE, units == SQ_IMPERIAL ? "in" : "mm", NULL);
}

char *
sq_letter_text (guint n)
{
  static const char letters[] = "ABCDEFGHJKLMNPQRSTUVWXYZ";
  const guint count = sizeof letters - 1;
  if (n < count)
    return g_strdup_printf ("%c", letters[n]);
  return g_strdup_printf ("%c%c", letters[(n / count - 1) % count], letters[n % count]);
}

const char *
sq_said (const char *text)
{
  return text != NULL ? text : "";
}
