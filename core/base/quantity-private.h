/* quantity-private.h: what the quantity-*.c files share: units, numbers in text, terms */
#pragma once

#include "base/quantity.h"

G_BEGIN_DECLS

/* Units */

typedef struct {
  const char *name;
  SqDimension measures; /* SQ_LENGTH for all lengths */
  double times, over;   /* a number in this unit × times / over is in the unit of files */
  char joins;           /* units of one letter may follow each other: 6 ft 6 in */
} SqUnitRow;

/* What the dimension is called, with its article, and how it can be written; both translated */
const char *sq_dimension_noun (SqDimension dimension);
const char *sq_dimension_examples (SqDimension dimension);

/* The word for a number of stops, translated */
const char *sq_stops_word (gulong count);

/* Finds the longest unit that @text starts with; of two that look the same (' is a foot and a
 * minute of arc) the one for @wanted. @length is set to the bytes it takes. NULL if none */
const SqUnitRow *sq_unit_match (const char *text, SqDimension wanted, gsize *length);

const SqUnitRow *sq_unit_inch (void);

/* The unit that a dimension is shown in and that a bare number takes; NULL for none */
const SqUnitRow *sq_unit_shown (SqDimension dimension, SqUnits units);

/* From a unit to the unit of files of a dimension and back; @unit may be NULL. Written so that
 * 57 cm is the double nearest to 0.57, and 35 mm is 35 where millimetres are wanted. */
double sq_unit_to_file (const SqUnitRow *unit, double number, SqDimension dimension);
double sq_unit_from_file (const SqUnitRow *unit, double value, SqDimension dimension);

/* Numbers in text, which must be UTF-8 */

/* Returns: the first of @text that is no space, among them the no-break and thin ones */
const char *sq_skip_spaces (const char *text);

/* Whether a decimal or the glyph of a fraction stands there */
gboolean sq_number_starts (const char *text);

/* Reads a number there and sets @text behind it. @fractions: whether fractions may stand for it or
 * follow it. @wrong is set, to one line, if it can be read in two ways or is too large; then 0 */
double sq_number_read (const char **text, gboolean fractions, char **wrong);

/* Terms of arithmetic */

/* What a term measures: an SqDimension (SQ_PLAIN: a ratio of two measures; SQ_LENGTH for all
 * lengths), or SQ_BARE, a number as typed that may still take a unit. */
#define SQ_BARE SQ_DIMENSIONS

typedef struct {
  double value; /* in the unit of files */
  SqDimension kind;
  const SqUnitRow *unit; /* of a term typed as one number and one unit, else NULL */
  double number;         /* that number */
} SqTerm;

/* What is to be read, and so what bare numbers are. Lengths are in the unit of @wanted. */
typedef struct {
  SqDimension wanted;
  SqUnits units;
} SqReading;

/* SQ_LENGTH for SQ_MILLIMETRES, all others as they are */
SqDimension sq_dimension_kind (SqDimension dimension);

gboolean sq_kind_counts_light (SqDimension kind);
const char *sq_kind_noun (SqDimension kind);

/* Keeps the first thing wrong. Returns: a term without meaning */
SqTerm sq_term_fail (char **wrong, const char *format, ...) G_GNUC_PRINTF (2, 3);

SqTerm sq_term_with_unit (const SqReading *reading, double number, const SqUnitRow *unit);
SqTerm sq_term_in_shown_unit (const SqReading *reading, SqTerm bare, SqDimension kind);

/* @sign: 1 or -1 */
SqTerm sq_term_add (const SqReading *reading, SqTerm a, SqTerm b, double sign, char **wrong);
SqTerm sq_term_multiply (SqTerm a, SqTerm b, char **wrong);
SqTerm sq_term_divide (const SqReading *reading, SqTerm a, SqTerm b, char **wrong);

/* What a whole text came to, in the unit of files of what is wanted. @signed_text: whether it began
 * with a sign; @now: NULL, or where a change by stops starts from */
SqTerm sq_term_conclude (
  const SqReading *reading, SqTerm term, gboolean signed_text, const SqTerm *now, char **wrong);

G_END_DECLS
