/* draw-page.h: a page at 1:50 for tests of what is drawn */
#pragma once

#include "draw/drawing.h"
#include "scene-text.h"

G_BEGIN_DECLS

/* A length on paper is right to a tenth of a millimetre. */
#define PAPER_MM 0.1
/* Geometry that is computed in one go is right to rounding. */
#define EXACT 1e-9

#define assert_near(got, wanted, within)                                                           \
  G_STMT_START                                                                                     \
  {                                                                                                \
    double got_ = (got), wanted_ = (wanted);                                                       \
    if (!(fabs (got_ - wanted_) <= (within)))                                                      \
      g_error ("%s:%d: %s is %.9g, wanted %.9g", __FILE__, __LINE__, #got, got_, wanted_);         \
  }                                                                                                \
  G_STMT_END

static const SqView one_to_fifty = { .mm_per_m = 20.0,
                                     .origin = { 50.0, 220.0 },
                                     .clip = { 20.0, 10.0, 306.0, 241.0 } };

/* A page that keeps what is drawn on it as shapes. */
typedef struct {
  cairo_surface_t *surface;
  cairo_t *cairo;
  SqDrawing *drawing;
} Page;

static inline Page
open_page (const SqView *view)
{
  Page page = { .surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL) };
  page.cairo = cairo_create (page.surface);
  page.drawing = sq_drawing_new (page.cairo, view);
  return page;
}

static inline void
close_page (Page *page)
{
  sq_drawing_free (page->drawing);
  cairo_destroy (page->cairo);
  cairo_surface_destroy (page->surface);
}

G_END_DECLS
