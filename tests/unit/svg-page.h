/* svg-page.h: an SVG page for tests: drawn on as any other, then taken apart */
#pragma once

#include "draw-page.h"
#include "draw/svg-writer.h"
#include "svg-elements.h"

G_BEGIN_DECLS

/* The file's numbers have three decimals. */
#define FILE_MM 0.001

typedef struct {
  SqSvg *svg;
  SqDrawing *drawing;
  cairo_t *cairo;
} SvgPage;

static inline SvgPage
open_svg (void)
{
  SvgPage page = { .svg = sq_svg_new (420.0, 297.0) };
  page.cairo = sq_svg_cairo (page.svg);
  page.drawing = sq_drawing_new (page.cairo, &one_to_fifty);
  return page;
}

/* Ends the page. Returns: (transfer full) (element-type Element) */
static inline GPtrArray *
close_svg (SvgPage *page)
{
  gsize length;
  g_autofree char *text = sq_svg_end (page->svg, "A page", "drawn by a test", &length);
  g_test_message ("%s", text);
  sq_drawing_free (page->drawing);
  sq_svg_free (page->svg);
  return elements_of (text, length);
}

G_END_DECLS
