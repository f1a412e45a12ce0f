/* test-library.c: the lamps and stands that come with the program are plausible things */
#include "scene/library.h"

#include "library-expect.h"
#include "scene/thing.h"

#include <math.h>

/* What the same generic lamps draw, as hire lists print it: amperes at 230 V, 120 V and 208 V;
 * 0: not made for it, or not printed. One row a class, in the library's order. */
typedef struct {
  const char *id;
  double amps_230, amps_120, amps_208;
} Printed;

/* clang-format off */
static const Printed printed[] = {
  { "tungsten-fresnel-150", 0.65, 1.25 },
  { "tungsten-fresnel-300", 1.3, 2.5 },
  { "tungsten-fresnel-650", 2.83, 5.42 },
  { "tungsten-fresnel-1000", 4.35, 8.33 },
  { "tungsten-fresnel-2000", 8.7, 16.67 },
  { "tungsten-fresnel-5000", 21.74, 41.67 },
  { "tungsten-fresnel-10000", 43.48, 83.33 },
  { "tungsten-fresnel-20000", 86.96, 0, 96.15 },
  { "open-face-800", 3.48, 6.67 },
  { "open-face-2000", 8.7, 16.67 },
  { "broad-1000", 4.35, 8.33 },
  { "par-can-very-narrow", 4.35, 8.33 },
  { "par-can-narrow", 4.35, 8.33 },
  { "par-can-medium", 4.35, 8.33 },
  { "par-can-wide", 4.35, 8.33 },
  { "lamp-bank-9", 25.43, 48.75 },
  { "lamp-bank-24", 104.35, 200 },
  { "discharge-fresnel-200", 1.2, 2.31 },
  { "discharge-fresnel-575", 2.76, 5.28 },
  { "discharge-fresnel-1200", 5.75, 11.02 },
  { "discharge-fresnel-2500", 11.98, 22.96 },
  { "discharge-fresnel-4000", 19.17, 0, 21.19 },
  { "discharge-fresnel-6000", 28.75, 0, 31.79 },
  { "discharge-fresnel-12000", 57.5, 0, 63.58 },
  { "discharge-fresnel-18000", 86.25, 0, 95.37 },
  { "discharge-par-200", 1.2, 2.31 },
  { "discharge-par-575", 2.76, 5.28 },
  { "discharge-par-1200", 5.75, 11.02 },
  { "discharge-par-1800", 8.62, 16.53 },
  { "discharge-par-2500", 11.98, 22.96 },
  { "discharge-par-4000", 19.17, 0, 21.19 },
  { "discharge-par-6000", 28.75, 0, 31.79 },
  { "discharge-par-9000", 43.12, 0, 47.68 },
  { "discharge-par-18000", 86.25, 0, 95.37 },
  { "led-fresnel-200", 0.96, 1.84 },
  { "led-fresnel-450", 2.06, 3.95 },
  { "led-spot-60", 0.34, 0.66 },
  { "led-spot-120", 0.69, 1.32 },
  { "led-spot-300", 1.69, 3.25 },
  { "led-spot-600", 3.3, 6.32 },
  { "led-spot-1200", 6.64, 12.72 },
  { "led-spot-2500", 13.27, 0, 14.68 },
  { "led-beam-panel-600", 2.97, 5.7 },
  { "led-panel-30x30", 0.37, 0.7 },
  { "led-panel-60x30-ho", 1.92, 3.68 },
  { "led-panel-60x30", 0.69, 1.32 },
  { "led-panel-120x30", 1.83, 3.51 },
  { "led-panel-130x80", 6.86, 13.16 },
  { "led-mat-60x30", 0.46, 0.88 },
  { "led-mat-60x60", 0.92, 1.75 },
  { "led-mat-120x60", 1.6, 3.07 },
  { "led-tube-60", 0.1, 0.19 },
  { "led-tube-120", 0.21, 0.39 },
  { "led-tube-240", 0.46, 0.88 },
  { "fluorescent-4x60", 0.78, 1.49 },
  { "fluorescent-4x120", 1.37, 2.63 },
  { "fluorescent-8x120", 2.97, 5.7 },
  { "softlight-2000", 8.7, 16.67 },
  { "cyc-flood-1000", 4.35, 8.33 },
  { "ground-row-500", 2.17, 4.17 },
  { "led-ground-row-100", 1.14, 2.19 },
  { "led-strobe-1000", 4.58, 8.77 },
  { "softlight-4000", 17.39, 33.33 },
  { "paper-lantern-75", 2.17, 4.17 },
  { "led-lantern-60", 0.5, 0.96 },
  { "space-light-6000", 26.09, 50 },
  { "led-space-light-500", 2.52, 4.82 },
  { "balloon-8000", 34.78, 66.67 },
  { "discharge-balloon-4800", 23, 0, 25.43 },
  { "bulb-tungsten-25", 0.11, 0.21 },
  { "bulb-tungsten-60", 0.26, 0.5 },
  { "bulb-tungsten-100", 0.43, 0.83 },
  { "bulb-led-9", 0.04, 0.08 },
  { "bulb-overrun-250", 1.09, 2.08 },
  { "candle", 0 },
  { "led-neon-100", 0.05, 0.11 },
  { "profile-5", 2.5, 4.79 },
  { "profile-10", 2.5, 4.79 },
  { "profile-19", 2.5, 4.79 },
  { "profile-26", 2.5, 4.79 },
  { "profile-36", 2.5, 4.79 },
  { "profile-50", 2.5, 4.79 },
  { "profile-70", 2.5, 4.79 },
  { "profile-90", 2.5, 4.79 },
};

/* Rows of the list of what travels along with a lamp. */
static const char *const kits[] = {
  "fresnel tungsten up to 1 kW", "fresnel tungsten 2 kW and up", "open-face", "discharge any",
  "led spot, led fresnel", "panel, mat", "tube", "fluorescent bank", "softlight, soft box",
  "lantern, space light, balloon", "profile", "cyc", "par, multi-lamp bank",
  "strobe, flame effect", "practical bulb", NULL,
};
/* clang-format on */

enum { CLASSES = 84, MATERIALS = 60, STANDS = 12, LETTERS_IN_A_TAG = 24 };

#define HOUSE_V 230.0
#define HALF_VOLTAGE_V 120.0 /* where lamps for both are sold */
#define LEG_TO_LEG_V 208.0

#define AMPS_WITHIN 0.01    /* relative */
#define AMPS_ROUNDING 0.005 /* half of the last digit printed */

static void
test_counts (void)
{
  g_autoptr (SqLibrary) library = sq_library_new ();

  G_STATIC_ASSERT (G_N_ELEMENTS (printed) == CLASSES);
  g_assert_cmpuint (sq_library_classes (library)->len, ==, CLASSES);
  g_assert_cmpuint (sq_library_materials (library)->len, ==, MATERIALS);
  g_assert_cmpuint (sq_library_stands (library)->len, ==, STANDS);
}

static void
add_ids (GHashTable *seen, const GPtrArray *things)
{
  for (guint i = 0; i < things->len; i++) {
    const char *id = sq_thing_id (g_ptr_array_index (things, i));
    expect (g_hash_table_add (seen, (gpointer)id), id, "stands twice");
  }
}

/* One namespace, and in it the words that scenes reserve. */
static void
test_ids (void)
{
  g_autoptr (SqLibrary) library = sq_library_new ();
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);
  static const char *const reserved[] = { "sun", "sky", "room", "base" };

  for (guint i = 0; i < G_N_ELEMENTS (reserved); i++)
    g_hash_table_add (seen, (gpointer)reserved[i]);
  add_ids (seen, sq_library_classes (library));
  add_ids (seen, sq_library_materials (library));
  add_ids (seen, sq_library_stands (library));
}

static void
test_found (void)
{
  g_autoptr (SqLibrary) library = sq_library_new ();

  g_assert_cmpfloat (sq_library_class (library, "tungsten-fresnel-650")->input_w, ==, 650);
  g_assert_cmpint (sq_library_material (library, "single-net")->for_what, ==, SQ_FOR_NET);
  g_assert_cmpfloat (sq_library_stand (library, "crank-stand")->load_kg, ==, 80);
  g_assert_null (sq_library_class (library, "single-net"));
  g_assert_null (sq_library_material (library, "crank-stand"));
  g_assert_null (sq_library_stand (library, "tungsten-fresnel-650"));
}

static void
expect_terse (const SqThing *thing, const char *id)
{
  expect (thing->extras == NULL, id, "has a key that nothing reads");
  for (guint i = 0; i < thing->kind->n_fields; i++) {
    const SqField *field = &thing->kind->fields[i];
    gpointer value = sq_thing_value (thing, field);

    if ((thing->said & (G_GUINT64_CONSTANT (1) << i)) == 0)
      continue;
    if (!(field->flags & SQ_REQUIRED))
      expect (!field->type->is_default (field, value), id, field->key);
    if (field->type == &sq_value_object)
      expect_terse (*(SqThing **)value, id);
    if (field->type == &sq_value_list) {
      const GPtrArray *members = *(GPtrArray **)value;
      for (guint j = 0; j < members->len; j++)
        expect_terse (g_ptr_array_index (members, j), id);
    }
  }
}

static void
test_terse (void)
{
  g_autoptr (SqLibrary) library = sq_library_new ();
  const GPtrArray *lists[] = { sq_library_classes (library), sq_library_materials (library),
                               sq_library_stands (library) };

  for (guint i = 0; i < G_N_ELEMENTS (lists); i++) {
    for (guint j = 0; j < lists[i]->len; j++) {
      const SqThing *thing = g_ptr_array_index (lists[i], j);
      expect_terse (thing, sq_thing_id (thing));
    }
  }
}

static void
amps (const SqClass *class, const Printed *row)
{
  const double volts[] = { HOUSE_V, HALF_VOLTAGE_V, LEG_TO_LEG_V };
  const double expected[] = { row->amps_230, row->amps_120, row->amps_208 };

  for (guint i = 0; i < G_N_ELEMENTS (volts); i++) {
    double drawn_a = class->input_w / (volts[i] * class->power_factor);
    double tolerance_a = MAX (expected[i] * AMPS_WITHIN, AMPS_ROUNDING);
    gboolean fed = class->volts[0] <= volts[i] && volts[i] <= class->volts[1];

    if (class->input_w > 0 && expected[i] == 0)
      expect (!fed || volts[i] == LEG_TO_LEG_V, class->id,
              "takes a voltage that it is not printed for");
    else {
      expect (fed, class->id, "does not take a voltage that it is printed for");
      expect_within (drawn_a, expected[i] - tolerance_a, expected[i] + tolerance_a, class->id, "A");
    }
  }
  expect (class->lamp_w <= class->input_w, class->id, "draws less than is printed on it");
}

/* A coil is a resistance. What has electronics or a choke before it turns some of its input into
 * heat; mains standards want an LED lamp above 25 W, or a ballast, corrected to 0.9 and more, and
 * only a choke without a capacitor, as small ballasts have it, stays below (common practice). */
static void
feeding (const SqClass *class, const Printed *row)
{
  double over = class->input_w / class->lamp_w;

  if (class->source == SQ_SOURCE_FLAME)
    expect (class->input_w == 0 && class->lamp_w == 0, class->id, "a flame is on the mains");
  else if (class->source == SQ_SOURCE_TUNGSTEN) {
    expect (class->power_factor == 1, class->id, "a coil with a power factor");
    expect (class->input_w == class->lamp_w, class->id, "a coil with a ballast");
  } else {
    gboolean small = class->source == SQ_SOURCE_DISCHARGE && class->lamp_w < 575;
    expect_within (class->power_factor, small ? 0.5 : 0.9, 0.99, class->id, "power factor");
    expect_within (over, class->source == SQ_SOURCE_DISCHARGE ? 1.05 : 1, 1.25, class->id,
                   "times what is printed on it");
  }
}

static void
dimming (const SqClass *class, const Printed *row)
{
  int slots = 0;

  /* Its own address has what takes data: diodes with their electronics. A mains dimmer has the
   * address itself; ballasts and banks of tubes are set by hand. */
  expect ((class->source == SQ_SOURCE_TUNGSTEN) == (class->dims == SQ_DIMS_MAINS), class->id,
          "a mains dimmer goes with tungsten, and with nothing else");
  expect (class->modes->len == 0 || class->dims == SQ_DIMS_OWN, class->id,
          "is addressed but has no dimmer of its own");
  expect (class->source != SQ_SOURCE_LED || (class->modes->len > 0) == (class->dims == SQ_DIMS_OWN),
          class->id, "dims itself but has no address");
  for (guint i = 0; i < class->modes->len; i++) {
    const SqMode *mode = g_ptr_array_index (class->modes, i);
    expect (mode->slots > slots, class->id, "modes do not go from small to large");
    slots = mode->slots;
  }
}

static void
colour (const SqClass *class, const Printed *row)
{
  if (!isnan (class->cct_range_k[0])) {
    expect (class->cct_range_k[0] < class->cct_range_k[1], class->id, "range of CCT");
    expect_within (class->cct_k, class->cct_range_k[0], class->cct_range_k[1], class->id, "K");
  }
}

static void
measures (const SqClass *class, const Printed *row)
{
  expect (class->face->width_m > 0, class->id, "has no face");
  expect (class->body->width_m >= class->face->width_m, class->id, "face wider than body");
  expect (class->body->height_m >= sq_face_height_m (class->face), class->id,
          "face higher than body");
  expect (class->weight_kg > 0, class->id, "weighs nothing");
  expect (*class->name != '\0' && g_utf8_strlen (class->name, -1) <= LETTERS_IN_A_TAG, class->id,
          "name does not fit a tag");
}

static void
kit (const SqClass *class, const Printed *row)
{
  g_auto (GStrv) words = g_strsplit (class->kit != NULL ? class->kit : "", "; ", -1);

  for (guint i = 0; words[i] != NULL; i++)
    expect (g_strv_contains (kits, words[i]), class->id, words[i]);
  expect (words[0] != NULL || class->source == SQ_SOURCE_FLAME, class->id, "has no kit");
}

static void
test_stand_for_each (void)
{
  g_autoptr (SqLibrary) library = sq_library_new ();
  const GPtrArray *classes = sq_library_classes (library);
  const GPtrArray *stands = sq_library_stands (library);

  for (guint i = 0; i < classes->len; i++) {
    const SqClass *class = g_ptr_array_index (classes, i);
    gboolean carried = isnan (class->spigot_mm);
    for (guint j = 0; j < stands->len; j++) {
      const SqStand *stand = g_ptr_array_index (stands, j);
      carried |=
        stand->footprint_m > 0 && stand->load_kg >= class->weight_kg &&
        (stand->spigot_mm[0] == class->spigot_mm || stand->spigot_mm[1] == class->spigot_mm);
    }
    expect (carried, class->id, "no stand takes it");
  }
}

static void
test_stands (void)
{
  g_autoptr (SqLibrary) library = sq_library_new ();
  const GPtrArray *stands = sq_library_stands (library);

  for (guint i = 0; i < stands->len; i++) {
    const SqStand *stand = g_ptr_array_index (stands, i);
    expect (stand->spigot_mm[0] == 16 || stand->spigot_mm[0] == 28, stand->id, "spigot");
    expect (stand->spigot_mm[1] == 16 || stand->spigot_mm[1] == 28, stand->id, "spigot");
    expect (stand->spigot_mm[0] <= stand->spigot_mm[1], stand->id, "spigots out of order");
    expect (stand->load_kg > stand->weight_kg, stand->id, "carries less than it weighs");
    expect (!(stand->max_height_m < stand->min_height_m), stand->id, "heights out of order");
  }
}

static const struct ClassTest {
  const char *path;
  void (*check) (const SqClass *class, const Printed *row);
} class_tests[] = {
  { "/library/class/draws the printed current", amps },
  { "/library/class/watts, ballast and power factor", feeding },
  { "/library/class/dims as its source does", dimming },
  { "/library/class/colour temperature lies in its range", colour },
  { "/library/class/body holds its face", measures },
  { "/library/class/kit is one that is known", kit },
};

static void
test_each_class (gconstpointer data)
{
  const struct ClassTest *test = data;
  g_autoptr (SqLibrary) library = sq_library_new ();
  const GPtrArray *classes = sq_library_classes (library);

  for (guint i = 0; i < G_N_ELEMENTS (printed); i++) {
    const SqClass *class = g_ptr_array_index (classes, i);
    g_assert_cmpstr (class->id, ==, printed[i].id);
    test->check (class, &printed[i]);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/library/everything is there", test_counts);
  g_test_add_func ("/library/ids are unique", test_ids);
  g_test_add_func ("/library/found by id and kind", test_found);
  g_test_add_func ("/library/nothing is unread or needless", test_terse);
  for (guint i = 0; i < G_N_ELEMENTS (class_tests); i++)
    g_test_add_data_func (class_tests[i].path, &class_tests[i], test_each_class);
  g_test_add_func ("/library/class/some stand takes it", test_stand_for_each);
  g_test_add_func ("/library/stand/heights, loads and spigots", test_stands);
  return g_test_run ();
}
