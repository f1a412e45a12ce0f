/* format-reference.h: the page that says what may stand in a scene file */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* sq_format_reference:
 * Written from the tables of fields alone, so that it cannot say anything but what the reader does:
 * the conventions, then one section for each kind in the order in which a scene file meets them,
 * and the library's stands.
 *
 * Returns: (transfer full): Markdown, UTF-8, ending in a line feed */
char *sq_format_reference (void);

G_END_DECLS
