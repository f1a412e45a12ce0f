/* ink.c: the inks and role lines, as tables
 *
 * Role hues: Okabe and Ito, Color Universal Design (2008). On dark ground the same hues, their
 * OKLab lightness raised until they stand 4.5 : 1 on #1B1E22. */
#include "draw/ink.h"

#include "draw/ramp.h"

#include <glib/gi18n-lib.h>

/* clang-format off */
#define HEX(rgb) { ((rgb) >> 16 & 0xff) / 255.0, ((rgb) >> 8 & 0xff) / 255.0, ((rgb) & 0xff) / 255.0 }

static const struct { SqColour paper, light, dark; } inks[SQ_INKS] = {
  [SQ_INK]   = { HEX (0x15171A), HEX (0x15171A), HEX (0xECEEF0) },
  [SQ_MID]   = { HEX (0x555B63), HEX (0x555B63), HEX (0xA2A8B0) },
  [SQ_SOFT]  = { HEX (0x8A9099), HEX (0x8A9099), HEX (0x6C737C) },
  [SQ_HAIR]  = { HEX (0xB4BAC1), HEX (0xB4BAC1), HEX (0x4A5058) },
  [SQ_POCHE] = { HEX (0xCDD1D6), HEX (0xCDD1D6), HEX (0x3A3F46) },
  [SQ_BODY]  = { HEX (0xDDE0E4), HEX (0xDDE0E4), HEX (0x32373E) },
  [SQ_FURN]  = { HEX (0xEEF0F2), HEX (0xEEF0F2), HEX (0x24282D) },
  [SQ_SHADE] = { HEX (0x141719), HEX (0x141719), HEX (0x000000) },
  [SQ_PAPER] = { HEX (0xFFFFFF), HEX (0xF7F8F9), HEX (0x1B1E22) },
};

const SqRoleLine sq_role_lines[SQ_ROLE_LINES] = {
  [SQ_ROLE_KEY]        = { N_ ("KEY"),   HEX (0xD55E00), HEX (0xDC6411), { 0 }, 0 },
  [SQ_ROLE_FILL]       = { N_ ("FILL"),  HEX (0x0072B2), HEX (0x308ED0), { 4, 1.2 }, 2 },
  [SQ_ROLE_BACK]       = { N_ ("BACK"),  HEX (0x009E73), HEX (0x009E73), { 5, 1, 0.6, 1 }, 4 },
  [SQ_ROLE_SIDE]       = { N_ ("SIDE"),  HEX (0xCC79A7), HEX (0xCC79A7), { 2.2, 1 }, 2 },
  [SQ_ROLE_TOP]        = { N_ ("TOP"),   HEX (0xCC79A7), HEX (0xCC79A7), { 0.9, 0.9 }, 2 },
  [SQ_ROLE_UNDER]      = { N_ ("UNDER"), HEX (0xCC79A7), HEX (0xCC79A7), { 2.2, 0.8, 0.5, 0.8 }, 4 },
  [SQ_ROLE_BACKGROUND] = { N_ ("BG"),    HEX (0x555B63), HEX (0x80868F), { 5, 1, 0.6, 1, 0.6, 1 }, 6 },
  [SQ_ROLE_PRACTICAL]  = { N_ ("PRAC"),  HEX (0xE69F00), HEX (0xE69F00), { 0.5, 1.1 }, 2 },
  [SQ_ROLE_EFFECT]     = { N_ ("FX"),    HEX (0x15171A), HEX (0xECEEF0), { 0.6, 0.6, 0.6, 2.4 }, 4 },
  [SQ_LINE_DAYLIGHT]   = { N_ ("DAY"),   HEX (0x56B4E9), HEX (0x56B4E9), { 7, 1.4 }, 2 },
};
/* clang-format on */

SqColour
sq_colour_hex (guint rgb)
{
  return (SqColour)HEX (rgb);
}

static SqColour
ink_on (SqGround ground, SqInk ink)
{
  switch (ground) {
  case SQ_GROUND_LIGHT:
    return inks[ink].light;
  case SQ_GROUND_DARK:
    return inks[ink].dark;
  case SQ_GROUND_PAPER:
  default:
    return inks[ink].paper;
  }
}

SqColour
sq_ink (const SqView *view, SqInk ink)
{
  SqColour colour = ink_on (view->ground, ink);
  return view->mono ? sq_colour_grey (colour) : colour;
}

SqColour
sq_role_colour (const SqView *view, int role_line)
{
  if (view->mono)
    return sq_ink (view, SQ_INK);
  const SqRoleLine *line = &sq_role_lines[role_line];
  return view->ground == SQ_GROUND_DARK ? line->on_dark : line->on_light;
}
