/* readings-panel.c: what the meter reads at each mark and probe, beside the sheet */
#include "readings-panel.h"

#include "base/figure-text.h"
#include "paper/not-counted.h"

#include <glib/gi18n-lib.h>

struct _SqReadingsPanel {
  GtkWidget parent_instance;
  GtkBox *box;
};

G_DEFINE_FINAL_TYPE (SqReadingsPanel, sq_readings_panel, GTK_TYPE_WIDGET)

static GtkWidget *
label_new (const char *text, double xalign, const char *style)
{
  GtkWidget *label = gtk_label_new (text);
  gtk_label_set_xalign (GTK_LABEL (label), (float)xalign);
  if (style != NULL)
    gtk_widget_add_css_class (label, style);
  return label;
}

static void
append (SqReadingsPanel *panel, GtkWidget *child)
{
  gtk_widget_set_margin_start (child, 12);
  gtk_widget_set_margin_end (child, 10);
  gtk_box_append (panel->box, child);
}

static void
append_head (SqReadingsPanel *panel, const char *text)
{
  gtk_box_append (panel->box, label_new (text, 0, "group"));
}

/* One line of a grid: its name dim at the left, figures at the right. */
static void
attach_row (GtkGrid *grid, int row, const char *name, const char *const *figures, guint n)
{
  GtkWidget *label = label_new (name, 0, "dim-label");
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_grid_attach (grid, label, 0, row, 1, 1);
  for (guint i = 0; i < n; i++)
    gtk_grid_attach (grid, label_new (figures[i], 1, "num"), 1 + (int)i, row, 1, 1);
}

static GtkGrid *
grid_new (void)
{
  GtkWidget *grid = gtk_grid_new ();
  gtk_grid_set_column_spacing (GTK_GRID (grid), 12);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 2);
  return GTK_GRID (grid);
}

static const char *
unit_of (const SqReadings *readings, const char *id)
{
  const SqThing *thing = sq_scene_find (readings->scene, id);
  const char *number =
    thing != NULL && thing->kind == &sq_fixture_kind ? ((const SqFixture *)thing)->number : NULL;
  return number != NULL ? number : id;
}

static void
append_lamps (SqReadingsPanel *panel, const SqReadings *readings, const GArray *rows)
{
  SqUnits units = (SqUnits)readings->scene->units;
  GtkGrid *grid = grid_new ();
  for (guint i = 0; i < rows->len; i++) {
    const SqReadingRow *row = &g_array_index (rows, SqReadingRow, i);
    if (!sq_reading_burns (readings, row))
      continue;
    g_autofree char *light = sq_quantity_format (row->lux, SQ_ILLUMINANCE, units);
    g_autofree char *name =
      g_strdup_printf ("%s  %s", unit_of (readings, row->id), _ (sq_role_words[row->role]));
    const char *figures[] = { light };
    attach_row (grid, (int)i, name, figures, 1);
  }
  append (panel, GTK_WIDGET (grid));
}

static void
append_mark (SqReadingsPanel *panel, const SqReadings *readings, const SqMarkReading *reading)
{
  SqUnits units = (SqUnits)readings->scene->units;
  const SqMark *mark = reading->mark;
  g_autofree char *head =
    g_strdup_printf (_ ("%s, at the face"), mark->label != NULL ? mark->label : mark->id);
  append_head (panel, head);
  g_autofree char *t_stop = sq_quantity_format (reading->t_stop, SQ_T_STOP, units);
  append (panel, label_new (t_stop, 0, "figure"));
  g_autofree char *stops = sq_stops_in_words (reading->stops_from_exposure);
  g_autofree char *from_set = g_strdup_printf (_ ("%s from the set stop"), stops);
  append (panel, label_new (from_set, 0, "dim-label"));

  GtkGrid *grid = grid_new ();
  gtk_widget_set_margin_top (GTK_WIDGET (grid), 6);
  gtk_widget_set_margin_bottom (GTK_WIDGET (grid), 8);
  const struct {
    const char *name;
    char *figure;
  } rows[] = {
    { _ ("dome, toward the camera"), sq_quantity_format (reading->lux, SQ_ILLUMINANCE, units) },
    { _ ("key"), sq_quantity_format (reading->key_lux, SQ_ILLUMINANCE, units) },
    { _ ("fill"), sq_quantity_format (reading->fill_lux, SQ_ILLUMINANCE, units) },
    { _ ("back"), sq_quantity_format (reading->back_lux, SQ_ILLUMINANCE, units) },
    { readings->scene->meter->ratio == SQ_RATIO_TOTAL ? _ ("(key + fill) : fill")
                                                      : _ ("key : fill"),
      sq_ratio_text (reading->shown_ratio) },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    const char *figures[] = { rows[i].figure };
    attach_row (grid, (int)i, rows[i].name, figures, 1);
    g_free (rows[i].figure);
  }
  append (panel, GTK_WIDGET (grid));
  append_lamps (panel, readings, reading->rows);
}

static void
append_probe (SqReadingsPanel *panel, const SqReadings *readings, const SqProbeReading *reading)
{
  SqUnits units = (SqUnits)readings->scene->units;
  gboolean spot = reading->probe->receptor == SQ_RECEPTOR_SPOT;
  g_autofree char *head = g_strdup_printf (_ ("Probe %s"), reading->probe->id);
  append_head (panel, head);
  g_autofree char *value = sq_quantity_format (spot ? reading->cd_m2 : reading->lux,
                                               spot ? SQ_LUMINANCE : SQ_ILLUMINANCE, units);
  g_autofree char *stops = sq_stops_in_words (reading->stops);
  GtkGrid *grid = grid_new ();
  const char *figures[] = { value, stops };
  static const char *const receptors[] = { N_ ("flat"), N_ ("dome"), N_ ("spot") };
  attach_row (grid, 0, _ (receptors[reading->probe->receptor]), figures, 2);
  append (panel, GTK_WIDGET (grid));
}

static void
append_words (SqReadingsPanel *panel, const char *text)
{
  GtkWidget *label = label_new (text, 0, "dim-label");
  gtk_widget_add_css_class (label, "small");
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_width_chars (GTK_LABEL (label), 24);
  append (panel, label);
}

static void
append_convention (SqReadingsPanel *panel, const SqReadings *readings)
{
  g_autofree char *set =
    sq_quantity_format (readings->set_lux, SQ_ILLUMINANCE, (SqUnits)readings->scene->units);
  g_autofree char *stop = sq_quantity_format (readings->set_t_stop, SQ_T_STOP, SQ_METRIC);
  g_autofree char *text = g_strdup_printf (
    _ ("%s, ISO %g, 1/%g s: %s on the dome (C %g). Meter on set."), stop, readings->iso,
    1.0 / readings->exposure_s, set, readings->scene->meter->dome_c);
  append_head (panel, _ ("Exposure"));
  append_words (panel, text);
}

/* A head and what stands under it, if anything does. @lines: (element-type utf8) */
static void
append_lines (SqReadingsPanel *panel, const char *head, const GPtrArray *lines)
{
  if (lines->len > 0)
    append_head (panel, head);
  for (guint i = 0; i < lines->len; i++)
    append_words (panel, g_ptr_array_index (lines, i));
}

void
sq_readings_panel_show (SqReadingsPanel *panel,
                        const SqReadings *readings,
                        const GPtrArray *remarks)
{
  GtkWidget *child;
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (panel->box))) != NULL)
    gtk_box_remove (panel->box, child);
  if (readings == NULL)
    return;
  for (guint i = 0; i < readings->marks->len; i++)
    append_mark (panel, readings, g_ptr_array_index (readings->marks, i));
  for (guint i = 0; i < readings->probes->len; i++)
    append_probe (panel, readings, g_ptr_array_index (readings->probes, i));
  if (readings->marks->len + readings->probes->len == 0)
    append_words (panel, _ ("No mark and no probe: nowhere to read."));
  append_convention (panel, readings);
  g_autoptr (GPtrArray) not_counted = sq_not_counted_lines (readings, NULL);
  append_lines (panel, _ ("On the sheet"), remarks);
  append_lines (panel, _ ("Not counted yet"), not_counted);
}

static void
readings_panel_dispose (GObject *object)
{
  SqReadingsPanel *panel = SQ_READINGS_PANEL (object);
  GtkWidget *box = GTK_WIDGET (g_steal_pointer (&panel->box));
  g_clear_pointer (&box, gtk_widget_unparent);
  G_OBJECT_CLASS (sq_readings_panel_parent_class)->dispose (object);
}

static void
sq_readings_panel_class_init (SqReadingsPanelClass *class)
{
  G_OBJECT_CLASS (class)->dispose = readings_panel_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (class), GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (class), GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
sq_readings_panel_init (SqReadingsPanel *panel)
{
  panel->box = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 0));
  gtk_widget_set_margin_bottom (GTK_WIDGET (panel->box), 12);
  gtk_widget_set_parent (GTK_WIDGET (panel->box), GTK_WIDGET (panel));
  gtk_accessible_update_property (GTK_ACCESSIBLE (panel), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Readings"), -1);
}
