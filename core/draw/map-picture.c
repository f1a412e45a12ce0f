/* map-picture.c: a light map by itself as a picture */
#include "draw/map-picture.h"

#include "draw/ramp.h"

#define LEAST_PIXELS 800

static cairo_status_t
append (void *closure, const unsigned char *data, unsigned int length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

static guint32
pixel (const SqLightMap *map, double lux)
{
  SqColour colour = { 0.5, 0.5, 0.5 };
  if (!isnan (lux)) {
    /* Darkness is below every band. */
    double stops = lux > 0.0 ? log2 (lux / map->set_lux) : -1e9;
    gboolean as_stops = map->request.quantity == SQ_OVERLAY_STOPS;
    colour = sq_ramp_colour (SQ_GROUND_LIGHT, as_stops,
                             (int)floor (CLAMP (stops, SQ_FIRST_BAND, SQ_LAST_STOPS_BAND)));
  }
  return 0xff000000u | (guint32)lround (colour.red * 255) << 16 |
         (guint32)lround (colour.green * 255) << 8 | (guint32)lround (colour.blue * 255);
}

GBytes *
sq_map_picture_png (const SqLightMap *map)
{
  int side =
    MAX (1, (LEAST_PIXELS + MAX (map->columns, map->rows) - 1) / MAX (map->columns, map->rows));
  cairo_surface_t *surface =
    cairo_image_surface_create (CAIRO_FORMAT_RGB24, map->columns * side, map->rows * side);
  cairo_surface_flush (surface);
  unsigned char *data = cairo_image_surface_get_data (surface);
  int stride = cairo_image_surface_get_stride (surface);
  for (int y = 0; y < map->rows * side; y++) {
    guint32 *line = (guint32 *)(gpointer)(data + (gsize)y * (gsize)stride);
    gsize row = (gsize)(map->rows - 1 - y / side); /* the map begins at the bottom */
    for (int x = 0; x < map->columns * side; x++)
      line[x] = pixel (map, map->lux[row * (gsize)map->columns + (gsize)(x / side)]);
  }
  cairo_surface_mark_dirty (surface);
  GByteArray *png = g_byte_array_new ();
  cairo_surface_write_to_png_stream (surface, append, png);
  cairo_surface_destroy (surface);
  return g_byte_array_free_to_bytes (png);
}
