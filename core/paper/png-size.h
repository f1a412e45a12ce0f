/* png-size.h: how large a PNG picture is on paper */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* sq_png_set_size:
 * @png: a whole PNG file without a pHYs chunk
 * @dpi: pixels per inch, both ways
 *
 * Adds the chunk (PNG specification, 2nd edition, section 11.3.5.3) behind the header. */
void sq_png_set_size (GByteArray *png, double dpi);

/* CRC-32 of PNG chunks, by the specification's annex D. */
guint32 sq_png_crc (const guint8 *data, gsize length);

G_END_DECLS
