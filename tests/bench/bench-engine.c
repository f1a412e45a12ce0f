/* bench-engine.c: the engine that is measured, as the benchmark asks it */
#include "bench-engine.h"
#include "light/kept-fields.h"

struct Engine {
  SqKeptFields *kept;
};

Engine *
engine_new (int threads)
{
  Engine *engine = g_new0 (Engine, 1);
  engine->kept = sq_kept_fields_new (SQ_KEPT_BYTES, threads);
  return engine;
}

void
engine_free (Engine *engine)
{
  sq_kept_fields_free (engine->kept);
  g_free (engine);
}

SqLightMap *
engine_map (Engine *engine, const SqScene *scene, const SqMapRequest *request, EngineWay way)
{
  g_autoptr (GError) error = NULL;
  SqMapRequest asked = *request;
  asked.way = way == ENGINE_QUICK ? SQ_WAY_QUICK : SQ_WAY_EXACT;
  SqLightMap *map = sq_kept_fields_map (engine->kept, scene, &asked, NULL, &error);
  if (map == NULL)
    g_error ("%s", error->message);
  return map;
}

gsize
engine_bytes (const Engine *engine)
{
  return sq_kept_fields_work (engine->kept).bytes;
}

guint
engine_value_bytes (EngineWay way)
{
  return way == ENGINE_QUICK ? sizeof (float) : sizeof (double);
}
