/* section-say-set.c: what a section says of openings, furniture, ceiling and pipe */
#include "draw/section-lamp.h"
#include "draw/section-say.h"

#include <glib/gi18n-lib.h>

/* Furniture is not named where its name would cost more. */
#define MOST_PIECE_COST 14.0

static void
add_openings (const SqSectionSay *say)
{
  static const char *const words[] = { N_ ("window"), N_ ("door"), N_ ("opening") };
  g_autoptr (GArray) openings = sq_section_openings (&say->section->set);
  for (guint i = 0; i < openings->len; i++) {
    const SqSideOpening *opening = &g_array_index (openings, SqSideOpening, i);
    if (opening->to_m < say->section->set.least.x_m ||
        opening->from_m > say->section->set.most.x_m || opening->opening->common.hidden)
      continue;
    SqTextLabel text = { .plain = TRUE };
    sq_text_label_add (&text, g_strdup (_ (words[opening->opening->kind])));
    g_autofree char *sill = sq_quantity_format (opening->sill_m, SQ_LENGTH, say->view->units);
    g_autofree char *head = sq_quantity_format (opening->head_m, SQ_LENGTH, say->view->units);
    sq_text_label_add (&text, g_strdup_printf (_ ("head %s"), head));
    sq_text_label_add (&text, g_strdup_printf (_ ("sill %s"), sill));
    SqPaperPoint low = sq_view_paper (say->view, (SqPlace){ opening->from_m, opening->sill_m });
    SqPaperPoint high = sq_view_paper (say->view, (SqPlace){ opening->to_m, opening->head_m });
    SqPaperBox box = { low.x_mm, high.y_mm, high.x_mm - low.x_mm, low.y_mm - high.y_mm };
    sq_section_say_text (say, SQ_LABEL_OPENING, &opening->opening->thing, &text,
                         sq_section_about (box), SQ_SAY_TEXT_MM);
  }
}

/* What a name stands about: where the box has room for it, so much less that it stands inside. */
static SqPaperBox
inside_if_it_fits (SqPaperBox box, SqPaperBox name)
{
  const double air_mm = 2.6;
  double across = box.width_mm / 2 - name.width_mm - air_mm;
  double up = box.height_mm / 2 - name.height_mm - air_mm;
  if (box.width_mm < name.width_mm + air_mm || box.height_mm < 2.0 * (name.height_mm + air_mm))
    return box;
  return sq_paper_box_round (sq_paper_box_middle (box), MAX (across, 0.1), MAX (up, 0.1));
}

static void
add_pieces (const SqSectionSay *say)
{
  const SqSection *section = say->section;
  for (guint i = 0; i < section->scene->pieces->len; i++) {
    const SqPiece *piece = SQ_AT (SqPiece, section->scene->pieces, i);
    SqPlace least, most;
    gboolean cut;
    if (piece->label == NULL || *piece->label == '\0' ||
        !sq_section_piece (&section->set, piece, &least, &most, &cut))
      continue;
    g_autofree char *top = sq_quantity_format (most.y_m, SQ_LENGTH, say->view->units);
    SqTextLabel text = { .plain = TRUE };
    sq_text_label_add (&text, g_strdup_printf ("%s %s", piece->label, top));
    SqPaperPoint low = sq_view_paper (say->view, least), high = sq_view_paper (say->view, most);
    SqPaperBox box = { low.x_mm, high.y_mm, high.x_mm - low.x_mm, low.y_mm - high.y_mm };
    box = inside_if_it_fits (box, sq_text_label_shape (say->drawing, &text, 1));
    SqWish *wish = sq_section_say_text (say, SQ_LABEL_PIECE, &piece->thing, &text,
                                        sq_section_about (box), SQ_SAY_NEAR_MM);
    wish->most_cost = MOST_PIECE_COST;
  }
}

/* The ceiling, and the pipe that the light hangs from. */
void
sq_section_say_over_head (const SqSectionSay *say)
{
  const SqSection *section = say->section;
  double ceiling = section->scene->room->ceiling_height_m;
  double hang = sq_hang_height_m (section->scene, section->light);
  if (!isnan (hang) && !(hang >= ceiling)) {
    g_autofree char *height = sq_quantity_format (hang, SQ_LENGTH, say->view->units);
    SqTextLabel text = { 0 };
    /* Translators: of the pipe that a light hangs from: its height, worked out from the lens */
    sq_text_label_add (&text, g_strdup_printf (_ ("pipe about %s"), height));
    sq_section_say_text (say, SQ_LABEL_WALL, &section->light->thing, &text,
                         sq_section_about_place (say->view, (SqPlace){ 0.0, hang }, 1.5),
                         SQ_SAY_TEXT_MM);
  }
  if (!isnan (ceiling)) {
    g_autofree char *height = sq_quantity_format (ceiling, SQ_LENGTH, say->view->units);
    SqTextLabel text = { .plain = TRUE };
    sq_text_label_add (&text, g_strdup_printf (_ ("ceiling %s"), height));
    SqPaperPoint from = sq_view_paper (say->view, (SqPlace){ section->set.least.x_m, ceiling });
    SqPaperPoint to = sq_view_paper (say->view, (SqPlace){ section->set.most.x_m, ceiling });
    SqPaperPoint middle = { from.x_mm + 0.72 * (to.x_mm - from.x_mm), from.y_mm };
    sq_section_say_text (
      say, SQ_LABEL_WALL, &section->scene->room->thing, &text,
      sq_section_about (sq_paper_box_round (middle, 0.18 * (to.x_mm - from.x_mm), 0.2)),
      SQ_SAY_NEAR_MM);
  }
}

void
sq_section_say_set (const SqSectionSay *say)
{
  add_openings (say);
  add_pieces (say);
}
