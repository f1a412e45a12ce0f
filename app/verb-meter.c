/* verb-meter.c: readings at every probe and mark: tables for people, JSON and CSV for programs */
#include "answer.h"
#include "arguments.h"
#include "base/figure-text.h"
#include "base/json-write.h"
#include "light/exposure.h"
#include "light/readings.h"
#include "table.h"
#include "verbs.h"

#include <glib/gi18n.h>
#include <string.h>

/* For programs. */

static JsonArray *
rows_json (const GArray *rows, gboolean at_mark, const char *quantity)
{
  JsonArray *array = json_array_sized_new (rows->len);
  for (guint i = 0; i < rows->len; i++) {
    const SqReadingRow *row = &g_array_index (rows, SqReadingRow, i);
    JsonObject *object = json_object_new ();
    json_object_set_string_member (object, "id", row->id);
    if (row->from != NULL)
      json_object_set_string_member (object, "from", row->from);
    if (at_mark)
      json_object_set_string_member (object, "role", sq_role_words[row->role]);
    sq_answer_number (object, quantity, row->lux);
    if (at_mark)
      sq_answer_number (object, "dome_lux", row->dome_lux);
    sq_answer_number (object, "azimuth_deg", row->azimuth_deg);
    if (at_mark)
      sq_answer_number (object, "from_camera_deg", row->from_camera_deg);
    sq_answer_number (object, "elevation_deg", row->elevation_deg);
    sq_answer_number (object, "distance_m", row->distance_m);
    json_array_add_object_element (array, object);
  }
  return array;
}

static JsonObject *
probe_json (const SqProbeReading *reading)
{
  gboolean spot = reading->probe->receptor == SQ_RECEPTOR_SPOT;
  JsonObject *object = json_object_new ();
  json_object_set_string_member (object, "id", reading->probe->id);
  if (spot) {
    sq_answer_number (object, "cd_m2", reading->cd_m2);
    sq_answer_number (object, "stops", reading->stops);
  } else {
    sq_answer_number (object, "lux", reading->lux);
  }
  sq_answer_number (object, "t_stop", reading->t_stop);
  json_object_set_null_member (object, "cct_k");
  json_object_set_null_member (object, "duv");
  sq_answer_array (object, "by", rows_json (reading->rows, FALSE, spot ? "cd_m2" : "lux"));
  return object;
}

typedef struct {
  const char *key;
  double value;
} MarkNumber;

/* Every figure of a mark by the name that programs know it by. */
#define MARK_NUMBERS 11
static void
mark_numbers (const SqMarkReading *reading, MarkNumber *numbers)
{
  const MarkNumber all[MARK_NUMBERS] = {
    { "lux", reading->lux },
    { "lux_all", reading->lux_all },
    { "t_stop", reading->t_stop },
    { "stops_from_exposure", reading->stops_from_exposure },
    { "key_lux", reading->key_lux },
    { "fill_lux", reading->fill_lux },
    { "back_lux", reading->back_lux },
    { "ratio", reading->ratio },
    { "ratio_stops", reading->ratio_stops },
    { "key_to_fill", reading->key_to_fill },
    { "back_stops", reading->back_stops },
  };
  memcpy (numbers, all, sizeof all);
}

static JsonObject *
mark_json (const SqMarkReading *reading)
{
  JsonObject *object = json_object_new ();
  MarkNumber numbers[MARK_NUMBERS];
  mark_numbers (reading, numbers);
  json_object_set_string_member (object, "id", reading->mark->id);
  for (guint i = 0; i < MARK_NUMBERS; i++)
    sq_answer_number (object, numbers[i].key, numbers[i].value);
  /* Colour is not computed yet; not_counted says so. */
  json_object_set_null_member (object, "cct_k");
  json_object_set_null_member (object, "duv");
  sq_answer_array (object, "by", rows_json (reading->rows, TRUE, "lux"));
  return object;
}

static char *
readings_json (const SqReadings *readings)
{
  JsonObject *answer = json_object_new ();
  sq_answer_text (answer, "look", readings->scene->look != NULL ? readings->scene->look : "base");

  JsonObject *sun_and_sky = json_object_new ();
  static const char *const keys[] = { "sun_elevation_deg", "sun_azimuth_deg", "sun_normal_lux",
                                      "sky_horizontal_lux" };
  gboolean none = readings->scene->daylight == NULL || !readings->scene->daylight->on;
  for (guint i = 0; i < G_N_ELEMENTS (keys); i++)
    /* With no daylight there is no sun to stand anywhere, and no light of it. */
    sq_answer_number (sun_and_sky, keys[i], none && i >= 2 ? 0.0 : NAN);
  json_object_set_object_member (answer, "daylight", sun_and_sky);

  JsonObject *exposure = json_object_new ();
  sq_answer_text (exposure, "camera", readings->camera != NULL ? readings->camera->id : NULL);
  sq_answer_number (exposure, "t_stop", readings->set_t_stop);
  sq_answer_number (exposure, "iso", readings->iso);
  sq_answer_number (exposure, "exposure_s", readings->exposure_s);
  sq_answer_number (exposure, "nd_stops", readings->nd_stops);
  sq_answer_number (exposure, "set_lux", readings->set_lux);
  sq_answer_number (exposure, "dome_c", readings->scene->meter->dome_c);
  sq_answer_number (exposure, "flat_c", readings->scene->meter->flat_c);
  sq_answer_text (exposure, "ratio",
                  readings->scene->meter->ratio == SQ_RATIO_TOTAL ? "total" : "plain");
  json_object_set_object_member (answer, "exposure", exposure);

  JsonArray *probes = json_array_new (), *marks = json_array_new ();
  for (guint i = 0; i < readings->probes->len; i++)
    json_array_add_object_element (probes, probe_json (g_ptr_array_index (readings->probes, i)));
  for (guint i = 0; i < readings->marks->len; i++)
    json_array_add_object_element (marks, mark_json (g_ptr_array_index (readings->marks, i)));
  sq_answer_array (answer, "probes", probes);
  sq_answer_array (answer, "marks", marks);
  sq_answer_lines (answer, "not_counted", readings->not_counted);
  return sq_answer_finish (answer);
}

/* One line a figure: where, of which light (none: all together), what, how much. RFC 4180. */
static void
csv_figure (GString *text, const char *at, const SqReadingRow *row, const char *what, double value)
{
  g_string_append_printf (text, "%s,%s,%s,%s,", at, row != NULL ? row->id : "",
                          row != NULL && row->from != NULL ? row->from : "", what);
  if (isfinite (value))
    sq_json_append_number (text, value);
  g_string_append (text, "\r\n");
}

static void
csv_rows (GString *text, const char *at, const GArray *rows, gboolean at_mark, const char *quantity)
{
  for (guint i = 0; i < rows->len; i++) {
    const SqReadingRow *row = &g_array_index (rows, SqReadingRow, i);
    csv_figure (text, at, row, quantity, row->lux);
    if (at_mark) {
      csv_figure (text, at, row, "dome_lux", row->dome_lux);
      csv_figure (text, at, row, "from_camera_deg", row->from_camera_deg);
    }
    csv_figure (text, at, row, "azimuth_deg", row->azimuth_deg);
    csv_figure (text, at, row, "elevation_deg", row->elevation_deg);
    csv_figure (text, at, row, "distance_m", row->distance_m);
  }
}

static char *
readings_csv (const SqReadings *readings)
{
  GString *text = g_string_new ("at,light,from,what,value\r\n");
  for (guint i = 0; i < readings->probes->len; i++) {
    const SqProbeReading *reading = g_ptr_array_index (readings->probes, i);
    const char *id = reading->probe->id;
    gboolean spot = reading->probe->receptor == SQ_RECEPTOR_SPOT;
    csv_figure (text, id, NULL, spot ? "cd_m2" : "lux", spot ? reading->cd_m2 : reading->lux);
    csv_figure (text, id, NULL, "t_stop", reading->t_stop);
    csv_figure (text, id, NULL, "stops", reading->stops);
    csv_rows (text, id, reading->rows, FALSE, spot ? "cd_m2" : "lux");
  }
  for (guint i = 0; i < readings->marks->len; i++) {
    const SqMarkReading *reading = g_ptr_array_index (readings->marks, i);
    MarkNumber numbers[MARK_NUMBERS];
    mark_numbers (reading, numbers);
    for (guint k = 0; k < MARK_NUMBERS; k++)
      csv_figure (text, reading->mark->id, NULL, numbers[k].key, numbers[k].value);
    csv_rows (text, reading->mark->id, reading->rows, TRUE, "lux");
  }
  return g_string_free (text, FALSE);
}

/* For people. */

static const char *
unit_number (const SqScene *scene, const char *id)
{
  const SqThing *thing = sq_scene_find (scene, id);
  const char *number =
    thing != NULL && thing->kind == &sq_fixture_kind ? ((const SqFixture *)thing)->number : NULL;
  return number != NULL ? number : id;
}

static const char *
lamp_name (const SqScene *scene, const char *id)
{
  const SqThing *thing = sq_scene_find (scene, id);
  if (thing == NULL || thing->kind != &sq_fixture_kind)
    return "";
  const SqClass *lamp = sq_scene_class (scene, ((const SqFixture *)thing)->class_id);
  return lamp->name != NULL ? lamp->name : lamp->id;
}

static void
people_rows (GString *text, const SqReadings *readings, const GArray *rows, gboolean at_mark)
{
  const SqScene *scene = readings->scene;
  SqUnits units = (SqUnits)scene->units;
  guint burning = 0;
  const char *titles[] = { _ ("unit"),
                           _ ("lamp"),
                           at_mark ? _ ("role") : "",
                           at_mark ? _ (">at it") : _ (">reading"),
                           at_mark ? _ (">dome") : "",
                           at_mark ? _ (">stops") : "",
                           at_mark ? _ (">from camera") : "",
                           _ (">elevation"),
                           _ (">distance") };
  g_autoptr (SqTable) table = sq_table_new (titles, G_N_ELEMENTS (titles));
  for (guint i = 0; i < rows->len; i++) {
    const SqReadingRow *row = &g_array_index (rows, SqReadingRow, i);
    if (!sq_reading_burns (readings, row))
      continue;
    burning++;
    double stops = sq_stops_over (row->dome_lux, readings->set_lux);
    sq_table_take (table, g_strdup (unit_number (scene, row->id)));
    sq_table_take (table, g_strdup (lamp_name (scene, row->id)));
    sq_table_take (table, g_strdup (at_mark ? sq_role_words[row->role] : ""));
    sq_table_take (table, sq_quantity_format (row->lux, SQ_ILLUMINANCE, units));
    sq_table_take (table, at_mark ? sq_quantity_format (row->dome_lux, SQ_ILLUMINANCE, units)
                                  : g_strdup (""));
    sq_table_take (table, at_mark ? sq_stops_text (stops, TRUE) : g_strdup (""));
    sq_table_take (table, at_mark ? sq_quantity_format (row->from_camera_deg, SQ_ANGLE, units)
                                  : g_strdup (""));
    sq_table_take (table, sq_quantity_format (row->elevation_deg, SQ_ANGLE, units));
    sq_table_take (table, sq_quantity_format (row->distance_m, SQ_LENGTH, units));
  }
  if (burning > 0)
    sq_table_append (table, text, 4);
  else
    g_string_append_printf (text, "    %s\n", _ ("no lamp is on"));
}

static void
people_mark (GString *text, const SqReadings *readings, const SqMarkReading *reading)
{
  SqUnits units = (SqUnits)readings->scene->units;
  const SqMark *mark = reading->mark;
  g_autofree char *height = sq_quantity_format (reading->face.z_m, SQ_LENGTH, units);
  g_autofree char *light = sq_quantity_format (reading->lux, SQ_ILLUMINANCE, units);
  g_autofree char *t_stop = sq_quantity_format (reading->t_stop, SQ_T_STOP, units);
  g_autofree char *stops = sq_stops_in_words (reading->stops_from_exposure);
  g_autofree char *key = sq_quantity_format (reading->key_lux, SQ_ILLUMINANCE, units);
  g_autofree char *fill = sq_quantity_format (reading->fill_lux, SQ_ILLUMINANCE, units);
  g_autofree char *back = sq_quantity_format (reading->back_lux, SQ_ILLUMINANCE, units);
  gboolean any_back = reading->back_lux > SQ_DARK_LX && reading->key_lux > SQ_DARK_LX;
  g_autofree char *back_stops = sq_stops_text (any_back ? reading->back_stops : NAN, TRUE);
  g_autofree char *ratio = sq_ratio_text (reading->shown_ratio);
  g_autofree char *ratio_stops = sq_quantity_format (log2 (reading->shown_ratio), SQ_STOPS, units);
  g_string_append_printf (text, _ ("\n%s  face at %s\n"),
                          mark->label != NULL ? mark->label : mark->id, height);
  g_string_append_printf (text, _ ("    %s  %s  %s from the set stop\n"), light, t_stop, stops);
  g_string_append_printf (text, _ ("    key %s  fill %s  back %s (%s against the key)\n"), key,
                          fill, back, back_stops);
  g_string_append_printf (text, _ ("    ratio %s (%s)\n"), ratio, ratio_stops);
  people_rows (text, readings, reading->rows, TRUE);
}

static void
people_probe (GString *text, const SqReadings *readings, const SqProbeReading *reading)
{
  SqUnits units = (SqUnits)readings->scene->units;
  gboolean spot = reading->probe->receptor == SQ_RECEPTOR_SPOT;
  static const char *const receptors[] = { N_ ("flat"), N_ ("dome"), N_ ("spot") };
  g_autofree char *value = sq_quantity_format (spot ? reading->cd_m2 : reading->lux,
                                               spot ? SQ_LUMINANCE : SQ_ILLUMINANCE, units);
  g_autofree char *stops = sq_stops_in_words (reading->stops);
  g_string_append_printf (text, _ ("\n%s  probe, %s\n    %s  %s from the set stop\n"),
                          reading->probe->id, _ (receptors[reading->probe->receptor]), value,
                          stops);
  if (!spot)
    people_rows (text, readings, reading->rows, FALSE);
}

static char *
readings_for_people (const SqReadings *readings)
{
  const SqScene *scene = readings->scene;
  SqUnits units = (SqUnits)scene->units;
  GString *text = g_string_new (NULL);
  const char *title = scene->title->production != NULL ? scene->title->production : _ ("Readings");
  const SqThing *look = scene->look != NULL ? sq_scene_find (scene, scene->look) : NULL;
  const char *look_name = look != NULL ? ((const SqLook *)look)->name : _ ("base");
  g_autofree char *stop = sq_quantity_format (readings->set_t_stop, SQ_T_STOP, units);
  g_autofree char *set = sq_quantity_format (readings->set_lux, SQ_ILLUMINANCE, units);
  g_string_append_printf (text, _ ("%s, look: %s\n"), title,
                          look_name != NULL ? look_name : scene->look);
  g_string_append_printf (text, _ ("%s  ISO %g  1/%g s  set stop at %s on the dome\n"), stop,
                          readings->iso, 1.0 / readings->exposure_s, set);
  g_string_append_printf (
    text, _ ("C %g dome, %g flat;  ratio is %s;  back light is shielded off the dome\n"),
    scene->meter->dome_c, scene->meter->flat_c,
    scene->meter->ratio == SQ_RATIO_TOTAL ? _ ("(key + fill) : fill") : _ ("key : fill"));
  for (guint i = 0; i < readings->marks->len; i++)
    people_mark (text, readings, g_ptr_array_index (readings->marks, i));
  for (guint i = 0; i < readings->probes->len; i++)
    people_probe (text, readings, g_ptr_array_index (readings->probes, i));
  if (readings->marks->len + readings->probes->len == 0)
    g_string_append (text, _ ("\nNo mark and no probe: nowhere to read.\n"));
  for (guint i = 0; i < readings->not_counted->len; i++)
    g_string_append_printf (text, "%s%s\n", i == 0 ? _ ("\nNot counted yet:\n  ") : "  ",
                            (const char *)g_ptr_array_index (readings->not_counted, i));
  return g_string_free (text, FALSE);
}

int
sq_verb_meter (int argc, char **argv, const char *summary)
{
  g_auto (SqArguments) arguments = { 0 };
  int code = sq_arguments_parse (&arguments, argc, argv, NULL, summary);
  if (code >= 0)
    return code;
  g_autoptr (SqScene) scene = sq_arguments_load (&arguments);
  if (scene == NULL)
    return SQ_EXIT_INPUT;
  g_autoptr (GError) error = NULL;
  g_autoptr (SqReadings) readings = sq_read_meter (scene, arguments.threads, NULL, &error);
  if (readings == NULL)
    return sq_say_error (arguments.scene_path, error);
  g_autofree char *text = arguments.json  ? readings_json (readings)
                          : arguments.csv ? readings_csv (readings)
                                          : readings_for_people (readings);
  code = sq_put_result (&arguments, text, strlen (text));
  if (code == SQ_EXIT_DONE && arguments.csv)
    sq_say_left_out (&arguments, readings->not_counted);
  return code;
}
