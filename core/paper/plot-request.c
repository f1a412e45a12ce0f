/* plot-request.c: what a scene itself says of how its plan is printed */
#include "paper/plot.h"
#include "paper/scale.h"

#include "base/error.h"

static gboolean
place_error (GError **error, guint page, const char *key, const GError *cause)
{
  g_set_error (error, SQ_ERROR, SQ_ERROR_VALUE, "pages[%u].%s: %s", page, key, cause->message);
  return FALSE;
}

gboolean
sq_plot_request_of (const SqScene *scene, SqPlotRequest *request, GError **error)
{
  *request = SQ_PLOT_REQUEST;
  for (guint i = 0; i < scene->pages->len; i++) {
    const SqPage *page = SQ_AT (SqPage, scene->pages, i);
    g_autoptr (GError) cause = NULL;
    if (page->page != SQ_PAGE_PLAN)
      continue;
    if (page->sheet != NULL && sq_sheet_find (page->sheet, &cause) == NULL)
      return place_error (error, i, "sheet", cause);
    if (page->scale != NULL && !sq_scale_parse (page->scale, &request->denominator, &cause))
      return place_error (error, i, "scale", cause);
    request->sheet = page->sheet;
    request->overlay = page->overlay;
    request->mono = page->mono;
    return TRUE;
  }
  return TRUE;
}
