/* bench-engine.h: the engine that is measured, as the benchmark asks it */
#pragma once

#include "light/map.h"

G_BEGIN_DECLS

typedef struct Engine Engine;

/* It keeps what it worked out until it is freed. */
Engine *engine_new (int threads);
void engine_free (Engine *engine);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Engine, engine_free)

typedef enum { ENGINE_QUICK, ENGINE_EXACT, ENGINE_WAYS } EngineWay;

/* Returns: (transfer full); whatever goes wrong ends the program */
SqLightMap *engine_map (Engine *engine,
                        const SqScene *scene,
                        const SqMapRequest *request,
                        EngineWay way);

/* What is kept now. */
gsize engine_bytes (const Engine *engine);

/* Bytes of one value of a kept field. */
guint engine_value_bytes (EngineWay way);

G_END_DECLS
