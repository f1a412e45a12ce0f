/* section-lit.c: whether a lamp sends any light toward somebody */
#include "draw/section-lit.h"

#include "draw/section-shadow.h"
#include "light/lamp.h"

enum { PLACES = 9 }; /* up the figure, from the foot to the crown */

static const SqLamp *
find_lamp (const GArray *lamps, const SqFixture *light)
{
  for (guint i = 0; i < lamps->len; i++)
    if (g_array_index (lamps, SqLamp, i).fixture == light)
      return &g_array_index (lamps, SqLamp, i);
  return NULL;
}

double
sq_section_toward_cd (const GArray *lamps, const SqFixture *light, const SqMark *mark)
{
  const SqLamp *lamp = find_lamp (lamps, light);
  double right[PLACES], up[PLACES], forward[PLACES], candela[PLACES], most = 0.0;
  if (lamp == NULL || lamp->output <= 0.0 || lamp->shaped == SQ_SHAPED_NOT)
    return 0.0;
  for (int i = 0; i < PLACES; i++) {
    double height = mark->floor_m + sq_mark_crown_height_m (mark) * i / (PLACES - 1);
    SqVector way =
      sq_vector_unit (sq_vector_between (light->at, sq_point_above (mark->at, height)));
    right[i] = sq_vector_dot (way, lamp->frame.right);
    up[i] = sq_vector_dot (way, lamp->frame.up);
    forward[i] = sq_vector_dot (way, lamp->frame.forward);
  }
  sq_lamp_candela (lamp, right, up, forward, PLACES, candela);
  for (int i = 0; i < PLACES; i++)
    if (lamp->shaped != SQ_SHAPED_FLAT || forward[i] > 0.0)
      most = MAX (most, candela[i]);
  return lamp->output * most;
}

gboolean
sq_section_shines_on (const SqScene *scene, const SqFixture *light, const SqMark *mark)
{
  g_autoptr (GArray) lamps = sq_lamps_new (scene, NULL);
  return sq_section_toward_cd (lamps, light, mark) > 0.0;
}
