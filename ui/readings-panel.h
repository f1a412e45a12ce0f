/* readings-panel.h: what the meter reads at each mark and probe, beside the sheet */
#pragma once

#include "light/readings.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SQ_TYPE_READINGS_PANEL (sq_readings_panel_get_type ())
G_DECLARE_FINAL_TYPE (SqReadingsPanel, sq_readings_panel, SQ, READINGS_PANEL, GtkWidget)

/* @readings: NULL: nothing is read; @remarks: what there is to say of the sheets
 * (element-type utf8) */
void sq_readings_panel_show (SqReadingsPanel *panel,
                             const SqReadings *readings,
                             const GPtrArray *remarks);

G_END_DECLS
