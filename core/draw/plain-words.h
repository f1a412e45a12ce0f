/* plain-words.h: text with nothing in it that a file of some kind could not hold */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* sq_plain_words:
 * @text: any bytes
 *
 * Returns: (transfer full): valid UTF-8, with U+FFFD for control characters and noncharacters
 * (Unicode, 23.1 and 23.7), which PDF and XML refuse; tabs and breaks stay */
char *sq_plain_words (const char *text);

G_END_DECLS
