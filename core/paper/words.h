/* words.h: figures as the pages write them */
#pragma once

#include "draw/view.h"

G_BEGIN_DECLS

/* A small length: `50 mm`, `2 in`. Returns: (transfer full) */
char *sq_fine_length_text (double length_m, SqUnits units);

/* A, B, … Z, AA … for counting from 0; ISO 5457 leaves out I and O. Returns: (transfer full) */
char *sq_letter_text (guint n);

/* What is in @text, or nothing at all as ``. */
const char *sq_said (const char *text);

G_END_DECLS
