/* scene-job.c: a scene file read and a page made of it, away from the main loop */
#include "scene-job.h"

#include "base/safe-file.h"

typedef struct {
  char *path;
  SqScene *scene;
  char *look;
  int overlay;
} Job;

static void
job_free (gpointer data)
{
  Job *job = data;
  g_free (job->path);
  g_clear_pointer (&job->scene, sq_scene_unref);
  g_free (job->look);
  g_free (job);
}

void
sq_scene_result_free (SqSceneResult *result)
{
  g_clear_pointer (&result->scene, sq_scene_unref);
  g_clear_pointer (&result->plot, sq_plot_free);
  g_clear_pointer (&result->warnings, g_ptr_array_unref);
  g_clear_pointer (&result->remarks, g_ptr_array_unref);
  g_free (result);
}

static SqScene *
read_scene (const char *path, SqSceneResult *result, GError **error)
{
  gsize length;
  g_autofree char *text = sq_file_load (path, &length, error);
  if (text == NULL)
    return NULL;
  result->remarks = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (SqLibrary) library = sq_library_of_user (g_get_user_data_dir (), result->remarks);
  return sq_scene_parse (text, length, library, result->warnings, error);
}

/* In a worker thread: everything it touches is its own or immutable. */
static void
run (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  const Job *job = data;
  GError *error = NULL;
  g_autoptr (SqSceneResult) result = g_new0 (SqSceneResult, 1);
  result->warnings = g_ptr_array_new_with_free_func (g_free);
  if (job->path != NULL)
    result->scene = read_scene (job->path, result, &error);
  else
    result->scene = sq_scene_ref (job->scene);
  g_autoptr (SqScene) in_look = NULL;
  if (result->scene != NULL)
    in_look = sq_scene_in_look (result->scene, job->look, &error);
  SqPlotRequest request;
  if (in_look != NULL && sq_plot_request_of (in_look, &request, &error)) {
    if (job->overlay >= 0)
      request.overlay = job->overlay;
    /* Colour cannot be computed yet: a scene that asks for it opens with its light. */
    else if (request.overlay < 0 && in_look->map->quantity == SQ_OVERLAY_COLOUR)
      request.overlay = SQ_OVERLAY_LUX;
    result->plot =
      sq_plot_new (in_look, &request, (int)g_get_num_processors (), cancellable, &error);
  }
  if (result->plot == NULL)
    g_task_return_error (task, error);
  else
    g_task_return_pointer (task, g_steal_pointer (&result), (GDestroyNotify)sq_scene_result_free);
}

void
sq_scene_job_start (const char *path,
                    const SqScene *scene,
                    const char *look,
                    int overlay,
                    GCancellable *cancellable,
                    GAsyncReadyCallback done,
                    gpointer data)
{
  Job *job = g_new (Job, 1);
  *job = (Job){ .path = g_strdup (path),
                .scene = scene != NULL ? sq_scene_ref (scene) : NULL,
                .look = g_strdup (look),
                .overlay = overlay };
  g_autoptr (GTask) task = g_task_new (NULL, cancellable, done, data);
  g_task_set_task_data (task, job, job_free);
  g_task_run_in_thread (task, run);
}

SqSceneResult *
sq_scene_job_finish (GAsyncResult *result, GError **error)
{
  return g_task_propagate_pointer (G_TASK (result), error);
}
