/* section-words.c: the words of a section: placed, reported, drawn */
#include "draw/section-words.h"

#include "draw/camera-symbol.h"
#include "draw/mark-label.h"
#include "draw/panel-symbol.h"
#include "draw/place-tags.h"
#include "draw/section-figure.h"
#include "draw/section-grip.h"
#include "draw/section-lamp.h"
#include "draw/section-light.h"
#include "draw/section-obstacles.h"
#include "draw/tag.h"
#include "draw/text-label.h"

#include <glib/gi18n-lib.h>

/* How far from their things words may go, in millimetres. */
#define MOST_TAG_MM 25.0
#define MOST_MARK_MM 16.0
#define MOST_TEXT_MM 16.0
#define MOST_NEAR_MM 6.0

/* Furniture is not named where its name would cost more. */
#define MOST_PIECE_COST 40.0

typedef struct {
  SqLabelKind kind;
  const SqThing *thing;
  SqTagText *tag;
  SqTagDetail first_detail;
  SqMarkLabel *mark;
  SqTextLabel text;
  gboolean quiet; /* words of the set */
  SqWish wish;
  SqPaperBox box;
} Word;

struct SqSectionWords {
  GArray *words; /* Word: the most important first */
};

typedef struct {
  SqDrawing *drawing;
  const SqView *view;
  const SqSection *section;
  GArray *words;
} Maker;

static void
clear_word (gpointer data)
{
  Word *word = data;
  sq_tag_text_free (word->tag);
  sq_mark_label_free (word->mark);
  sq_text_label_clear (&word->text);
}

static SqTurnedBox
upright (SqPaperBox box)
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
add_tag (const Maker *maker, const SqFixture *fixture, SqTagDetail detail, SqTagRows rows)
{
  const SqSection *section = maker->section;
  g_autoptr (SqSideLamp) side =
    sq_side_lamp_new (maker->view, section->scene, &section->plane, fixture);
  Word word = { .kind = SQ_LABEL_TAG, .thing = &fixture->thing, .first_detail = detail };
  word.tag = sq_tag_text_new (section->scene, fixture, maker->view->units, rows);
  word.wish = (SqWish){ .of = fixture,
                        .about = sq_lamp_outline (maker->view, &side->lamp),
                        .n_details = SQ_TAG_NUMBER - detail + 1,
                        .most_mm = MOST_TAG_MM,
                        .may_lead = TRUE };
  for (int i = 0; i < word.wish.n_details; i++) {
    SqPaperBox *rows_box = word.wish.rows[i];
    sq_tag_shape (maker->drawing, word.tag, (SqTagDetail)(detail + i), FALSE,
                  &word.wish.head[SQ_ROWS_RIGHT], &rows_box[SQ_ROWS_RIGHT]);
    word.wish.head[SQ_ROWS_LEFT] = mirrored (word.wish.head[SQ_ROWS_RIGHT]);
    rows_box[SQ_ROWS_LEFT] = mirrored (rows_box[SQ_ROWS_RIGHT]);
  }
  g_array_append_val (maker->words, word);
}

/* Lines beside a thing. @text is taken. Returns: (nullable): its wish, until the next is added */
static SqWish *
add_text (const Maker *maker,
          SqLabelKind kind,
          const SqThing *thing,
          SqTextLabel *text,
          SqTurnedBox about,
          double most_mm,
          gboolean quiet)
{
  Word word = { .kind = kind, .thing = thing, .text = *text, .quiet = quiet };
  if (text->n_lines == 0)
    return NULL;
  word.wish = (SqWish){ .of = thing,
                        .about = about,
                        .n_details = 1,
                        .most_mm = most_mm,
                        .may_lead = most_mm > MOST_NEAR_MM };
  word.wish.lesser_head[0] = sq_text_label_shape (maker->drawing, text, text->n_lines);
  for (int side = 0; side < SQ_ROWS_SIDES; side++)
    word.wish.head[side] = word.wish.lesser_head[0];
  g_array_append_val (maker->words, word);
  return &g_array_index (maker->words, Word, maker->words->len - 1).wish;
}

/* Whose light it is and how far off; of those beside the cut the letter alone. */
static void
add_mark (const Maker *maker, const SqMark *mark)
{
  const SqSection *section = maker->section;
  SqPaperBox boxes[SQ_FIGURE_BOXES];
  sq_section_figure_boxes (maker->view, &section->plane, mark, boxes);
  Word word = { .kind = SQ_LABEL_MARK, .thing = &mark->thing };
  word.mark = g_new0 (SqMarkLabel, 1);
  word.mark->letter = g_strdup (sq_label_or_id (mark->label, mark->id));
  double lux = sq_section_on_cut (section, mark) ? sq_section_lux (section, mark) : NAN;
  if (!isnan (lux)) {
    double away = sq_vector_length (sq_vector_between (section->light->at, sq_mark_face (mark)));
    g_autofree char *distance = sq_quantity_format (away, SQ_LENGTH, maker->view->units);
    word.mark->light = sq_quantity_format (lux, SQ_ILLUMINANCE, maker->view->units);
    /* Translators: "2.43 m from 1": a distance and the number of a light */
    word.mark->ratio = g_strdup_printf (
      _ ("%s from %s"), distance, sq_label_or_id (section->light->number, section->light->id));
  }
  word.wish = (SqWish){ .of = mark,
                        .about = upright (boxes[0]),
                        .n_details = 1,
                        .most_mm = MOST_MARK_MM,
                        .may_lead = TRUE };
  for (int side = 0; side < SQ_ROWS_SIDES; side++)
    sq_mark_label_shape (maker->drawing, word.mark, side == SQ_ROWS_LEFT, &word.wish.head[side],
                         &word.wish.rows[0][side]);
  g_array_append_val (maker->words, word);
}

static char *
heights_text (double low_m, double high_m, SqUnits units)
{
  g_autofree char *low = sq_quantity_format (low_m, SQ_LENGTH, units);
  g_autofree char *high = sq_quantity_format (high_m, SQ_LENGTH, units);
  /* Translators: from this height to that: "1.50 m to 2.40 m" */
  return g_strdup_printf (_ ("%s to %s"), low, high);
}

static void
add_panels (const Maker *maker)
{
  const SqSection *section = maker->section;
  for (guint i = 0; i < section->scene->panels->len; i++) {
    const SqPanel *panel = SQ_AT (SqPanel, section->scene->panels, i);
    const SqMaterial *material =
      panel->material != NULL ? sq_scene_material (section->scene, panel->material) : NULL;
    SqSidePanel side;
    SqTextLabel text = { 0 };
    if (!sq_side_panel (&section->set, panel, &side))
      continue;
    const char *kind = _ (sq_panel_kind_word (panel->kind));
    if (material != NULL && panel->kind != SQ_PANEL_FLAG)
      sq_text_label_add (&text, g_strdup_printf ("%s, %s", kind, material->name));
    else
      sq_text_label_add (&text, g_strdup (kind));
    sq_text_label_add (&text, heights_text (side.from.y_m, side.to.y_m, maker->view->units));
    add_text (maker, SQ_LABEL_PANEL, &panel->thing, &text,
              upright (sq_side_panel_box (maker->view, &side)), MOST_TEXT_MM, FALSE);
  }
}

static void
add_cameras (const Maker *maker)
{
  const SqSection *section = maker->section;
  for (guint i = 0; i < section->scene->cameras->len; i++) {
    const SqCamera *camera = SQ_AT (SqCamera, section->scene->cameras, i);
    if (!sq_section_shows_camera (section, camera))
      continue;
    g_autofree char *height = sq_quantity_format (camera->at.z_m, SQ_LENGTH, maker->view->units);
    SqTextLabel text = { 0 };
    sq_text_label_add (&text,
                       sq_quantity_format (camera->focal_mm, SQ_MILLIMETRES, maker->view->units));
    /* Translators: h is for the height of the lens. */
    sq_text_label_add (&text, g_strdup_printf (_ ("h %s"), height));
    add_text (maker, SQ_LABEL_CAMERA, &camera->thing, &text,
              sq_section_camera_outline (maker->view, section, camera), MOST_TEXT_MM, FALSE);
  }
}

static SqTurnedBox
about_place (const SqView *view, SqPlace place, double half_mm)
{
  return upright (sq_paper_box_round (sq_view_paper (view, place), half_mm, half_mm));
}

/* Distance and tilt stand at the axis. */
static void
add_throw (const Maker *maker)
{
  const SqSection *section = maker->section;
  const SqSectionThrow *way = &section->way;
  const SqView *view = maker->view;
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
    add_text (maker, SQ_LABEL_DIMENSION, &section->light->thing, &text,
              upright (sq_paper_box_round (middle, 0.5, 0.5)), MOST_NEAR_MM, FALSE);
  }
  if (way->away_m > 0.0) {
    SqPlace half = { (way->from.x_m + way->end.x_m) / 2, (way->from.y_m + way->end.y_m) / 2 };
    SqTextLabel text = { 0 };
    sq_text_label_add (&text, sq_quantity_format (way->away_m, SQ_LENGTH, view->units));
    add_text (maker, SQ_LABEL_DIMENSION, &section->light->thing, &text,
              about_place (view, half, 0.8), MOST_NEAR_MM, FALSE);
  }
}

static void
add_shadows (const Maker *maker)
{
  const SqSection *section = maker->section;
  for (guint i = 0; i < section->shadows->len; i++) {
    const SqSectionShadow *shadow = &g_array_index (section->shadows, SqSectionShadow, i);
    SqTextLabel text = { 0 };
    double up = sq_section_shadow_height_m (shadow);
    if (!shadow->ends)
      continue;
    g_autofree char *length = sq_quantity_format (
      up > 0.0 ? up : sq_section_shadow_length_m (shadow), SQ_LENGTH, maker->view->units);
    /* Translators: whose shadow it is: a letter */
    sq_text_label_add (
      &text,
      g_strdup_printf (_ ("shadow of %s"), sq_label_or_id (shadow->mark->label, shadow->mark->id)));
    /* Translators: a shadow climbs something to a height; or it ends a distance behind somebody */
    sq_text_label_add (&text,
                       g_strdup_printf (up > 0.0 ? _ ("up to %s") : _ ("%s behind"), length));
    SqWish *wish = add_text (maker, SQ_LABEL_DIMENSION, &shadow->mark->thing, &text,
                             about_place (maker->view, shadow->end, 2.0), MOST_TEXT_MM, TRUE);
    wish->may_lead = TRUE;
  }
}

static void
add_openings (const Maker *maker)
{
  static const char *const words[] = { N_ ("window"), N_ ("door"), N_ ("opening") };
  g_autoptr (GArray) openings = sq_section_openings (&maker->section->set);
  for (guint i = 0; i < openings->len; i++) {
    const SqSideOpening *opening = &g_array_index (openings, SqSideOpening, i);
    if (opening->to_m < maker->section->set.least.x_m ||
        opening->from_m > maker->section->set.most.x_m || opening->opening->common.hidden)
      continue;
    SqTextLabel text = { .plain = TRUE };
    sq_text_label_add (&text, g_strdup (_ (words[opening->opening->kind])));
    g_autofree char *sill = sq_quantity_format (opening->sill_m, SQ_LENGTH, maker->view->units);
    g_autofree char *head = sq_quantity_format (opening->head_m, SQ_LENGTH, maker->view->units);
    sq_text_label_add (&text, g_strdup_printf (_ ("head %s"), head));
    sq_text_label_add (&text, g_strdup_printf (_ ("sill %s"), sill));
    SqPaperPoint low = sq_view_paper (maker->view, (SqPlace){ opening->from_m, opening->sill_m });
    SqPaperPoint high = sq_view_paper (maker->view, (SqPlace){ opening->to_m, opening->head_m });
    SqPaperBox box = { low.x_mm, high.y_mm, high.x_mm - low.x_mm, low.y_mm - high.y_mm };
    add_text (maker, SQ_LABEL_OPENING, &opening->opening->thing, &text, upright (box), MOST_TEXT_MM,
              TRUE);
  }
}

/* What a name stands about: where the box has room for it, so much less that it stands inside. */
static SqPaperBox
inside_if_it_fits (SqPaperBox box, SqPaperBox name)
{
  const double air_mm = 2.0;
  double across = box.width_mm / 2 - name.width_mm - air_mm;
  double up = box.height_mm / 2 - name.height_mm - air_mm;
  if (box.width_mm < name.width_mm + air_mm || box.height_mm < 2.0 * (name.height_mm + air_mm))
    return box;
  return sq_paper_box_round (sq_paper_box_middle (box), MAX (across, 0.1), MAX (up, 0.1));
}

static void
add_pieces (const Maker *maker)
{
  const SqSection *section = maker->section;
  for (guint i = 0; i < section->scene->pieces->len; i++) {
    const SqPiece *piece = SQ_AT (SqPiece, section->scene->pieces, i);
    SqPlace least, most;
    gboolean cut;
    if (piece->label == NULL || *piece->label == '\0' ||
        !sq_section_piece (&section->set, piece, &least, &most, &cut))
      continue;
    g_autofree char *top = sq_quantity_format (most.y_m, SQ_LENGTH, maker->view->units);
    SqTextLabel text = { .plain = TRUE };
    sq_text_label_add (&text, g_strdup_printf ("%s %s", piece->label, top));
    SqPaperPoint low = sq_view_paper (maker->view, least), high = sq_view_paper (maker->view, most);
    SqPaperBox box = { low.x_mm, high.y_mm, high.x_mm - low.x_mm, low.y_mm - high.y_mm };
    box = inside_if_it_fits (box, sq_text_label_shape (maker->drawing, &text, 1));
    SqWish *wish =
      add_text (maker, SQ_LABEL_PIECE, &piece->thing, &text, upright (box), MOST_NEAR_MM, TRUE);
    wish->most_cost = MOST_PIECE_COST;
  }
}

/* The ceiling, and the pipe that the light hangs from. */
static void
add_over_head (const Maker *maker)
{
  const SqSection *section = maker->section;
  double ceiling = section->scene->room->ceiling_height_m;
  double hang = sq_hang_height_m (section->scene, section->light);
  if (!isnan (hang) && !(hang >= ceiling)) {
    g_autofree char *height = sq_quantity_format (hang, SQ_LENGTH, maker->view->units);
    SqTextLabel text = { 0 };
    /* Translators: of the pipe that a light hangs from: its height, worked out from the lens */
    sq_text_label_add (&text, g_strdup_printf (_ ("pipe about %s"), height));
    add_text (maker, SQ_LABEL_WALL, &section->light->thing, &text,
              about_place (maker->view, (SqPlace){ 0.0, hang }, 1.5), MOST_TEXT_MM, FALSE);
  }
  if (!isnan (ceiling)) {
    g_autofree char *height = sq_quantity_format (ceiling, SQ_LENGTH, maker->view->units);
    SqTextLabel text = { .plain = TRUE };
    sq_text_label_add (&text, g_strdup_printf (_ ("ceiling %s"), height));
    SqPaperPoint from = sq_view_paper (maker->view, (SqPlace){ section->set.least.x_m, ceiling });
    SqPaperPoint to = sq_view_paper (maker->view, (SqPlace){ section->set.most.x_m, ceiling });
    SqPaperPoint middle = { from.x_mm + 0.72 * (to.x_mm - from.x_mm), from.y_mm };
    add_text (maker, SQ_LABEL_WALL, &section->scene->room->thing, &text,
              upright (sq_paper_box_round (middle, 0.18 * (to.x_mm - from.x_mm), 0.2)),
              MOST_NEAR_MM, TRUE);
  }
}

static void
add_all (const Maker *maker, SqTagRows tag_rows)
{
  const SqSection *section = maker->section;
  const SqScene *scene = section->scene;
  for (int pass = 0; pass < 2; pass++)
    for (guint i = 0; i < scene->marks->len; i++) {
      const SqMark *mark = SQ_AT (SqMark, scene->marks, i);
      if (sq_section_shows_mark (section, mark) && sq_section_on_cut (section, mark) == (pass == 0))
        add_mark (maker, mark);
    }
  add_tag (maker, section->light, SQ_TAG_FULL, tag_rows);
  add_throw (maker);
  add_panels (maker);
  add_cameras (maker);
  add_over_head (maker);
  add_shadows (maker);
  for (guint i = 0; i < scene->fixtures->len; i++) {
    const SqFixture *fixture = SQ_AT (SqFixture, scene->fixtures, i);
    if (fixture != section->light && sq_section_shows_lamp (section, fixture))
      add_tag (maker, fixture, SQ_TAG_NUMBER, 0);
  }
  add_openings (maker);
  add_pieces (maker);
}

SqSectionWords *
sq_section_words_new (SqDrawing *drawing,
                      const SqSection *section,
                      SqTagRows tag_rows,
                      const GArray *dimensions,
                      const GArray *lines)
{
  SqSectionWords *words = g_new0 (SqSectionWords, 1);
  words->words = g_array_new (FALSE, FALSE, sizeof (Word));
  g_array_set_clear_func (words->words, clear_word);
  const Maker maker = { drawing, drawing->view, section, words->words };
  add_all (&maker, tag_rows);

  g_autoptr (SqLabelObstacles) obstacles =
    sq_section_obstacles (drawing->view, section, dimensions, lines);
  g_autofree SqWish *wishes = g_new (SqWish, words->words->len + 1);
  for (guint i = 0; i < words->words->len; i++)
    wishes[i] = g_array_index (words->words, Word, i).wish;
  sq_place_tags (wishes, words->words->len, obstacles);
  for (guint i = 0; i < words->words->len; i++) {
    Word *word = &g_array_index (words->words, Word, i);
    word->wish = wishes[i];
    word->box = sq_wish_box (&word->wish);
  }
  return words;
}

void
sq_section_words_free (SqSectionWords *words)
{
  if (words == NULL)
    return;
  g_array_unref (words->words);
  g_free (words);
}

void
sq_section_words_report (const SqSectionWords *words, GArray *labels)
{
  for (guint i = 0; i < words->words->len; i++) {
    const Word *word = &g_array_index (words->words, Word, i);
    SqLabel label = { .kind = word->kind, .thing = word->thing, .box = word->box };
    if (word->kind == SQ_LABEL_TAG)
      label.detail = word->first_detail + word->wish.detail;
    if (!word->wish.left_out)
      g_array_append_val (labels, label);
  }
}

/* Lines lean toward what they name. */
static void
draw_lines (SqDrawing *drawing, const Word *word)
{
  double off = word->wish.at.x_mm - word->wish.about.middle.x_mm, half = word->box.width_mm / 2;
  SqAlign align = off > half ? SQ_ALIGN_LEFT : off < -half ? SQ_ALIGN_RIGHT : SQ_ALIGN_CENTRE;
  sq_draw_text_label (drawing, word->wish.at, &word->text, word->text.n_lines, align);
}

void
sq_section_words_draw (const SqSectionWords *words, SqDrawing *drawing)
{
  for (guint i = 0; i < words->words->len; i++) {
    const Word *word = &g_array_index (words->words, Word, i);
    if (word->wish.has_leader && !word->wish.left_out)
      sq_draw_line (drawing, word->wish.leader.from, word->wish.leader.to, SQ_PEN_18,
                    sq_ink (drawing->view, SQ_INK));
  }
  for (guint i = words->words->len; i > 0; i--) {
    const Word *word = &g_array_index (words->words, Word, i - 1);
    gboolean left = word->wish.side == SQ_ROWS_LEFT;
    if (word->wish.left_out)
      continue;
    if (word->kind == SQ_LABEL_TAG)
      sq_draw_tag (drawing, word->wish.at, word->tag, word->first_detail + word->wish.detail, left);
    else if (word->kind == SQ_LABEL_MARK)
      sq_draw_mark_label (drawing, word->wish.at, word->mark, left);
    else
      draw_lines (drawing, word);
  }
}
