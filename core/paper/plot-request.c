/* plot-request.c: what a scene, and a list of names, say of the pages to be printed */
#include "base/error.h"
#include "paper/flow.h"
#include "paper/plot-private.h"
#include "paper/scale.h"
#include "paper/words.h"

#include <glib/gi18n-lib.h>

/* As files and the command line say it, by SqPageKind. */
static const char *const kind_words[] = {
  [SQ_PAGE_PLAN] = "plan", [SQ_PAGE_RATIO] = "ratio", [SQ_PAGE_SECTION] = "section",
  [SQ_PAGE_LIST] = "list", [SQ_PAGE_POWER] = "power", [SQ_PAGE_CONTINUITY] = "continuity",
};

static gboolean
can_draw (int kind)
{
  return sq_page_makers[kind] != NULL;
}

static gboolean
place_error (GError **error, guint page, const GError *cause)
{
  /* It begins with the key. */
  g_set_error (error, SQ_ERROR, SQ_ERROR_VALUE, "pages[%u].%s", page, cause->message);
  return FALSE;
}

static gboolean
wish_of_page (const SqPage *page, guint number, SqPageWish *wish, GError **error)
{
  g_autoptr (GError) cause = NULL;
  *wish = (SqPageWish){ .kind = page->page,
                        .sheet = page->sheet,
                        .turn = page->portrait ? SQ_TURN_PORTRAIT : SQ_TURN_AS_FITS,
                        .overlay = page->overlay,
                        .mono = page->mono,
                        .light = page->light };
  if (page->sheet != NULL && sq_sheet_find (page->sheet, &cause) == NULL)
    return place_error (error, number, cause);
  if (page->scale != NULL && !sq_scale_parse (page->scale, &wish->denominator, &cause))
    return place_error (error, number, cause);
  return TRUE;
}

static gboolean
is_in_other_look (const SqScene *scene, const SqPage *page)
{
  return page->look != NULL && g_strcmp0 (page->look, scene->look) != 0;
}

gboolean
sq_plot_request_of (const SqScene *scene, SqPlotRequest *request, GError **error)
{
  *request = SQ_PLOT_REQUEST;
  for (guint k = 0; k < scene->pages->len; k++) {
    SqPageWish wish;
    if (!wish_of_page (SQ_AT (SqPage, scene->pages, k), k, &wish, error))
      return FALSE;
    if (can_draw (wish.kind) && request->n_pages < SQ_PLOT_MOST_WISHES)
      request->pages[request->n_pages++] = wish;
  }
  return TRUE;
}

/* Notes whose end no page shows: one line for all of them. */
static void
add_cut_notes (GPtrArray *lines, const SqScene *scene)
{
  guint first = 0, n = 0;
  for (guint k = 0; k < scene->notes->len; k++)
    if (g_utf8_strlen (sq_said (SQ_AT (SqNote, scene->notes, k)->text), -1) >
          SQ_FLOW_MOST_LETTERS &&
        n++ == 0)
      first = k;
  if (n == 1)
    g_ptr_array_add (lines,
                     g_strdup_printf (_ ("notes[%u].text: what is past %d letters is not drawn"),
                                      first, SQ_FLOW_MOST_LETTERS));
  else if (n > 1)
    g_ptr_array_add (lines,
                     g_strdup_printf (_ ("notes[%u].text and %u more: what is past %d letters "
                                         "is not drawn"),
                                      first, n - 1, SQ_FLOW_MOST_LETTERS));
}

GPtrArray *
sq_plot_left_out (const SqScene *scene)
{
  GPtrArray *lines = g_ptr_array_new_with_free_func (g_free);
  guint drawn = 0;
  for (guint k = 0; k < scene->pages->len; k++) {
    const SqPage *page = SQ_AT (SqPage, scene->pages, k);
    if (!can_draw (page->page))
      g_ptr_array_add (lines,
                       g_strdup_printf (_ ("pages[%u]: this kind of page is not drawn yet"), k));
    else if (drawn++ >= SQ_PLOT_MOST_WISHES) {
      g_ptr_array_add (lines,
                       g_strdup_printf (_ ("pages[%u]: this page and what follows it are not "
                                           "drawn, expected no more than %d"),
                                        k, SQ_PLOT_MOST_WISHES));
      break;
    } else if (is_in_other_look (scene, page))
      g_ptr_array_add (
        lines, g_strdup_printf (_ ("pages[%u].look: %s is not drawn unless it is asked for"), k,
                                page->look));
  }
  add_cut_notes (lines, scene);
  if (scene->underlay != NULL)
    g_ptr_array_add (lines, g_strdup (_ ("underlay: is not drawn yet")));
  return lines;
}

/* "plan, section": what can be drawn. */
static char *
drawable_text (void)
{
  g_autoptr (GString) all = g_string_new (NULL);
  for (int kind = 0; kind < (int)G_N_ELEMENTS (kind_words); kind++)
    if (can_draw (kind))
      g_string_append_printf (all, "%s%s", all->len > 0 ? ", " : "", kind_words[kind]);
  return g_string_free (g_steal_pointer (&all), FALSE);
}

static int
kind_of (const char *word)
{
  for (int kind = 0; kind < (int)G_N_ELEMENTS (kind_words); kind++)
    if (g_str_equal (word, kind_words[kind]))
      return kind;
  return -1;
}

static gboolean
refuse (const char *word, const char *why, GError **error)
{
  g_autofree char *shown = g_utf8_make_valid (word, MIN (strlen (word), 40));
  g_autofree char *expected = drawable_text ();
  g_set_error (error, SQ_ERROR, SQ_ERROR_USAGE, _ ("pages: \"%s\" %s, expected %s"), shown, why,
               expected);
  return FALSE;
}

/* What is asked for of a kind already; the usual where nothing is. */
static SqPageWish
wish_for_kind (const SqPlotRequest *request, int kind)
{
  SqPageWish usual = SQ_PAGE_WISH;
  usual.kind = kind;
  for (guint k = 0; k < request->n_pages; k++)
    if (request->pages[k].kind == kind)
      return request->pages[k];
  return usual;
}

gboolean
sq_plot_request_pages (SqPlotRequest *request, const char *list, GError **error)
{
  g_auto (GStrv) words = g_strsplit (list, ",", -1);
  SqPlotRequest asked = *request;
  asked.n_pages = 0;
  for (guint k = 0; words[k] != NULL; k++) {
    int kind = kind_of (g_strstrip (words[k]));
    if (kind < 0)
      return refuse (words[k], _ ("is no kind of page"), error);
    if (!can_draw (kind))
      return refuse (words[k], _ ("cannot be drawn yet"), error);
    for (guint n = 0; n < asked.n_pages; n++)
      if (asked.pages[n].kind == kind)
        return refuse (words[k], _ ("is named twice"), error);
    asked.pages[asked.n_pages++] = wish_for_kind (request, kind);
  }
  if (asked.n_pages == 0)
    return refuse (list, _ ("names no page"), error);
  *request = asked;
  return TRUE;
}
