/* remarks.c: notes by number, cautions, revisions, and lines for the pencil */
#include "paper/side-column.h"

#include "draw/point-symbols.h"
#include "paper/words.h"

#include <glib/gi18n-lib.h>

#define CAUTION_SIDE_MM 4.8
#define INDENT_MM 6.4
/* A page is no archive: past these the rest is counted. */
#define MOST_NOTES 1000
#define MOST_REVISIONS 200
#define PENCIL_ROW_MM 7.0
#define REVISION_DATE_MM 7.0
#define REVISION_TEXT_MM 23.0

/* A paragraph beside something narrow, which @height_mm leaves room for. Returns: TRUE where the
 * narrow thing is to be drawn too, at @at */
static gboolean
beside (SqFlow *flow, const char *text, double least_mm, SqPaperPoint *at)
{
  g_autofree char *cut = sq_flow_cut (text);
  double height_mm = MAX (sq_flow_text_height_mm (flow, text, INDENT_MM), least_mm);
  if (!sq_flow_take (flow, height_mm, at))
    return FALSE;
  SqType type = sq_flow_type (flow, 400, SQ_INK, SQ_ALIGN_LEFT);
  type.width_mm = sq_flow_width_mm (flow) - INDENT_MM;
  sq_draw_text (flow->drawing, (SqPaperPoint){at->x_mm + INDENT_MM, at->y_mm + type.cap_mm}, cut,
                &type);
  return TRUE;
}

/* Of a mark @side_mm wide, on the axis of the first line beside it. */
static SqPaperPoint
beside_middle (SqPaperPoint at, double side_mm)
{
  return (SqPaperPoint){at.x_mm + side_mm / 2.0, at.y_mm + SQ_TYPE_SMALL / 2.0};
}

void
sq_notes_block (SqFlow *flow, const SqSideColumn *column)
{
  const GPtrArray *notes = column->report->notes;
  if (notes->len == 0)
    return;
  sq_flow_head (flow, _ ("Notes"), SQ_NOTE_SIDE_MM);
  guint n = MIN (notes->len, MOST_NOTES);
  for (guint k = 0; k < n; k++) {
    SqPaperPoint at;
    sq_flow_gap (flow, 0.9 * flow->squeeze);
    if (beside (flow, sq_said (SQ_AT (SqNote, notes, k)->text), SQ_NOTE_SIDE_MM + 0.6, &at))
      sq_draw_note_mark (flow->drawing, beside_middle (at, SQ_NOTE_SIDE_MM), (int)k + 1);
  }
  if (notes->len > n) {
    g_autofree char *more = g_strdup_printf (_ ("and %u more in the scene file"), notes->len - n);
    sq_flow_text (flow, more, INDENT_MM, SQ_MID);
  }
}

/* "Units 1, 2" of those that @is_one says; NULL if there is none. */
static char *
units_that (const SqScene *scene, gboolean (*is_one) (const SqScene *, const SqFixture *))
{
  g_autoptr (GPtrArray) found = g_ptr_array_new ();
  for (guint k = 0; k < scene->fixtures->len; k++) {
    const SqFixture *fixture = SQ_AT (SqFixture, scene->fixtures, k);
    if (is_one (scene, fixture))
      g_ptr_array_add (found, (gpointer)fixture);
  }
  if (found->len == 0)
    return NULL;
  const guint most = 24; /* the rest is "…": the tags tell them too */
  g_autoptr (GString) text = g_string_new (found->len == 1 ? _ ("Unit") : _ ("Units"));
  for (guint k = 0; k < MIN (found->len, most); k++) {
    const SqFixture *fixture = SQ_AT (SqFixture, found, k);
    g_string_append_printf (text, "%s%s", k > 0 ? ", " : " ",
                            *sq_said (fixture->number) != '\0' ? fixture->number : fixture->id);
  }
  if (found->len > most)
    g_string_append (text, " …");
  return g_string_free (g_steal_pointer (&text), FALSE);
}

static gboolean
is_discharge (const SqScene *scene, const SqFixture *fixture)
{
  return sq_scene_class (scene, fixture->class_id)->source == SQ_SOURCE_DISCHARGE;
}

static gboolean
is_overhead (const SqScene *scene, const SqFixture *fixture)
{
  return fixture->mount == SQ_MOUNT_CEILING || fixture->mount == SQ_MOUNT_PIPE ||
         fixture->mount == SQ_MOUNT_BOOM || fixture->mount == SQ_MOUNT_LIFT;
}

static gboolean
is_flame (const SqScene *scene, const SqFixture *fixture)
{
  return sq_scene_class (scene, fixture->class_id)->source == SQ_SOURCE_FLAME;
}

static gboolean
has_generator (const SqScene *scene)
{
  for (guint k = 0; k < scene->supplies->len; k++)
    if (SQ_AT (SqSupply, scene->supplies, k)->kind == SQ_SUPPLY_GENERATOR)
      return TRUE;
  return FALSE;
}

/* What can hurt. Nothing here is computed: those who know and may must look. */
void
sq_caution_block (SqFlow *flow, const SqSideColumn *column)
{
  const SqScene *scene = column->scene;
  g_autofree char *discharge = units_that (scene, is_discharge);
  g_autofree char *overhead = units_that (scene, is_overhead);
  g_autofree char *flame = units_that (scene, is_flame);
  g_autoptr (GPtrArray) lines = g_ptr_array_new_with_free_func (g_free);

  g_ptr_array_add (lines,
                   g_strdup (_ ("Mains and distribution: to local code, by a licensed person.")));
  if (has_generator (scene))
    g_ptr_array_add (
        lines, g_strdup (_ ("Generator: earth it, keep its exhaust from people and openings.")));
  g_ptr_array_add (lines,
                   g_strdup (_ ("Lamps run hot: keep cloth, gel and scenery clear of them.")));
  if (overhead != NULL)
    g_ptr_array_add (
        lines,
        /* Translators: %s is "Units 5, 6" */
        g_strdup_printf (_ ("%s overhead: a safety bond on each and all that hangs on it; rigging "
                            "to local code, by a licensed person."),
                         overhead));
  else
    g_ptr_array_add (
        lines,
        g_strdup (_ ("Rigging overhead: safety bonds; to local code, by a licensed person.")));
  if (discharge != NULL)
    g_ptr_array_add (
        lines,
        g_strdup_printf (_ ("%s discharge, UV: safety glass in, keep your distance."), discharge));
  if (flame != NULL)
    g_ptr_array_add (lines,
                     g_strdup_printf (_ ("%s open flame: fire watch, extinguisher."), flame));
  if (scene->haze_per_m > 0.0)
    g_ptr_array_add (
        lines, g_strdup (_ ("Haze: ventilate, keep exposure within limits, tell everybody.")));

  sq_flow_head (flow, _ ("Caution"), 12.0);
  for (guint k = 0; k < lines->len; k++) {
    SqPaperPoint at;
    if (beside (flow, g_ptr_array_index (lines, k), 0.0, &at) && k == 0)
      sq_draw_caution_mark (flow->drawing, beside_middle (at, CAUTION_SIDE_MM));
  }
}

void
sq_revisions_block (SqFlow *flow, const SqSideColumn *column)
{
  const GPtrArray *revisions = column->scene->title->revisions;
  if (revisions->len == 0)
    return;
  sq_flow_head (flow, _ ("Revisions"), 4.0);
  guint least = revisions->len > MOST_REVISIONS ? revisions->len - MOST_REVISIONS : 0;
  for (guint k = revisions->len; k-- > least;) {
    const SqRevision *revision = SQ_AT (SqRevision, revisions, k);
    g_autofree char *what = sq_flow_cut (sq_said (revision->what));
    SqPaperPoint at;
    double height_mm = sq_flow_text_height_mm (flow, what, REVISION_TEXT_MM);
    if (!sq_flow_take (flow, MAX (height_mm, 3.1), &at))
      continue;
    double baseline_mm = at.y_mm + SQ_TYPE_SMALL;
    SqType type = sq_flow_type (flow, 700, SQ_INK, SQ_ALIGN_LEFT);
    type.width_mm = REVISION_DATE_MM - 1.0;
    type.one_line = TRUE;
    sq_draw_text (flow->drawing, (SqPaperPoint){at.x_mm, baseline_mm}, sq_said (revision->number),
                  &type);
    type = sq_flow_type (flow, 400, SQ_MID, SQ_ALIGN_LEFT);
    type.width_mm = REVISION_TEXT_MM - REVISION_DATE_MM - 1.0;
    type.one_line = TRUE;
    sq_draw_text (flow->drawing, (SqPaperPoint){at.x_mm + REVISION_DATE_MM, baseline_mm},
                  sq_said (revision->date), &type);
    type = sq_flow_type (flow, 400, SQ_INK, SQ_ALIGN_LEFT);
    type.width_mm = sq_flow_width_mm (flow) - REVISION_TEXT_MM;
    sq_draw_text (flow->drawing, (SqPaperPoint){at.x_mm + REVISION_TEXT_MM, baseline_mm}, what,
                  &type);
  }
  if (least > 0) {
    g_autofree char *more = g_strdup_printf (_ ("and %u older in the scene file"), least);
    sq_flow_text (flow, more, REVISION_TEXT_MM, SQ_MID);
  }
}

void
sq_on_the_day_block (SqFlow *flow)
{
  const double least_mm = 2.0 * PENCIL_ROW_MM, head_mm = 12.0;
  /* What is left is for the pencil; no page is begun for it. */
  if (sq_flow_left_mm (flow) < head_mm + least_mm)
    return;
  sq_flow_head (flow, _ ("On the day"), least_mm);
  flow->title = NULL;
  while (sq_flow_left_mm (flow) >= PENCIL_ROW_MM) {
    SqPaperPoint at;
    if (sq_flow_take (flow, PENCIL_ROW_MM, &at))
      sq_draw_line (
          flow->drawing, (SqPaperPoint){at.x_mm, at.y_mm + PENCIL_ROW_MM - 3.0},
          (SqPaperPoint){at.x_mm + sq_flow_width_mm (flow), at.y_mm + PENCIL_ROW_MM - 3.0},
          SQ_PEN_13, sq_ink (flow->drawing->view, SQ_HAIR));
  }
}
