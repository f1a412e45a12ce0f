/* plot-request.c: what a scene itself says of how its plan is printed */
#include "paper/plot.h"
#include "paper/scale.h"

#include "base/error.h"

#include <glib/gi18n-lib.h>

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

GPtrArray *
sq_plot_left_out (const SqScene *scene)
{
  GPtrArray *lines = g_ptr_array_new_with_free_func (g_free);
  gboolean plan = FALSE;
  for (guint i = 0; i < scene->pages->len; i++) {
    const SqPage *page = SQ_AT (SqPage, scene->pages, i);
    if (page->page != SQ_PAGE_PLAN || plan)
      g_ptr_array_add (lines,
                       g_strdup_printf (page->page == SQ_PAGE_PLAN
                                          ? _ ("pages[%u]: a second plan is not drawn yet")
                                          : _ ("pages[%u]: this kind of page is not drawn yet"),
                                        i));
    else if (page->look != NULL && g_strcmp0 (page->look, scene->look) != 0)
      g_ptr_array_add (
        lines, g_strdup_printf (_ ("pages[%u].look: %s is not drawn unless it is asked for"), i,
                                page->look));
    else if (page->portrait)
      g_ptr_array_add (
        lines, g_strdup_printf (_ ("pages[%u].portrait: sheets lie on their side as yet"), i));
    plan = plan || page->page == SQ_PAGE_PLAN;
  }
  if (scene->underlay != NULL)
    g_ptr_array_add (lines, g_strdup (_ ("underlay: is not drawn yet")));
  return lines;
}
