/* verb-map.c: the heat map alone, as a picture or as numbers */
#include "arguments.h"
#include "base/error.h"
#include "base/json-write.h"
#include "draw/map-picture.h"
#include "light/exposure.h"
#include "light/map.h"
#include "verbs.h"

#include <glib/gi18n.h>
#include <string.h>

typedef struct {
  char *quantity, *height, *normal, *step;
} MapOptions;

static void
map_options_clear (MapOptions *options)
{
  g_free (options->quantity);
  g_free (options->height);
  g_free (options->normal);
  g_free (options->step);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (MapOptions, map_options_clear)

/* One of the scene's own words for a map option; -1 and a line on standard error for others. */
static int
word_of (const char *key, const char *text)
{
  const SqField *field = sq_kind_field (&sq_map_kind, key);
  for (int i = 0; field->words[i] != NULL; i++) {
    if (g_str_equal (field->words[i], text))
      return i;
  }
  g_autofree char *known = g_strjoinv (", ", (char **)field->words);
  sq_say_usage (_ ("--%s: \"%s\" is unknown, expected one of %s"), key, text, known);
  return -1;
}

static gboolean
length_of (
  const char *option, const char *text, SqUnits units, double least, double most, double *value)
{
  g_autoptr (GError) error = NULL;
  if (!sq_quantity_parse (text, SQ_LENGTH, units, NAN, value, &error)) {
    sq_say_usage ("--%s: %s", option, error->message);
    return FALSE;
  }
  if (*value < least || *value > most) {
    sq_say_usage (_ ("--%s: %g m is out of range, expected %g to %g m"), option, *value, least,
                  most);
    return FALSE;
  }
  return TRUE;
}

static gboolean
apply_options (const MapOptions *options, SqUnits units, SqMapRequest *request)
{
  if (options->quantity != NULL &&
      (request->quantity = word_of ("quantity", options->quantity)) < 0)
    return FALSE;
  if (options->normal != NULL && (request->normal = word_of ("normal", options->normal)) < 0)
    return FALSE;
  if (options->height != NULL &&
      !length_of ("height", options->height, units, 0.0, 100.0, &request->height_m))
    return FALSE;
  return options->step == NULL ||
         length_of ("step", options->step, units, 0.001, 100.0, &request->step_m);
}

static char *
map_csv (const SqLightMap *map)
{
  GString *text = g_string_new ("x,y,value\r\n");
  for (int row = 0; row < map->rows; row++) {
    for (int column = 0; column < map->columns; column++) {
      double lux = map->lux[(gsize)row * (gsize)map->columns + (gsize)column];
      double value =
        map->request.quantity == SQ_OVERLAY_STOPS ? sq_stops_over (lux, map->set_lux) : lux;
      sq_json_append_number (text, map->first.x_m + column * map->step_m);
      g_string_append_c (text, ',');
      sq_json_append_number (text, map->first.y_m + row * map->step_m);
      g_string_append_c (text, ',');
      if (isfinite (value)) /* nothing inside a solid, and no stops of darkness */
        sq_json_append_number (text, value);
      g_string_append (text, "\r\n"); /* RFC 4180 */
    }
  }
  return g_string_free (text, FALSE);
}

int
sq_verb_map (int argc, char **argv, const char *summary)
{
  g_auto (MapOptions) options = { 0 };
  const GOptionEntry own[] = {
    { "quantity", 0, 0, G_OPTION_ARG_STRING, &options.quantity, N_ ("What it shows"),
      N_ ("lux|stops") },
    { "height", 0, 0, G_OPTION_ARG_STRING, &options.height, N_ ("Of the plane"), N_ ("LENGTH") },
    { "normal", 0, 0, G_OPTION_ARG_STRING, &options.normal, N_ ("Which way the receptor looks"),
      N_ ("up|camera|square") },
    { "step", 0, 0, G_OPTION_ARG_STRING, &options.step, N_ ("Between points; 5 cm unless said"),
      N_ ("LENGTH") },
    { NULL },
  };
  g_auto (SqArguments) arguments = { 0 };
  int code = sq_arguments_parse (&arguments, argc, argv, own, summary);
  if (code >= 0)
    return code;
  const char *output = arguments.output != NULL ? arguments.output : "-";
  gboolean csv = arguments.csv || g_str_has_suffix (output, ".csv") || g_str_equal (output, "-");
  if (!csv && !g_str_has_suffix (output, ".png"))
    return sq_say_usage (_ ("-o %s: expected a name that ends in .png or .csv"), output);
  if (arguments.json)
    return sq_say_usage (_ ("map: answers in PNG or CSV, not in JSON"));
  if (arguments.csv && g_str_has_suffix (output, ".png"))
    return sq_say_usage (_ ("--csv and -o %s exclude each other"), output);
  g_autoptr (SqScene) scene = sq_arguments_load (&arguments);
  if (scene == NULL)
    return SQ_EXIT_INPUT;
  SqMapRequest request = sq_map_request (scene, 0.05);
  if (!apply_options (&options, (SqUnits)scene->units, &request))
    return SQ_EXIT_USAGE;
  g_autoptr (GError) error = NULL;
  if (request.quantity == SQ_OVERLAY_COLOUR) {
    g_set_error (&error, SQ_ERROR, SQ_ERROR_VALUE, "%s",
                 _ ("map: colour is not computed yet, expected lux or stops"));
    return sq_say_error (arguments.scene_path, error);
  }
  g_autoptr (SqLightMap) map = sq_light_map (scene, &request, arguments.threads, NULL, &error);
  if (map == NULL)
    return sq_say_error (arguments.scene_path, error);
  if (csv) {
    g_autofree char *text = map_csv (map);
    code = sq_put_result (&arguments, text, strlen (text));
  } else {
    g_autoptr (GBytes) png = sq_map_picture_png (map);
    gsize length;
    const char *data = g_bytes_get_data (png, &length);
    code = sq_put_result (&arguments, data, length);
  }
  if (code == SQ_EXIT_DONE)
    sq_say_left_out (&arguments, map->not_counted);
  return code;
}
