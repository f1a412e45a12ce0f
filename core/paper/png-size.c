/* png-size.c: the chunk by which a PNG says how many pixels there are to the metre */
#include "paper/png-size.h"

#include "draw/view.h"

#include <math.h>
#include <string.h>

#define SIGNATURE_BYTES 8
#define HEADER_BYTES 25 /* IHDR: length, type, 13 bytes, CRC */
#define PHYS_BYTES 9

/* Bit by bit: a few bytes need no table. */
guint32
sq_png_crc (const guint8 *data, gsize length)
{
  guint32 crc = 0xFFFFFFFFu;
  for (gsize k = 0; k < length; k++) {
    crc ^= data[k];
    for (int bit = 0; bit < 8; bit++)
      crc = crc & 1 ? 0xEDB88320u ^ crc >> 1 : crc >> 1;
  }
  return crc ^ 0xFFFFFFFFu;
}

static void
put (guint8 *at, guint32 value)
{
  guint32 big = GUINT32_TO_BE (value);
  memcpy (at, &big, sizeof big);
}

void
sq_png_set_size (GByteArray *png, double dpi)
{
  guint8 chunk[4 + 4 + PHYS_BYTES + 4];
  guint32 per_metre = (guint32)round (dpi * 1000.0 / SQ_INCH_MM);
  put (chunk, PHYS_BYTES);
  memcpy (chunk + 4, "pHYs", 4);
  put (chunk + 8, per_metre);
  put (chunk + 12, per_metre);
  chunk[16] = 1; /* the unit is the metre */
  put (chunk + 17, sq_png_crc (chunk + 4, 4 + PHYS_BYTES));

  guint at = SIGNATURE_BYTES + HEADER_BYTES, tail = png->len - at;
  g_byte_array_set_size (png, png->len + sizeof chunk);
  memmove (png->data + at + sizeof chunk, png->data + at, tail);
  memcpy (png->data + at, chunk, sizeof chunk);
}
