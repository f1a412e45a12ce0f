/* svg-words.c: numbers, colours and words as an SVG file spells them */
#include "draw/plain-words.h"
#include "draw/svg-private.h"

#include <math.h>

#define DECIMALS 3
#define PER_UNIT 1000
#define MOST_MM 1e6

void
sq_svg_put_number (GString *to, double value)
{
  /* CLAMP() would let a NaN through. */
  double held = value > -MOST_MM ? (value < MOST_MM ? value : MOST_MM) : -MOST_MM;
  gint64 thousandths = (gint64)round (held * PER_UNIT);
  guint64 size = (guint64)ABS (thousandths);
  guint part = (guint)(size % PER_UNIT);
  int digits = DECIMALS;

  if (thousandths < 0)
    g_string_append_c (to, '-');
  g_string_append_printf (to, "%" G_GUINT64_FORMAT, size / PER_UNIT);
  if (part == 0)
    return;
  for (; part % 10 == 0; part /= 10)
    digits--;
  g_string_append_printf (to, ".%0*u", digits, part);
}

void
sq_svg_put_value (GString *to, const char *attribute, double value)
{
  g_string_append_printf (to, " %s=\"", attribute);
  sq_svg_put_number (to, value);
  g_string_append_c (to, '"');
}

void
sq_svg_put_colour (GString *to, const char *attribute, SqColour colour, double alpha)
{
  g_string_append_printf (to, " %s=\"#%02x%02x%02x\"", attribute, (guint)round (255.0 * colour.red),
                          (guint)round (255.0 * colour.green), (guint)round (255.0 * colour.blue));
  if (alpha < 1.0) {
    g_string_append_printf (to, " %s-opacity=\"", attribute);
    sq_svg_put_number (to, alpha);
    g_string_append_c (to, '"');
  }
}

static void
put_character (GString *to, gunichar c)
{
  if (c == '&')
    g_string_append (to, "&amp;");
  else if (c == '<')
    g_string_append (to, "&lt;");
  else if (c == '>')
    g_string_append (to, "&gt;");
  else if (c == '"')
    g_string_append (to, "&quot;");
  else if (c == '\t' || c == '\n' || c == '\r' || c == 0x2028 || c == 0x2029)
    g_string_append_c (to, ' ');
  else
    g_string_append_unichar (to, c);
}

void
sq_svg_put_words (GString *to, const char *text)
{
  g_autofree char *plain = sq_plain_words (text);
  for (const char *at = plain; *at != '\0'; at = g_utf8_next_char (at))
    put_character (to, g_utf8_get_char (at));
}
