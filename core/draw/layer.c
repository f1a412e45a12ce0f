/* layer.c: what the layers of a drawing are called */
#include "draw/layer.h"

#include <glib/gi18n-lib.h>

/* clang-format off */
static const struct {
  const char *id, *title;
} layers[SQ_LAYERS] = {
  [SQ_LAYER_PAPER]      = { "paper",      N_ ("Paper") },
  [SQ_LAYER_OVERLAY]    = { "overlay",    N_ ("Light") },
  [SQ_LAYER_SET]        = { "set",        N_ ("Set") },
  [SQ_LAYER_THROWS]     = { "throws",     N_ ("Throws and beam edges") },
  [SQ_LAYER_SIGHT]      = { "sight",      N_ ("What the cameras see") },
  [SQ_LAYER_SHADOWS]    = { "shadows",    N_ ("Shadows") },
  [SQ_LAYER_GRIP]       = { "grip",       N_ ("Grip") },
  [SQ_LAYER_PEOPLE]     = { "people",     N_ ("People") },
  [SQ_LAYER_LAMPS]      = { "lamps",      N_ ("Lamps") },
  [SQ_LAYER_CAMERAS]    = { "cameras",    N_ ("Cameras") },
  [SQ_LAYER_POWER]      = { "power",      N_ ("Power") },
  [SQ_LAYER_DIMENSIONS] = { "dimensions", N_ ("Dimensions and probes") },
  [SQ_LAYER_LEADERS]    = { "leaders",    N_ ("Leaders") },
  [SQ_LAYER_LABELS]     = { "labels",     N_ ("Labels") },
  [SQ_LAYER_NOTES]      = { "notes",      N_ ("Notes") },
  [SQ_LAYER_TAGS]       = { "tags",       N_ ("Tags of the lamps") },
  [SQ_LAYER_READINGS]   = { "readings",   N_ ("Marks and their readings") },
  [SQ_LAYER_SHEET]      = { "sheet",      N_ ("Sheet") },
};
/* clang-format on */

const char *
sq_layer_id (SqLayer layer)
{
  return layers[layer].id;
}

const char *
sq_layer_title (SqLayer layer)
{
  return _ (layers[layer].title);
}
