/* section-say.c: what a section says of lights, people, grip and cameras */
#include "draw/section-say.h"

#include "draw/panel-symbol.h"
#include "draw/section-figure.h"
#include "draw/section-grip.h"
#include "draw/section-lamp.h"
#include "draw/section-light.h"
#include "draw/section-obstacles.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* What lies this level has one height. */
#define LEVEL_M 0.03

/* A line nearer than this touches a word. */
#define WORD_AIR_MM 0.4

void
sq_section_word_clear (gpointer data)
{
  SqSectionWord *word = data;
  sq_tag_text_free (word->tag);
  sq_mark_label_free (word->mark);
  sq_text_label_clear (&word->text);
}

SqTurnedBox
sq_section_about (SqPaperBox box)
{
  return (SqTurnedBox){ .middle = sq_paper_box_middle (box),
                        .half_length_mm = box.width_mm / 2,
                        .half_width_mm = box.height_mm / 2 };
}

static SqPaperBox
mirrored (SqPaperBox box)
{
  box.x_mm = -box.x_mm - box.width_mm;
  return box;
}

static void
add_tag (const SqSectionSay *say, const SqFixture *fixture, SqTagDetail detail, SqTagRows rows)
{
  const SqSection *section = say->section;
  g_autoptr (SqSideLamp) side =
    sq_side_lamp_new (say->view, section->scene, &section->plane, fixture);
  SqSectionWord word = { .kind = SQ_LABEL_TAG, .thing = &fixture->thing, .first_detail = detail };
  word.tag = sq_tag_text_new (section->scene, fixture, say->view->units, rows);
  word.wish = (SqWish){ .of = fixture,
                        .about = sq_lamp_outline (say->view, &side->lamp),
                        .n_details = SQ_TAG_NUMBER - detail + 1,
                        .most_mm = SQ_SAY_TAG_MM,
                        .may_lead = TRUE };
  for (int i = 0; i < word.wish.n_details; i++) {
    SqPaperBox *rows_box = word.wish.rows[i];
    sq_tag_shape (say->drawing, word.tag, (SqTagDetail)(detail + i), FALSE,
                  &word.wish.head[SQ_ROWS_RIGHT], &rows_box[SQ_ROWS_RIGHT]);
    word.wish.head[SQ_ROWS_LEFT] = mirrored (word.wish.head[SQ_ROWS_RIGHT]);
    rows_box[SQ_ROWS_LEFT] = mirrored (rows_box[SQ_ROWS_RIGHT]);
  }
  g_array_append_val (say->words, word);
}

/* Lines beside a thing. @text is taken. Returns: (nullable): its wish, until the next is added */
SqWish *
sq_section_say_text (const SqSectionSay *say,
                     SqLabelKind kind,
                     const SqThing *thing,
                     SqTextLabel *text,
                     SqTurnedBox about,
                     double most_mm)
{
  SqSectionWord word = { .kind = kind, .thing = thing, .text = *text };
  if (text->n_lines == 0)
    return NULL;
  word.wish = (SqWish){ .of = thing,
                        .about = about,
                        .n_details = 1,
                        .most_mm = most_mm,
                        .bare = TRUE,
                        .may_lead = most_mm > SQ_SAY_NEAR_MM };
  word.wish.lesser_head[0] =
    sq_paper_box_grown (sq_text_label_shape (say->drawing, text, text->n_lines), WORD_AIR_MM);
  for (int side = 0; side < SQ_ROWS_SIDES; side++)
    word.wish.head[side] = word.wish.lesser_head[0];
  g_array_append_val (say->words, word);
  return &g_array_index (say->words, SqSectionWord, say->words->len - 1).wish;
}

/* Whose light it is and how far off; of those beside the cut the letter alone. */
static void
add_mark (const SqSectionSay *say, const SqMark *mark)
{
  const SqSection *section = say->section;
  SqPaperBox boxes[SQ_FIGURE_BOXES];
  sq_section_figure_boxes (say->view, &section->plane, mark, boxes);
  SqSectionWord word = { .kind = SQ_LABEL_MARK, .thing = &mark->thing };
  word.mark = g_new0 (SqMarkLabel, 1);
  word.mark->letter = g_strdup (sq_label_or_id (mark->label, mark->id));
  gboolean told = say->view->ground == SQ_GROUND_PAPER && sq_section_on_cut (section, mark);
  double lux = told ? sq_section_lux (section, mark) : NAN;
  if (!isnan (lux)) {
    double away = sq_vector_length (sq_vector_between (section->light->at, sq_mark_face (mark)));
    g_autofree char *distance = sq_quantity_format (away, SQ_LENGTH, say->view->units);
    word.mark->light = section->light->on
                         ? sq_quantity_format (lux, SQ_ILLUMINANCE, say->view->units)
                         : g_strdup (_ ("off"));
    /* Translators: "2.43 m from 1": a distance and the number of a light */
    word.mark->ratio = g_strdup_printf (
      _ ("%s from %s"), distance, sq_label_or_id (section->light->number, section->light->id));
  }
  word.wish = (SqWish){ .of = mark,
                        .about = sq_section_about (boxes[0]),
                        .n_details = 1,
                        .most_mm = SQ_SAY_MARK_MM,
                        .may_lead = TRUE };
  for (int side = 0; side < SQ_ROWS_SIDES; side++)
    sq_mark_label_shape (say->drawing, word.mark, side == SQ_ROWS_LEFT, &word.wish.head[side],
                         &word.wish.rows[0][side]);
  g_array_append_val (say->words, word);
}

/* Without remarks in brackets. */
static char *
material_text (const SqMaterial *material)
{
  const char *name = material->name != NULL ? material->name : material->id;
  const char *remark = strstr (name, " (");
  return remark != NULL ? g_strndup (name, (gsize)(remark - name)) : g_strdup (name);
}

static char *
heights_text (double low_m, double high_m, SqUnits units)
{
  if (high_m - low_m < LEVEL_M)
    return sq_quantity_format (high_m, SQ_LENGTH, units);
  g_autofree char *low = sq_quantity_format (low_m, SQ_LENGTH, units);
  g_autofree char *high = sq_quantity_format (high_m, SQ_LENGTH, units);
  /* Translators: from this height to that: "1.50 m to 2.40 m" */
  return g_strdup_printf (_ ("%s to %s"), low, high);
}

static void
add_panels (const SqSectionSay *say)
{
  const SqSection *section = say->section;
  for (guint i = 0; i < section->scene->panels->len; i++) {
    const SqPanel *panel = SQ_AT (SqPanel, section->scene->panels, i);
    const SqMaterial *material =
      panel->material != NULL ? sq_scene_material (section->scene, panel->material) : NULL;
    SqSidePanel side;
    SqTextLabel text = { 0 };
    if (!sq_side_panel (&section->set, panel, &side))
      continue;
    gboolean few = say->view->ground != SQ_GROUND_PAPER;
    if (few && !side.cut)
      continue;
    const char *kind = _ (sq_panel_kind_word (panel->kind));
    g_autofree char *cloth = material != NULL ? material_text (material) : NULL;
    if (cloth != NULL && panel->kind != SQ_PANEL_FLAG)
      sq_text_label_add (&text, g_strdup_printf ("%s, %s", kind, cloth));
    else
      sq_text_label_add (&text, g_strdup (kind));
    if (!few)
      sq_text_label_add (&text, heights_text (side.from.y_m, side.to.y_m, say->view->units));
    sq_section_say_text (say, SQ_LABEL_PANEL, &panel->thing, &text,
                         sq_section_about (sq_side_panel_box (say->view, &side)), SQ_SAY_TEXT_MM);
  }
}

static void
add_cameras (const SqSectionSay *say)
{
  const SqSection *section = say->section;
  for (guint i = 0; i < section->scene->cameras->len; i++) {
    const SqCamera *camera = SQ_AT (SqCamera, section->scene->cameras, i);
    if (!sq_section_shows_camera (section, camera))
      continue;
    g_autofree char *height = sq_quantity_format (camera->at.z_m, SQ_LENGTH, say->view->units);
    SqTextLabel text = { 0 };
    sq_text_label_add (&text,
                       sq_quantity_format (camera->focal_mm, SQ_MILLIMETRES, say->view->units));
    /* Translators: h is for the height of the lens. */
    sq_text_label_add (&text, g_strdup_printf (_ ("h %s"), height));
    sq_section_say_text (say, SQ_LABEL_CAMERA, &camera->thing, &text,
                         sq_section_camera_outline (say->view, section, camera), SQ_SAY_TEXT_MM);
  }
}

SqTurnedBox
sq_section_about_place (const SqView *view, SqPlace place, double half_mm)
{
  return sq_section_about (sq_paper_box_round (sq_view_paper (view, place), half_mm, half_mm));
}

/* Distance and tilt stand at the axis. */
static void
add_throw (const SqSectionSay *say)
{
  const SqSection *section = say->section;
  const SqSectionThrow *way = &section->way;
  const SqView *view = say->view;
  g_autoptr (SqSideLamp) side =
    sq_side_lamp_new (view, section->scene, &section->plane, section->light);
  double radius, front = sq_lamp_reach_mm (view, &side->lamp);
  SqPaperPoint middle;
  if (!way->aimed)
    return;
  if (sq_section_tilt_arc (view, section, front, &middle, &radius)) {
    SqTextLabel text = { 0 };
    g_autofree char *tilt = sq_quantity_format (round (fabs (way->tilt_deg)), SQ_ANGLE, SQ_METRIC);
    /* Translators: the tilt of a light: "22° down" */
    sq_text_label_add (&text,
                       g_strdup_printf (way->tilt_deg < 0.0 ? _ ("%s down") : _ ("%s up"), tilt));
    sq_section_say_text (say, SQ_LABEL_DIMENSION, &section->light->thing, &text,
                         sq_section_about (sq_paper_box_round (middle, 0.5, 0.5)), SQ_SAY_NEAR_MM);
  }
  if (way->away_m > 0.0) {
    SqPlace half = { (way->from.x_m + way->end.x_m) / 2, (way->from.y_m + way->end.y_m) / 2 };
    SqTextLabel text = { 0 };
    sq_text_label_add (&text, sq_quantity_format (way->away_m, SQ_LENGTH, view->units));
    sq_section_say_text (say, SQ_LABEL_DIMENSION, &section->light->thing, &text,
                         sq_section_about_place (view, half, 0.8), SQ_SAY_NEAR_MM);
  }
}

static void
add_shadows (const SqSectionSay *say)
{
  const SqSection *section = say->section;
  for (guint i = 0; i < section->shadows->len; i++) {
    const SqSectionShadow *shadow = &g_array_index (section->shadows, SqSectionShadow, i);
    SqTextLabel text = { 0 };
    double up = sq_section_shadow_height_m (shadow);
    if (!shadow->ends || shadow->end.x_m > section->set.most.x_m ||
        shadow->end.x_m < section->set.least.x_m)
      continue;
    g_autofree char *length = sq_quantity_format (
      up > 0.0 ? up : sq_section_shadow_length_m (shadow), SQ_LENGTH, say->view->units);
    /* Translators: whose shadow it is: a letter */
    sq_text_label_add (
      &text,
      g_strdup_printf (_ ("shadow of %s"), sq_label_or_id (shadow->mark->label, shadow->mark->id)));
    /* Translators: a shadow climbs something to a height; or it ends a distance behind somebody */
    sq_text_label_add (&text,
                       g_strdup_printf (up > 0.0 ? _ ("up to %s") : _ ("%s behind"), length));
    SqWish *wish =
      sq_section_say_text (say, SQ_LABEL_DIMENSION, &shadow->mark->thing, &text,
                           sq_section_about_place (say->view, shadow->end, 2.0), SQ_SAY_TEXT_MM);
    wish->may_lead = TRUE;
  }
}

/* On screen the strip has its figures in a list beside it: there only what says what is what. */
static void
add_few (const SqSectionSay *say)
{
  add_tag (say, say->section->light, SQ_TAG_NUMBER, 0);
  add_panels (say);
  sq_section_say_over_head (say);
}

static void
add_many (const SqSectionSay *say, SqTagRows tag_rows)
{
  add_tag (say, say->section->light, SQ_TAG_FULL, tag_rows);
  add_throw (say);
  add_panels (say);
  add_cameras (say);
  sq_section_say_over_head (say);
  add_shadows (say);
}

void
sq_section_say_all (const SqSectionSay *say, SqTagRows tag_rows)
{
  const SqSection *section = say->section;
  const SqScene *scene = section->scene;
  gboolean few = say->view->ground != SQ_GROUND_PAPER;
  for (int pass = 0; pass < 2; pass++)
    for (guint i = 0; i < scene->marks->len; i++) {
      const SqMark *mark = SQ_AT (SqMark, scene->marks, i);
      if (sq_section_shows_mark (section, mark) && sq_section_on_cut (section, mark) == (pass == 0))
        add_mark (say, mark);
    }
  if (few)
    add_few (say);
  else
    add_many (say, tag_rows);
  for (guint i = 0; i < scene->fixtures->len; i++) {
    const SqFixture *fixture = SQ_AT (SqFixture, scene->fixtures, i);
    if (fixture != section->light && sq_section_shows_lamp (section, fixture))
      add_tag (say, fixture, SQ_TAG_NUMBER, 0);
  }
  if (few)
    return;
  sq_section_say_set (say);
}
