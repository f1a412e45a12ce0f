/* export-private.h: one format a source; for export*.c alone */
#pragma once

#include "paper/plot-private.h"

G_BEGIN_DECLS

/* All pages as one PDF, or one page as SVG or PNG, appended to @bytes. Returns: FALSE with one line
 * if it cannot be drawn */
gboolean sq_export_pdf (const SqPlot *plot, GByteArray *bytes, GError **error);
gboolean sq_export_svg (const SqPlot *plot, int page, GByteArray *bytes, GError **error);
gboolean sq_export_png (const SqPlot *plot, int page, GByteArray *bytes, GError **error);

/* Of the whole plot, for people: `Production: title`, and look, scale and sheet. Returns: (transfer
 * full) */
char *sq_export_title (const SqPlot *plot);
char *sq_export_subject (const SqPlot *plot);

/* Who drew it. (transfer full) */
char *sq_export_author (const SqPlot *plot);

/* Draws @page over @surface, @units_per_mm of its units to the millimetre. */
void sq_export_draw (const SqPlot *plot, cairo_surface_t *surface, int page, double units_per_mm);

/* A cairo_write_func_t over a GByteArray. */
cairo_status_t sq_export_append (void *bytes, const unsigned char *data, unsigned int length);

/* Returns: @status is no failure; else FALSE with one line */
gboolean sq_export_check (cairo_status_t status, GError **error);

G_END_DECLS
