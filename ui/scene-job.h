/* scene-job.h: a scene file read and a page made of it, away from the main loop */
#pragma once

#include "paper/plot.h"

#include <gio/gio.h>

G_BEGIN_DECLS

/* What came of it; each member may be taken (set to NULL) by the caller. */
typedef struct {
  SqScene *scene; /* as it is in the file */
  SqPlot *plot;   /* of the look that was asked for */
  GPtrArray *warnings;
  GPtrArray *remarks; /* on the user's own library; NULL: no file was read */
} SqSceneResult;

void sq_scene_result_free (SqSceneResult *result);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqSceneResult, sq_scene_result_free)

/* sq_scene_job_start:
 * @path: the file; or NULL, to make another page of @scene
 * @scene: (nullable)
 * @look: (nullable): base
 * @overlay: SqOverlay; -1: the scene's own
 *
 * @done is called in the main loop, unless @cancellable was cancelled before. */
void sq_scene_job_start (const char *path,
                         const SqScene *scene,
                         const char *look,
                         int overlay,
                         GCancellable *cancellable,
                         GAsyncReadyCallback done,
                         gpointer data);

/* Returns: (transfer full): or NULL with one line in @error */
SqSceneResult *sq_scene_job_finish (GAsyncResult *result, GError **error);

G_END_DECLS
