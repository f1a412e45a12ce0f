/* plan-words.c: what a plan says of lights, people, cameras and grip */
#include "draw/plan-words.h"

#include "draw/person.h"

#include <glib/gi18n-lib.h>

void
sq_plan_word_clear (gpointer data)
{
  SqPlanWord *word = data;
  sq_tag_text_free (word->tag);
  sq_mark_label_free (word->mark);
  sq_text_label_clear (&word->text);
  g_free (word->opening.text);
  g_clear_pointer (&word->spots, g_array_unref);
}

GArray *
sq_plan_word_spots (SqPlanWord *word)
{
  if (word->spots == NULL)
    word->spots = g_array_new (FALSE, FALSE, sizeof (SqLabelSpot));
  word->wish.spots = word->spots;
  return word->spots;
}

void
sq_plan_word_set_box (SqPlanWord *word, SqPaperBox box)
{
  for (int side = 0; side < SQ_ROWS_SIDES; side++)
    word->wish.head[side] = box;
  for (int detail = 0; detail < SQ_TAG_DETAILS; detail++)
    word->wish.lesser_head[detail] = (SqPaperBox){ 0 };
}

static void
pin (const SqPlanParts *parts, const SqCommon *common, SqPlanWord *word)
{
  if (common == NULL || !sq_place_given (common->tag_at))
    return;
  word->wish.pinned = TRUE;
  word->wish.at = sq_view_paper (parts->drawing->view, common->tag_at);
}

static void
add_mark_words (const SqPlanParts *parts, GArray *words)
{
  const SqReadings *readings = parts->request->readings;
  const SqView *view = parts->drawing->view;
  gboolean bare = sq_first_tag_detail (view) == SQ_TAG_BARE;
  for (guint i = 0; i < parts->scene->marks->len; i++) {
    const SqMark *mark = SQ_AT (SqMark, parts->scene->marks, i);
    SqPaperPoint at = sq_view_paper (view, mark->at);
    const SqMarkReading *reading = NULL;
    if (mark->common.hidden || !sq_plan_shows (parts, at))
      continue;
    for (guint j = 0; readings != NULL && !bare && j < readings->marks->len; j++)
      if (g_str_equal (SQ_AT (SqMarkReading, readings->marks, j)->mark->id, mark->id))
        reading = SQ_AT (SqMarkReading, readings->marks, j);

    SqTurnedBox body[SQ_PERSON_PARTS];
    sq_person_outline (view, at, mark->facing_deg, mark->posture, body);
    SqPlanWord word = { .kind = SQ_LABEL_MARK, .thing = &mark->thing, .placed = TRUE };
    word.mark = sq_mark_label_new (mark, readings, reading, view->units);
    word.wish = (SqWish){
      .of = mark, .about = body[0], .n_details = 1, .most_mm = SQ_MOST_MARK_MM, .may_lead = TRUE
    };
    for (int side = 0; side < SQ_ROWS_SIDES; side++)
      sq_mark_label_shape (parts->drawing, word.mark, side == SQ_ROWS_LEFT, &word.wish.head[side],
                           &word.wish.rows[0][side]);
    pin (parts, &mark->common, &word);
    g_array_append_val (words, word);
  }
}

/* The most and the least that tags say at this scale. On screen rows go, then the pill, as the view
 * moves out; paper keeps the pill. */
int
sq_first_tag_detail (const SqView *view)
{
  double px_per_m = view->mm_per_m * SQ_SCREEN_PX_PER_MM;
  if (view->ground == SQ_GROUND_PAPER || px_per_m >= SQ_ROWS_LEAST_PX_PER_M)
    return SQ_TAG_FULL;
  return px_per_m >= SQ_PILL_LEAST_PX_PER_M ? SQ_TAG_NUMBER : SQ_TAG_BARE;
}

static int
least_detail (const SqView *view)
{
  return MAX (sq_first_tag_detail (view), SQ_TAG_NUMBER);
}

/* The same box on the other side of its point. */
static SqPaperBox
mirrored (SqPaperBox box)
{
  box.x_mm = -box.x_mm - box.width_mm;
  return box;
}

static void
add_tag_words (const SqPlanParts *parts, GArray *words)
{
  const SqView *view = parts->drawing->view;
  for (guint i = 0; i < parts->scene->fixtures->len; i++) {
    const SqFixture *fixture = SQ_AT (SqFixture, parts->scene->fixtures, i);
    SqLamp lamp = sq_lamp_of_fixture (parts->scene, fixture, view);
    if (fixture->common.hidden || !sq_plan_shows (parts, lamp.at))
      continue;
    SqPlanWord word = { .kind = SQ_LABEL_TAG, .thing = &fixture->thing, .placed = TRUE };
    word.first_detail = sq_first_tag_detail (view);
    word.tag = sq_tag_text_new (parts->scene, fixture, view->units, parts->request->tag_rows);
    word.wish = (SqWish){ .of = fixture,
                          .about = sq_lamp_outline (view, &lamp),
                          .n_details = least_detail (view) - word.first_detail + 1,
                          .most_mm = SQ_MOST_TAG_MM,
                          .may_lead = TRUE };
    for (int detail = 0; detail < word.wish.n_details; detail++) {
      SqPaperBox *rows = word.wish.rows[detail];
      sq_tag_shape (parts->drawing, word.tag, (SqTagDetail)(word.first_detail + detail), FALSE,
                    &word.wish.head[SQ_ROWS_RIGHT], &rows[SQ_ROWS_RIGHT]);
      word.wish.head[SQ_ROWS_LEFT] = mirrored (word.wish.head[SQ_ROWS_RIGHT]);
      rows[SQ_ROWS_LEFT] = mirrored (rows[SQ_ROWS_RIGHT]);
    }
    pin (parts, &fixture->common, &word);
    g_array_append_val (words, word);
  }
}

SqPlanWord *
sq_plan_add_text (const SqPlanParts *parts,
                  GArray *words,
                  SqLabelKind kind,
                  const SqThing *thing,
                  const SqCommon *common,
                  SqTextLabel *text,
                  int least,
                  SqTurnedBox about,
                  double most_mm)
{
  SqPlanWord word = { .kind = kind, .thing = thing, .placed = TRUE, .text = *text };
  if (text->n_lines == 0)
    return NULL;
  if (!sq_plan_shows (parts, about.middle)) {
    sq_text_label_clear (text);
    return NULL;
  }
  word.wish = (SqWish){ .of = thing,
                        .about = about,
                        .n_details = 1 + text->n_lines - MIN (least, text->n_lines),
                        .most_mm = most_mm,
                        .bare = TRUE,
                        .may_lead = most_mm > SQ_MOST_NEAR_MM };
  for (int detail = 0; detail < word.wish.n_details; detail++)
    word.wish.lesser_head[detail] =
      sq_text_label_shape (parts->drawing, text, text->n_lines - detail);
  for (int side = 0; side < SQ_ROWS_SIDES; side++)
    word.wish.head[side] = word.wish.lesser_head[0];
  pin (parts, common, &word);
  g_array_append_val (words, word);
  return &g_array_index (words, SqPlanWord, words->len - 1);
}

static void
add_camera_words (const SqPlanParts *parts, GArray *words)
{
  const SqView *view = parts->drawing->view;
  for (guint i = 0; i < parts->scene->cameras->len; i++) {
    const SqCamera *camera = SQ_AT (SqCamera, parts->scene->cameras, i);
    if (camera->common.hidden)
      continue;
    g_autofree char *focal = sq_quantity_format (camera->focal_mm, SQ_MILLIMETRES, view->units);
    g_autofree char *stop = sq_quantity_format (camera->t_stop, SQ_T_STOP, view->units);
    g_autofree char *height = sq_quantity_format (camera->at.z_m, SQ_LENGTH, view->units);
    SqTextLabel text = { 0 };
    sq_text_label_add (&text, g_strdup_printf ("%s  %s", focal, stop));
    /* Translators: h is for the height of the lens. */
    sq_text_label_add (&text, g_strdup_printf (_ ("h %s"), height));
    double azimuth = sq_vector_azimuth_deg (sq_camera_direction (parts->scene, camera));
    SqPaperPoint pupil = sq_view_paper (view, (SqPlace){ camera->at.x_m, camera->at.y_m });
    sq_plan_add_text (parts, words, SQ_LABEL_CAMERA, &camera->thing, &camera->common, &text, 1,
                      sq_camera_outline (view, pupil, azimuth), SQ_MOST_TEXT_MM);
  }
}

static char *
size_text (double metres, SqUnits units)
{
  char digits[G_ASCII_DTOSTR_BUF_SIZE];
  if (units == SQ_IMPERIAL) {
    /* Cloths go by their nominal feet: 1.2 m is called 4'. */
    double feet = round (metres / SQ_FOOT_M);
    if (feet >= 1.0 && fabs (metres / SQ_FOOT_M - feet) <= 0.02 * feet)
      return g_strdup_printf ("%.0f'", feet);
    return sq_quantity_format (metres, SQ_LENGTH, units);
  }
  g_ascii_formatd (digits, sizeof digits, "%.2f", metres);
  if (g_str_has_suffix (digits, "0"))
    digits[strlen (digits) - 1] = '\0';
  return g_strdup (digits);
}

static void
add_panel_words (const SqPlanParts *parts, GArray *words)
{
  const SqView *view = parts->drawing->view;
  for (guint i = 0; i < parts->scene->panels->len; i++) {
    const SqPanel *panel = SQ_AT (SqPanel, parts->scene->panels, i);
    if (panel->common.hidden || !panel->set)
      continue;
    g_autofree char *width = size_text (panel->width_m, view->units);
    g_autofree char *height = size_text (panel->height_m, view->units);
    const SqMaterial *material =
      panel->material != NULL ? sq_scene_material (parts->scene, panel->material) : NULL;
    SqTextLabel text = { 0 };
    sq_text_label_add (
      &text, g_strdup_printf ("%s %s × %s", _ (sq_panel_kind_word (panel->kind)), width, height));
    if (material != NULL && panel->kind != SQ_PANEL_FLAG)
      sq_text_label_add (&text, g_strdup (material->name));
    else
      sq_text_label_add (&text, g_strdup (panel->common.note));
    SqPanelMark mark = sq_panel_mark (view, panel);
    sq_plan_add_text (parts, words, SQ_LABEL_PANEL, &panel->thing, &panel->common, &text, 1,
                      sq_panel_outline (view, &mark), SQ_MOST_TEXT_MM);
  }
}

void
sq_plan_add_light_words (const SqPlanParts *parts, GArray *words)
{
  add_mark_words (parts, words);
  add_tag_words (parts, words);
  if (sq_first_tag_detail (parts->drawing->view) > SQ_TAG_FULL)
    return;
  add_camera_words (parts, words);
  add_panel_words (parts, words);
}
