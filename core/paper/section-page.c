/* section-page.c: the page of a section: the cut, to scale, with what its readers need beside it */
#include "paper/plot-private.h"
#include "paper/scale.h"
#include "paper/section-blocks.h"
#include "paper/side-column.h"

#include <glib/gi18n-lib.h>

/* Kept free of the drawing, for its words and the height scale; under it for its name. */
#define SIDE_MM 15.0
#define LABELS_MM 11.0
#define NAME_MM 13.0

/* So far right of the middle, so that the height scale has room even where margins are least. */
#define SCALE_ROOM_MM 4.5

/* On sheets without side columns the words stand in a band under the drawing. */
#define BAND_MM 58.0
#define HIGH_BAND_MM 74.0 /* on a sheet that stands upright */
#define WIDE_MM 220.0
#define MOST_HIGH_MORE_MM 24.0
#define MOST_MORE_MM 9.0 /* of a low band whose words would run on to a second sheet */

#define KEY_MM 46.0
#define BAND_KEY_MM 28.0

#define LARGEST_SCALE 10.0

/* page->data of a section's pages. */
typedef struct {
  SqSection *section;
  SqPaperBox band; /* no width: there are side columns */
  double squeeze;
  guint first; /* of its pages, in plot->pages */
} SectionPages;

static void
section_pages_free (gpointer data)
{
  SectionPages *pages = data;
  sq_section_free (pages->section);
  g_free (pages);
}

/* The band's columns: for the cut, the light, the heights; legend and cautions need more. A sheet
 * that stands upright has room for three, which are longer. */
static void
take_band (SqFlow *flow, SqPaperBox band)
{
  const double four[] = { 0.0, 0.21, 0.455, 0.69, 1.0 }, three[] = { 0.0, 0.3, 0.62, 1.0 };
  gboolean wide = band.width_mm >= WIDE_MM;
  const double *shares = wide ? four : three;
  flow->n_first = wide ? 4 : 3;
  for (guint k = 0; k < flow->n_first; k++)
    flow->first[k] = (SqPaperBox){ band.x_mm + shares[k] * band.width_mm, band.y_mm,
                                   (shares[k + 1] - shares[k]) * band.width_mm, band.height_mm };
}

static int
run_words (const SqPlot *plot, const SectionPages *pages, SqDrawing *drawing, int page)
{
  const SqPlotPage *first = sq_plot_page (plot, (int)pages->first);
  gboolean in_band = pages->band.width_mm > 0.0;
  const SqSideColumn column = { .scene = plot->scene,
                                .readings = plot->readings,
                                .section = pages->section,
                                .units = plot->units };
  SqSheetLayout text;
  SqFlow flow;
  sq_sheet_lay_out (first->sheet, first->layout.portrait, SQ_SHEET_TEXT, &text);
  sq_flow_init (&flow, drawing, &first->layout, &text, first->number);
  flow.page = page;
  flow.squeeze = pages->squeeze;
  if (in_band)
    take_band (&flow, pages->band);
  sq_section_cut_block (&flow, pages->section, in_band ? BAND_KEY_MM : KEY_MM);
  sq_section_figures_block (&flow, pages->section);
  sq_section_heights_block (&flow, pages->section);
  sq_section_legend_block (&flow, pages->section);
  sq_caution_block (&flow, &column);
  if (!in_band)
    sq_on_the_day_block (&flow);
  return sq_flow_page (&flow);
}

/* Its name, large, under the drawing, with the scale. Returns: the box of both */
static SqPaperBox
draw_name (const SectionPages *pages, const SqPlotPage *page, SqDrawing *drawing, gboolean only_box)
{
  const double down_mm = 9.0, apart_mm = 4.0;
  const SqView *view = drawing->view;
  SqPaperBox field = page->layout.field;
  SqPaperPoint at = sq_view_paper (view, pages->section->set.least);
  g_autofree char *title = sq_section_title (pages->section);
  g_autofree char *scale = sq_page_scale_text (page);
  SqType type = { .cap_mm = SQ_TYPE_NAME, .weight = 700, .colour = sq_ink (view, SQ_INK) };
  SqType small = { .cap_mm = SQ_TYPE_SMALL, .weight = 500, .colour = sq_ink (view, SQ_MID) };
  double scale_mm = apart_mm + sq_text_width_mm (drawing, scale, &small);
  type.width_mm = field.x_mm + field.width_mm - SIDE_MM - at.x_mm - scale_mm;
  type.one_line = TRUE;
  double title_mm = MIN (sq_text_width_mm (drawing, title, &type), type.width_mm);
  at.y_mm += down_mm;
  SqPaperBox box = { at.x_mm, at.y_mm - type.cap_mm, title_mm + scale_mm, 1.4 * type.cap_mm };
  if (only_box)
    return box;
  sq_draw_text (drawing, at, title, &type);
  at.x_mm += title_mm + apart_mm;
  sq_draw_text (drawing, at, scale, &small);
  return box;
}

static void
draw_frames (const SectionPages *pages, const SqPlotPage *page, SqDrawing *drawing)
{
  SqColour ink = sq_ink (drawing->view, SQ_INK);
  SqPaperBox band = pages->band;
  for (guint k = 0; k < page->layout.n_columns; k++) {
    sq_draw_box_path (drawing, page->layout.columns[k], 0.0);
    sq_draw_stroke (drawing, SQ_PEN_35, ink);
  }
  if (band.width_mm <= 0.0)
    return;
  sq_draw_line (drawing, (SqPaperPoint){ band.x_mm, band.y_mm },
                (SqPaperPoint){ band.x_mm + band.width_mm, band.y_mm }, SQ_PEN_35, ink);
  sq_draw_line (drawing, (SqPaperPoint){ band.x_mm, band.y_mm + band.height_mm },
                (SqPaperPoint){ band.x_mm + band.width_mm, band.y_mm + band.height_mm }, SQ_PEN_35,
                ink);
}

static void
draw_section_page (const SqPlot *plot, const SqPlotPage *page, SqDrawing *drawing)
{
  const SectionPages *pages = page->data;
  const SqSectionRequest request = { .section = pages->section,
                                     .tag_rows = plot->tag_rows,
                                     .keep_clear = draw_name (pages, page, drawing, TRUE) };
  sq_draw_section (drawing, &request);
  draw_name (pages, page, drawing, FALSE);
  draw_frames (pages, page, drawing);
  sq_page_draw_foot (plot, page, drawing, SQ_FOOT_BAR);
  run_words (plot, pages, drawing, 0);
}

static void
draw_words_page (const SqPlot *plot, const SqPlotPage *page, SqDrawing *drawing)
{
  const SectionPages *pages = page->data;
  const SqPlotPage *first = sq_plot_page (plot, (int)pages->first);
  run_words (plot, pages, drawing, page->number - first->number);
}

/* TRUE if the section fits the page's field at 1:@denominator with its words round it. */
static gboolean
fits (const SqPlotPage *page, const SqSectionSet *set, double denominator)
{
  return sq_scale_fits (denominator, set->most.x_m - set->least.x_m, set->most.y_m - set->least.y_m,
                        page->layout.field.width_mm - 2.0 * SIDE_MM,
                        page->layout.field.height_mm - 2.0 * LABELS_MM);
}

/* Half of what the drawing leaves free over and under it, @most_mm at most, is for the words. */
static void
widen_band (SqPlotPage *page, SectionPages *pages, double denominator, double most_mm)
{
  const SqSectionSet *set = &pages->section->set;
  SqPaperBox *field = &page->layout.field;
  double drawn_mm = (set->most.y_m - set->least.y_m) * 1000.0 / denominator + 2.0 * LABELS_MM;
  double more_mm = CLAMP ((field->height_mm - drawn_mm) / 2.0, 0.0, most_mm);
  if (pages->band.width_mm <= 0.0)
    return;
  field->height_mm -= more_mm;
  pages->band.y_mm -= more_mm;
  pages->band.height_mm += more_mm;
}

static void
take_scale (SqPlotPage *page, const SqSectionSet *set, double denominator)
{
  page->view.clip = page->layout.field;
  sq_page_take_scale (page, denominator, set->least, set->most);
  page->view.origin.x_mm += SCALE_ROOM_MM;
}

/* Name, and on small sheets the words, take their room off the field; then the scale is chosen
 * again, unless it was asked for. */
static void
share_field (SqPlotPage *page, SectionPages *pages, const SqPageWish *wish)
{
  const SqSectionSet *set = &pages->section->set;
  SqPaperBox *field = &page->layout.field;
  double denominator = page->denominator;
  if (page->layout.n_columns > 1) { /* one is plenty */
    SqPaperBox *columns = page->layout.columns;
    SqPaperBox last = columns[page->layout.n_columns - 1];
    field->width_mm += last.x_mm - columns[0].x_mm;
    columns[0] = last;
    page->layout.n_columns = 1;
  }
  field->height_mm -= NAME_MM;
  if (page->layout.n_columns == 0) {
    double band_mm = field->width_mm >= WIDE_MM ? BAND_MM : HIGH_BAND_MM;
    field->height_mm -= band_mm;
    pages->band = (SqPaperBox){ field->x_mm, field->y_mm + field->height_mm + NAME_MM,
                                field->width_mm, band_mm };
    if (wish->denominator > 0.0 && !fits (page, set, denominator)) {
      field->height_mm += band_mm; /* the words go on a page of their own */
      pages->band = (SqPaperBox){ 0 };
    }
  }
  if (wish->denominator == 0.0)
    for (guint n = 0; (denominator = sq_scale_usual (page->view.units, n)) > 0.0; n++)
      if (denominator >= LARGEST_SCALE && fits (page, set, denominator))
        break;
  if (denominator <= 0.0)
    denominator = page->denominator;
  if (pages->band.width_mm < WIDE_MM)
    widen_band (page, pages, denominator, MOST_HIGH_MORE_MM);
  take_scale (page, set, denominator);
}

/* How many pages of words follow. */
static int
rehearse (const SqPlot *plot, SectionPages *pages)
{
  const double usual = 1.0, tight = 0.8;
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t *cairo = cairo_create (surface);
  SqDrawing *drawing = sq_drawing_new (cairo, &sq_plot_page (plot, (int)pages->first)->view);
  pages->squeeze = usual;
  int n = run_words (plot, pages, drawing, -1);
  if (n > 0) {
    pages->squeeze = tight;
    n = run_words (plot, pages, drawing, -1);
  }
  sq_drawing_free (drawing);
  cairo_destroy (cairo);
  cairo_surface_destroy (surface);
  return n;
}

static void
say_which (SqPlot *plot, const SqFixture *light)
{
  sq_plot_remark (plot, g_strdup_printf (_ ("section: no light is named, drawn through %s (%s)"),
                                         sq_label_or_id (light->number, light->id), light->id));
}

gboolean
sq_make_section_pages (SqPlot *plot,
                       const SqPageWish *wish,
                       GCancellable *cancellable,
                       GError **error)
{
  const SqFixture *light = sq_section_light (plot->scene, wish->light, error);
  if (light == NULL)
    return FALSE;
  SectionPages *pages = sq_plot_keep (plot, g_new0 (SectionPages, 1), section_pages_free);
  pages->section = sq_section_new (plot->scene, plot->readings, light);
  pages->first = plot->pages->len;
  g_autofree char *title = sq_section_title (pages->section);
  SqPlotPage *page = sq_plot_add_page (plot, wish, g_strdup (title), draw_section_page);
  page->names_title = TRUE;
  page->data = pages;
  if (!sq_page_place (plot, page, wish, SQ_SHEET_BESIDE, pages->section->set.least,
                      pages->section->set.most, error))
    return FALSE;
  share_field (page, pages, wish);
  int n_words = rehearse (plot, pages);
  if (n_words > 0 && pages->band.width_mm >= WIDE_MM) {
    widen_band (page, pages, page->denominator, MOST_MORE_MM);
    take_scale (page, &pages->section->set, page->denominator);
    n_words = rehearse (plot, pages);
  }
  for (int k = 0; k < n_words; k++) {
    /* Translators: name of a page: "Section through 1 and A: words" */
    SqPlotPage *words =
      sq_plot_add_page (plot, wish, g_strdup_printf (_ ("%s: words"), title), draw_words_page);
    sq_page_take_sheet (words, page->sheet, page->layout.portrait, SQ_SHEET_TEXT);
    words->denominator = page->denominator;
    words->data = pages;
    words->names_title = TRUE;
  }
  if (wish->light == NULL && plot->scene->fixtures->len > 1)
    say_which (plot, light);
  return !g_cancellable_set_error_if_cancelled (cancellable, error);
}
