/* remarks.c: notes by number, cautions, revisions, and lines for the pencil */
#include "paper/side-column.h"

#include "draw/point-symbols.h"
#include "paper/words.h"

#include <glib/gi18n-lib.h>

#define CAUTION_SIDE_MM 4.8
#define INDENT_MM 6.4
#define NOTES_APART_MM 0.9
/* A page is no archive: past these the rest is counted. */
#define MOST_NOTES 1000
#define MOST_REVISIONS 200
#define PENCIL_ROW_MM 7.0

/* A paragraph beside something narrow, @least_mm high at least. Returns: TRUE where the narrow
 * thing is to be drawn too, at @at */
static gboolean
beside (SqFlow *flow, const char *text, double indent_mm, double least_mm, SqPaperPoint *at)
{
  g_autofree char *cut = sq_flow_cut (text);
  double height_mm = MAX (sq_flow_text_height_mm (flow, text, indent_mm), least_mm);
  if (!sq_flow_take (flow, height_mm, at))
    return FALSE;
  SqType type = sq_flow_type (flow, 400, SQ_INK, SQ_ALIGN_LEFT);
  type.width_mm = sq_flow_width_mm (flow) - indent_mm;
  sq_draw_text (flow->drawing, (SqPaperPoint){ at->x_mm + indent_mm, at->y_mm + type.cap_mm }, cut,
                &type);
  return TRUE;
}

/* Of a mark @side_mm wide, on the axis of the first line beside it. */
static SqPaperPoint
beside_middle (SqPaperPoint at, double side_mm)
{
  return (SqPaperPoint){ at.x_mm + side_mm / 2.0, at.y_mm + SQ_TYPE_SMALL / 2.0 };
}

void
sq_notes_block (SqFlow *flow, const SqSideColumn *column)
{
  const GPtrArray *notes = column->report->notes;
  if (notes->len == 0)
    return;
  guint n = MIN (notes->len, MOST_NOTES);
  double widest_mm = sq_note_mark_width_mm (flow->drawing, (int)n);
  double indent_mm = INDENT_MM + widest_mm - SQ_NOTE_SIDE_MM;
  const char *first = sq_said (SQ_AT (SqNote, notes, 0)->text);
  sq_flow_head (flow, _ ("Notes"),
                sq_flow_text_height_mm (flow, first, indent_mm) + NOTES_APART_MM);
  for (guint k = 0; k < n; k++) {
    const char *text = sq_said (SQ_AT (SqNote, notes, k)->text);
    SqPaperPoint at;
    sq_flow_gap (flow, NOTES_APART_MM * flow->squeeze);
    if (beside (flow, text, indent_mm, SQ_NOTE_SIDE_MM + 0.6, &at))
      sq_draw_note_mark (flow->drawing, beside_middle (at, widest_mm), (int)k + 1);
  }
  if (notes->len > n) {
    g_autofree char *more = g_strdup_printf (_ ("and %u more in the scene file"), notes->len - n);
    sq_flow_text (flow, more, indent_mm, SQ_MID);
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
                            sq_label_or_id (fixture->number, fixture->id));
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
      lines, g_strdup (_ ("Rigging overhead: safety bonds; to local code, by a licensed person.")));
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
    if (beside (flow, g_ptr_array_index (lines, k), INDENT_MM, 0.0, &at) && k == 0)
      sq_draw_caution_mark (flow->drawing, beside_middle (at, CAUTION_SIDE_MM));
  }
}

/* Where the columns of the revisions begin. */
typedef struct {
  double date_mm, what_mm;
} RevisionColumns;

/* As wide as what stands in them, within reason. */
static RevisionColumns
revision_columns (const SqFlow *flow, const GPtrArray *revisions, guint from)
{
  const double least_number_mm = 4.0, most_number_mm = 14.0, most_date_mm = 24.0, gap_mm = 3.0;
  SqType number = sq_flow_type (flow, 700, SQ_INK, SQ_ALIGN_LEFT);
  SqType date = sq_flow_type (flow, 400, SQ_MID, SQ_ALIGN_LEFT);
  double number_mm = least_number_mm, wide_mm = 0.0;
  for (guint k = from; k < revisions->len; k++) {
    const SqRevision *revision = SQ_AT (SqRevision, revisions, k);
    number_mm =
      MAX (number_mm, sq_text_width_mm (flow->drawing, sq_said (revision->number), &number));
    wide_mm = MAX (wide_mm, sq_text_width_mm (flow->drawing, sq_said (revision->date), &date));
  }
  double date_mm = MIN (number_mm, most_number_mm) + gap_mm;
  return (RevisionColumns){ date_mm, date_mm + MIN (wide_mm, most_date_mm) + gap_mm };
}

static void
draw_revision (SqFlow *flow,
               const SqRevision *revision,
               SqPaperPoint at,
               const RevisionColumns *columns)
{
  const double apart_mm = 1.0;
  const struct {
    const char *text;
    double x_mm, width_mm;
    int weight;
    SqInk ink;
    gboolean one_line;
  } cells[] = {
    { sq_said (revision->number), 0.0, columns->date_mm - apart_mm, 700, SQ_INK, TRUE },
    { sq_said (revision->date), columns->date_mm, columns->what_mm - columns->date_mm - apart_mm,
      400, SQ_MID, TRUE },
    { sq_said (revision->what), columns->what_mm, sq_flow_width_mm (flow) - columns->what_mm, 400,
      SQ_INK, FALSE },
  };
  for (guint k = 0; k < G_N_ELEMENTS (cells); k++) {
    g_autofree char *text = sq_flow_cut (cells[k].text);
    SqType type = sq_flow_type (flow, cells[k].weight, cells[k].ink, SQ_ALIGN_LEFT);
    type.width_mm = cells[k].width_mm;
    type.one_line = cells[k].one_line;
    sq_draw_text (flow->drawing, (SqPaperPoint){ at.x_mm + cells[k].x_mm, at.y_mm + type.cap_mm },
                  text, &type);
  }
}

void
sq_revisions_block (SqFlow *flow, const SqSideColumn *column)
{
  const double least_row_mm = 3.1;
  const GPtrArray *revisions = column->scene->title->revisions;
  if (revisions->len == 0)
    return;
  sq_flow_head (flow, _ ("Revisions"), 4.0);
  guint from = revisions->len > MOST_REVISIONS ? revisions->len - MOST_REVISIONS : 0;
  RevisionColumns columns = revision_columns (flow, revisions, from);
  for (guint k = revisions->len; k-- > from;) {
    const SqRevision *revision = SQ_AT (SqRevision, revisions, k);
    double height_mm = sq_flow_text_height_mm (flow, sq_said (revision->what), columns.what_mm);
    SqPaperPoint at;
    if (sq_flow_take (flow, MAX (height_mm, least_row_mm), &at))
      draw_revision (flow, revision, at, &columns);
  }
  if (from > 0) {
    g_autofree char *more = g_strdup_printf (_ ("and %u older in the scene file"), from);
    sq_flow_text (flow, more, columns.what_mm, SQ_MID);
  }
}

static void
pencil_lines (SqFlow *flow)
{
  const double line_up_mm = 3.0;
  while (sq_flow_left_mm (flow) >= PENCIL_ROW_MM) {
    SqPaperPoint at;
    if (!sq_flow_take (flow, PENCIL_ROW_MM, &at))
      continue;
    at.y_mm += PENCIL_ROW_MM - line_up_mm;
    sq_draw_line (flow->drawing, at, (SqPaperPoint){ at.x_mm + sq_flow_width_mm (flow), at.y_mm },
                  SQ_PEN_13, sq_ink (flow->drawing->view, SQ_HAIR));
  }
}

/* What is left of a page is for the pencil: every column beside the plan, else the rest of this
 * one; no page is begun for it. */
void
sq_on_the_day_block (SqFlow *flow)
{
  const double least_mm = 2.0 * PENCIL_ROW_MM, head_mm = 12.0;
  for (gboolean more = TRUE; more;) {
    if (sq_flow_left_mm (flow) >= head_mm + least_mm) {
      sq_flow_head (flow, _ ("On the day"), least_mm);
      flow->title = NULL;
      pencil_lines (flow);
    }
    more = sq_flow_page (flow) == 0 && !sq_flow_ends_page (flow);
    if (more)
      sq_flow_next_column (flow);
  }
}
