/* quantity.h: numbers with units as people write and read them, in both unit systems */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum {
  SQ_METRIC,
  SQ_IMPERIAL,
} SqUnits;

/* What a number measures. Files, structs and functions always use the unit in brackets. */
typedef enum {
  SQ_PLAIN,       /* a bare number */
  SQ_LENGTH,      /* m */
  SQ_MILLIMETRES, /* mm: focal lengths, gates, lamp faces on paper */
  SQ_SECTION,     /* mm²: conductors */
  SQ_ANGLE,       /* degrees */
  SQ_ILLUMINANCE, /* lx */
  SQ_LUMINANCE,   /* cd/m² */
  SQ_INTENSITY,   /* cd */
  SQ_FLUX,        /* lm */
  SQ_TEMPERATURE, /* K, of colour */
  SQ_CELSIUS,     /* °C, of conductors */
  SQ_MIRED,       /* mired shift */
  SQ_POWER,       /* W */
  SQ_VOLTAGE,     /* V */
  SQ_CURRENT,     /* A */
  SQ_FREQUENCY,   /* Hz */
  SQ_FRACTION,    /* 0 … 1, shown in per cent */
  SQ_STOPS,       /* log2 */
  SQ_MASS,        /* kg */
  SQ_HOURS,       /* h */
  SQ_FRAME_RATE,  /* frames per second */
  SQ_PER_METRE,   /* 1/m */
  SQ_T_STOP,      /* T-number */
  SQ_DIMENSIONS,  /* how many there are */
} SqDimension;

/* Returns: (transfer none): the unit in files, such as "m", "lx"; "" for SQ_PLAIN and SQ_FRACTION,
 * which have none; "T" for SQ_T_STOP, which is written before the number */
const char *sq_dimension_unit (SqDimension dimension);

/* What people type may be no longer than this, nor hold brackets deeper than this. */
#define SQ_QUANTITY_MOST_BYTES 256
#define SQ_QUANTITY_MOST_BRACKETS 32

/* sq_quantity_parse:
 * @text: as a person types it: `2.1`, `2.1 m`, `210cm`, `6'6"`, `6 ft 6 in`, `6' 6 1/2"`, `12 fc`,
 *   `3200K`, `50%`, `1/2 stop`, `½`, with + - * / and brackets between, in any locale: a comma is
 *   taken as a decimal comma where it can be nothing else
 * @dimension: what it must measure
 * @units: what a bare number means: m, lx, kg and 1/m, or ft, fc, lb and 1/ft
 * @now: the value it had, for relative forms; NAN if there is none
 * @value: (out): in the unit of files, finite, never -0; left alone on failure. Whether it makes
 *   sense (a level over 1, a negative mass) is for the caller to check.
 *
 * Relative to @now are:
 * - `x2`, `×2`, `*2`, `/2` at the start: now times or over that;
 * - `+=0.5 m`, `-=0.5 m`: now plus or minus that;
 * - `+1 stop`, `-1 stop`, signed, where light is counted (SQ_FRACTION, SQ_ILLUMINANCE,
 *   SQ_LUMINANCE, SQ_INTENSITY, SQ_FLUX): now times 2^n. `50 lx + 1 stop` is 100 lx.
 * Not relative is any other leading sign: `-2 m` is two metres below zero, and `+1 stop` for
 * SQ_STOPS is the value 1.
 *
 * - The case of letters does not matter; units may touch their number.
 * - A bare number takes the unit that @units shows, also in a sum beside one that has a unit: `2 m
 *   + 1` is 3 m in metric, and two metres and a foot in imperial. For SQ_FRACTION that unit is %,
 *   but a bare result up to 1 stands for itself: `75` is 0.75, `0.75` too, `1` is 1.
 * - A division of bare numbers before a unit is a fraction of it: `1/2 m` is half a metre.
 * - Parts of one measure may follow each other, large before small: `2 m 10 cm`, `52° 30'`. A last
 *   bare part after feet is in inches: `6'6`. A hyphen that touches both parts joins feet and
 *   inches as on drawings, `6'-6"`; with spaces, `6' - 6"` takes away.
 *   There is no such hyphen inside a number: `5-1/2"` takes half an inch away from five.
 * - A measure over one of its kind is a plain number, and no longer a length. Per cents multiply
 *   and divide anything.
 * - A comma is refused where it may group thousands: `1,250` could be two numbers; `0,125` and
 *   `2,1` could not.
 * - For SQ_T_STOP no fraction may follow the number: `T4½` would be read as 4.5 by some and as half
 *   a stop over T4 by others.
 * - `1:30` is an hour and a half, only for SQ_HOURS.
 *
 * Conversions: foot 0.3048 m and pound 0.45359237 kg, exactly (international yard and pound
 * agreement, 1959); so 1 fc = 1 lm/ft² = 1/0.3048² lx; 1 footlambert = 1/π cd/ft².
 *
 * Returns: FALSE and one line in @error that names the text and shows what would be understood:
 *   for all that is not understood, measures the wrong thing, divides by zero or is not finite;
 *   any bytes may be given */
gboolean sq_quantity_parse (const char *text,
                            SqDimension dimension,
                            SqUnits units,
                            double now,
                            double *value,
                            GError **error);

/* sq_quantity_format:
 * For people: `2.10 m` or `6'10¾"`, `127 lx` or `12 fc`, `−1½ stops`, `50 %`, `3200 K`. Minus is
 * U+2212, never before a zero; a no-break space stands before the unit (none before ° and after T);
 * the decimal mark is a point in every locale. sq_quantity_parse reads back all
 * that is finite.
 *
 * Rounded to what the trade reads; decimals to the nearest, a tie of the binary value to even:
 * - lengths: centimetres, two decimals always; or quarter inches, ties away from zero;
 * - light (lx, fc, cd/m², cd, lm): three figures, at most three decimals, whole from 100 up;
 *   per metre and per foot: three figures, at most five decimals;
 * - power: three figures, W below 1 kW, at most one decimal, then kW;
 * - stops: the nearest of 0, ⅓, ½, ⅔ and the next whole one, ties away from zero;
 * - T-stops: one decimal below 10, none above, two below 1; the few that are engraved lower than
 *   they are (T5.6 is 5.657) as engraved;
 * - per cents: whole from 10 up, below with one decimal; K, °C and mired: whole;
 * - V, A, kg, lb and degrees: one decimal; mm, mm², Hz and h: two; plain and fps: three.
 * Except in metres, zeros at the end of decimals are left out. From 1e15 up, all stand as 1.235e+20
 * (there without marks for feet, in ft). NAN is "–", infinities are "∞" and "−∞".
 *
 * Returns: (transfer full): UTF-8 */
char *sq_quantity_format (double value, SqDimension dimension, SqUnits units);

G_END_DECLS
