/* test-meter.c: what is read at probes and marks, row by row, and what is said to be left out */
#include "light-scene.h"
#include "light/exposure.h"

#define EXACT 1e-9

static const SqReadingRow *
row (const GArray *rows, guint i)
{
  g_assert_cmpuint (i, <, rows->len);
  return &g_array_index (rows, SqReadingRow, i);
}

/* Lamps of 1000 cd all round, two metres from a face at (0, 0, 1.5912); a camera down the page. */
#define STAGE                                                                                      \
  "'classes': [{'id': 'c', 'emits': 'sphere', 'lumens': 12566.370614359172}],"                     \
  "'cameras': [{'id': 'cam', 'at': [0, -3, 1.5912], 'iso': 400, 't_stop': 4}],"                    \
  "'marks': [{'id': 'a', 'at': [0, 0], 'facing': 270}]"

static SqReadings *
stage (const char *fixtures, const char *more)
{
  g_autoptr (SqScene) scene = scene_of (STAGE ", 'fixtures': [%s] %s", fixtures, more);
  return readings_of (scene);
}

/* key 400, fill 100: the published pair is 4:1 key to fill, 5:1 with fill on both sides. */
static void
test_roles (void)
{
  g_autoptr (SqReadings) readings =
    stage ("{'id': 'k', 'class': 'c', 'at': [-2, 0, 1.5912], 'role': 'key'},"
           "{'id': 'f', 'class': 'c', 'at': [2, 0, 1.5912], 'role': 'fill', 'level': 0.25},"
           "{'id': 'b', 'class': 'c', 'at': [0, 2, 1.5912], 'role': 'back', 'trim_stops': 1},"
           "{'id': 's', 'class': 'c', 'at': [0, -2, 1.5912], 'role': 'side', 'on': false},"
           "{'id': 't', 'class': 'c', 'at': [0, 0, 3.5912], 'role': 'top', 'level': 0.5}",
           "");
  const SqMarkReading *mark = first_mark (readings);
  g_assert_cmpuint (mark->rows->len, ==, 5);             /* a row for each lamp, */
  g_assert_cmpfloat (row (mark->rows, 3)->lux, ==, 0.0); /* also for the one that is off */
  static const char *const ids[] = { "k", "f", "b", "s", "t" };
  static const double flat[] = { 250.0, 62.5, 500.0, 0.0, 125.0 };
  /* All but the back light stand at right angles to the camera, which the dome looks at. */
  static const double dome[] = { 125.0, 31.25, 0.0, 0.0, 62.5 };
  for (guint i = 0; i < 5; i++) {
    g_assert_cmpstr (row (mark->rows, i)->id, ==, ids[i]);
    assert_near (row (mark->rows, i)->lux, flat[i], EXACT);
    g_assert_cmpfloat_with_epsilon (row (mark->rows, i)->dome_lux, dome[i], 1e-9);
    assert_near (row (mark->rows, i)->distance_m, 2.0, EXACT);
  }
  assert_near (mark->key_lux, 250.0, EXACT);
  assert_near (mark->fill_lux, 62.5, EXACT);
  assert_near (mark->back_lux, 500.0, EXACT);
  assert_near (mark->key_to_fill, 4.0, EXACT);
  assert_near (mark->ratio, 5.0, EXACT);
  assert_near (mark->ratio_stops, log2 (5.0), EXACT);
  assert_near (mark->back_stops, 1.0, EXACT);
  assert_near (mark->lux, 125.0 + 31.25 + 62.5, EXACT);
  /* (1 + cos 180) / 2 of the back light is nothing. */
  assert_near (mark->lux_all, mark->lux, EXACT);

  /* N² = E · ISO · t / C: 340 for a dome. */
  assert_near (mark->t_stop, sqrt (218.75 * 400.0 / 48.0 / 340.0), EXACT);
  assert_near (mark->stops_from_exposure, 2.0 * log2 (mark->t_stop / 4.0), 1e-9);
  assert_near (readings->set_lux, 340.0 * 16.0 * 48.0 / 400.0, EXACT);
}

/* Where a light stands: page azimuth from the mark, the angle on plan from the camera, height. */
static void
test_angles (void)
{
  static const struct {
    const char *at;
    double azimuth_deg, from_camera_deg, elevation_deg;
  } rows[] = {
    { "0, -2, 1.5912", 270.0, 0.0, 0.0 },   { "2, 0, 3.5912", 0.0, 90.0, 45.0 },
    { "-2, -2, 1.5912", 225.0, 45.0, 0.0 }, { "0, 2, 1.5912", 90.0, 180.0, 0.0 },
    { "0, 0, 4", NAN, NAN, 90.0 },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_autofree char *lamp = g_strdup_printf ("{'id': 'k', 'class': 'c', 'at': [%s]}", rows[i].at);
    g_autoptr (SqReadings) readings = stage (lamp, "");
    const SqReadingRow *by = row (first_mark (readings)->rows, 0);
    g_assert_cmpfloat_with_epsilon (by->elevation_deg, rows[i].elevation_deg, 1e-9);
    if (isnan (rows[i].azimuth_deg)) {
      g_assert_true (isnan (by->from_camera_deg));
      continue;
    }
    g_assert_cmpfloat_with_epsilon (by->azimuth_deg, rows[i].azimuth_deg, 1e-9);
    g_assert_cmpfloat_with_epsilon (by->from_camera_deg, rows[i].from_camera_deg, 1e-9);
  }
}

static void
test_role_at_mark (void)
{
  g_autoptr (SqScene) scene =
    scene_of ("'classes': [{'id': 'c', 'emits': 'sphere', 'lumens': 12566.370614359172}],"
              "'marks': [{'id': 'a', 'at': [-1, 0]}, {'id': 'b', 'at': [1, 0]}],"
              "'fixtures': [{'id': 'x', 'class': 'c', 'at': [-3, -1, 2], 'role': 'key',"
              "  'role_at': {'b': 'back'}}]");
  g_autoptr (SqReadings) readings = readings_of (scene);
  const SqMarkReading *a = g_ptr_array_index (readings->marks, 0);
  const SqMarkReading *b = g_ptr_array_index (readings->marks, 1);
  g_assert_cmpint (row (a->rows, 0)->role, ==, SQ_ROLE_KEY);
  g_assert_cmpint (row (b->rows, 0)->role, ==, SQ_ROLE_BACK);
  g_assert_cmpfloat (a->lux, >, 0.0);
  g_assert_cmpfloat (b->lux, ==, 0.0); /* back light is shielded off */
}

static void
test_plain_ratio (void)
{
  static const char lamps[] = "{'id': 'k', 'class': 'c', 'at': [-2, 0, 1.5912], 'role': 'key'},"
                              "{'id': 'f', 'class': 'c', 'at': [2, 0, 1.5912], 'role': 'fill'}";
  g_autoptr (SqReadings) total = stage (lamps, "");
  g_autoptr (SqReadings) plain = stage (lamps, ", 'meter': {'ratio': 'plain'}");
  /* Published: 100 and 100 are 1:1 plain, 2:1 with fill on both sides. */
  assert_near (first_mark (total)->shown_ratio, 2.0, EXACT);
  assert_near (first_mark (plain)->shown_ratio, 1.0, EXACT);
  /* Whichever is shown, each has its own name. */
  assert_near (first_mark (plain)->ratio, 2.0, EXACT);
  assert_near (first_mark (total)->key_to_fill, 1.0, EXACT);
}

/* What has no meaning is NAN, and nothing is infinite. */
static void
test_dark (void)
{
  g_autoptr (SqReadings) dark = stage ("", ", 'probes': [{'id': 'p', 'at': [0, 0, 0]}]");
  const SqMarkReading *mark = first_mark (dark);
  g_assert_cmpfloat (mark->lux, ==, 0.0);
  const double undefined[] = { mark->t_stop,
                               mark->stops_from_exposure,
                               mark->ratio,
                               mark->ratio_stops,
                               mark->key_to_fill,
                               mark->back_stops,
                               first_probe (dark)->t_stop,
                               first_probe (dark)->stops,
                               first_probe (dark)->cd_m2 };
  for (gsize i = 0; i < G_N_ELEMENTS (undefined); i++)
    g_assert_true (isnan (undefined[i]));
  g_autoptr (SqReadings) key = stage ("{'id': 'k', 'class': 'c', 'at': [-2, 0, 2]}", "");
  g_assert_true (isnan (first_mark (key)->ratio));
  g_assert_true (isnan (first_mark (key)->back_stops));
}

/* The far tail of a beam, a hair above 0, has its stops against the key too: whoever finds back
 * light finds how many stops it is. What people are shown in its place, T-stop and ratio, is not
 * there. */
static void
test_far_tail (void)
{
  g_autoptr (SqScene) scene =
    scene_of ("'classes': [{'id': 'c', 'emits': 'sphere', 'lumens': 12566.370614359172},"
              "  {'id': 'n', 'beams': [{'beam_deg': 12, 'field_deg': 20, 'peak_cd': 1000}]}],"
              "'marks': [{'id': 'a', 'at': [0, 0]}], 'fixtures': ["
              "{'id': 'k', 'class': 'c', 'at': [-2, 0, 2]},"
              "{'id': 'b', 'class': 'n', 'at': [0, 4, 2], 'aim': [1.8, 0, 1.5], 'role': 'back'},"
              "{'id': 'f', 'class': 'n', 'at': [0, -4, 2], 'aim': [1.8, 0, 1.5], 'role': 'fill'}]");
  g_autoptr (SqReadings) readings = readings_of (scene);
  const SqMarkReading *mark = first_mark (readings);
  g_assert_cmpfloat (mark->back_lux, >, 0.0);
  g_assert_cmpfloat (mark->back_lux, <, SQ_DARK_LX);
  assert_near (mark->back_stops, log2 (mark->back_lux / mark->key_lux), EXACT);
  g_assert_cmpfloat (mark->fill_lux, <, SQ_DARK_LX);
  g_assert_true (isnan (mark->ratio));
}

/* The meter is held at the face, inside the head; somebody else does shade it. */
static void
test_own_person (void)
{
  g_autoptr (SqReadings) alone = stage ("{'id': 'k', 'class': 'c', 'at': [0, 2, 0.5]}", "");
  assert_near (row (first_mark (alone)->rows, 0)->lux, 1000.0 / (4.0 + 1.0912 * 1.0912), EXACT);
  g_autoptr (SqScene) pair =
    scene_of ("'classes': [{'id': 'c', 'emits': 'sphere', 'lumens': 12566.370614359172}],"
              "'marks': [{'id': 'a', 'at': [0, 0]}, {'id': 'b', 'at': [0, 1]}],"
              "'fixtures': [{'id': 'k', 'class': 'c', 'at': [0, 2, 1.6]}]");
  g_autoptr (SqReadings) readings = readings_of (pair);
  const SqMarkReading *b = g_ptr_array_index (readings->marks, 1);
  g_assert_cmpfloat (first_mark (readings)->lux, ==, 0.0);
  g_assert_cmpfloat (row (b->rows, 0)->lux, >, 900.0);
}

/* No camera: ISO 800, 24 frames a second, 180 degrees, T2.8, seen from the page's bottom. */
static void
test_no_camera (void)
{
  g_autoptr (SqScene) scene =
    scene_of ("'classes': [{'id': 'c', 'emits': 'sphere', 'lumens': 12566.370614359172}],"
              "'marks': [{'id': 'a', 'at': [0, 0]}],"
              "'fixtures': [{'id': 'k', 'class': 'c', 'at': [0, -2, 1.5912]}]");
  g_autoptr (SqReadings) readings = readings_of (scene);
  g_assert_null (readings->camera);
  assert_near (readings->set_lux, 340.0 * 2.8 * 2.8 * 48.0 / 800.0, EXACT);
  assert_near (first_mark (readings)->lux, 250.0, EXACT);
  g_assert_cmpfloat_with_epsilon (row (first_mark (readings)->rows, 0)->from_camera_deg, 0.0, 1e-9);
}

/* A matt surface of reflectance ρ under E lux: ρ E / π cd/m². */
static void
test_spot (void)
{
  static const struct {
    const char *name, *probe, *set;
    double cd_m2;
  } rows[] = {
    { "floor", "'at': [1, 0, 1], 'normal': [-1, 0, -1]", "'room': {'floor_reflectance': 0.4}",
      0.4 * 250.0 / G_PI },
    { "ceiling", "'at': [0, 0, 0.5], 'normal': [0, 0, 1]",
      "'room': {'ceiling_height': 4, 'ceiling_reflectance': 0.6},"
      "'walls': [{'path': [[-3, -3], [3, -3], [3, 3], [-3, 3]], 'closed': true}]",
      0.6 * 250.0 / G_PI },
    { "wall", "'at': [1, 0, 2], 'normal': [1, 0, 0]",
      "'walls': [{'path': [[2.05, -3], [2.05, 3]], 'thickness': 0.1, 'reflectance': 0.25}]",
      0.25 * 250.0 / G_PI },
    { "wall behind a net", "'at': [0.5, 0, 2], 'normal': [1, 0, 0]",
      "'walls': [{'path': [[2.05, -3], [2.05, 3]], 'thickness': 0.1, 'reflectance': 0.25}],"
      "'materials': [{'id': 'n', 'for': 'net', 'direct': 0.5}],"
      "'panels': [{'id': 'g', 'kind': 'net', 'material': 'n', 'at': [1, 0, 2], 'facing': 0,"
      "  'width': 1, 'height': 1}]",
      0.5 * 0.5 * 0.25 * 250.0 / G_PI },
    { "bounce", "'at': [0.5, 0, 0.5], 'normal': [-0.5, 0, 0.5]",
      "'materials': [{'id': 'b', 'for': 'bounce', 'reflect': 0.8}],"
      "'panels': [{'id': 'g', 'kind': 'bounce', 'material': 'b', 'at': [0, 0, 1], 'tilt': 90,"
      "  'width': 1, 'height': 1}]",
      0.0 }, /* its dark side */
    { "piece", "'at': [0, 0.5, 1.5], 'normal': [0, -1, -1]",
      "'pieces': [{'disc': {'at': [0, 0], 'radius': 1}, 'top': 1, 'reflectance': 0.5}]",
      0.5 * 1000.0 / G_PI },
    { "skin", "'at': [0, 3, 1.6], 'normal': [0, -1, 0]",
      "'marks': [{'id': 'm', 'at': [0, 2], 'facing': 0, 'skin': 'deep'}]", 0.0 }, /* from behind */
    { "nothing", "'at': [0, 0, 3], 'normal': [0, 0, 1]", "'units': 'metric'", 0.0 },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_autoptr (SqScene) scene =
      scene_of ("'classes': [{'id': 'c', 'emits': 'sphere', 'lumens': 12566.370614359172}],"
                "'fixtures': [{'id': 'k', 'class': 'c', 'at': [0, 0, 2]}],"
                "'probes': [{'id': 'p', 'receptor': 'spot', %s}], %s",
                rows[i].probe, rows[i].set);
    g_autoptr (SqReadings) readings = readings_of (scene);
    const SqProbeReading *probe = first_probe (readings);
    g_assert_cmpfloat_with_epsilon (probe->cd_m2, rows[i].cd_m2, 1e-9 * (1.0 + rows[i].cd_m2));
    g_assert_true (isnan (probe->lux));
    g_assert_cmpfloat (row (probe->rows, 0)->lux, ==, probe->cd_m2);
    /* N² = L · ISO · t / K, K 12.5. */
    if (probe->cd_m2 > 0.0)
      assert_near (probe->t_stop, sqrt (probe->cd_m2 * 800.0 / 48.0 / 12.5), EXACT);
  }
}

/* A probe turned toward a thing reads as one with that normal; t-stops by the receptor's constant.
 */
static void
test_probes (void)
{
  g_autoptr (SqScene) scene =
    scene_of ("'classes': [{'id': 'c', 'emits': 'sphere', 'lumens': 12566.370614359172}],"
              "'fixtures': [{'id': 'k', 'class': 'c', 'at': [3, 0, 4]}],"
              "'probes': [{'id': 'p', 'at': [0, 0, 0], 'toward': 'k'},"
              " {'id': 'q', 'at': [0, 0, 0], 'receptor': 'dome', 'toward': 'k'},"
              " {'id': 'r', 'at': [0, 0, 0]}]");
  g_autoptr (SqReadings) readings = readings_of (scene);
  static const double lux[] = { 40.0, 40.0, 32.0 }, constants[] = { 250.0, 340.0, 250.0 };
  for (guint i = 0; i < 3; i++) {
    const SqProbeReading *probe = g_ptr_array_index (readings->probes, i);
    assert_near (probe->lux, lux[i], EXACT);
    assert_near (probe->t_stop, sqrt (lux[i] * 800.0 / 48.0 / constants[i]), EXACT);
    assert_near (probe->stops, 2.0 * log2 (probe->t_stop / 2.8), EXACT);
  }
}

static void
assert_same_rows (const GArray *a, const GArray *b)
{
  g_assert_cmpuint (a->len, ==, b->len);
  for (guint i = 0; i < a->len; i++) {
    g_assert_cmpstr (row (a, i)->id, ==, row (b, i)->id);
    g_assert_cmpfloat (row (a, i)->lux, ==, row (b, i)->lux);
    g_assert_cmpfloat (row (a, i)->dome_all_lux, ==, row (b, i)->dome_all_lux);
  }
}

/* Random sets of lamps: rows add up to the reading, digit for digit whatever the threads. */
static void
test_rows_add_up (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (11);
  static const char *const roles[] = { "key", "fill", "back", "side", "practical" };
  for (int round = 0; round < 20; round++) {
    g_autoptr (GString) lamps = g_string_new (NULL);
    for (int i = 0; i < 12; i++)
      g_string_append_printf (lamps,
                              "%s{'id': 'f%d', 'class': '%s', 'at': [%g, %g, %g], 'aim': 'm', "
                              "'role': '%s', 'level': %g,"
                              "'on': %s}",
                              i ? "," : "", i, i % 2 ? "d" : "c", g_rand_double_range (rand, -4, 4),
                              g_rand_double_range (rand, -4, 4), g_rand_double_range (rand, 0.5, 4),
                              roles[g_rand_int_range (rand, 0, G_N_ELEMENTS (roles))],
                              g_rand_double (rand),
                              g_rand_int_range (rand, 0, 5) ? "true" : "false");
    g_autoptr (SqScene) scene = scene_of (
      "'classes': [{'id': 'c', 'emits': 'lambert', 'lumens': 4000, 'face': {'width': 0.5}},"
      "  {'id': 'd', 'beams': [{'beam_deg': 30, 'field_deg': 50, 'peak_cd': 9000}],"
      "   'face': {'width': 0.2}}],"
      "'fixtures': [%s], 'marks': [{'id': 'm', 'at': [0, 0]}, {'id': 'n', 'at': [1, 1]}],"
      "'walls': [{'path': [[-3, 1], [3, 1]], 'openings': [{'kind': 'window', 'offset': 1,"
      "  'width': 2}]}],"
      "'probes': [{'id': 'p', 'at': [0, -1, 1]}, {'id': 'q', 'at': [1, 2, 1], 'receptor': "
      "'dome'},"
      "  {'id': 'r', 'at': [2, 0, 1], 'receptor': 'spot', 'normal': [-1, 0.3, 0]}]",
      lamps->str);
    g_autoptr (SqReadings) one = readings_of (scene);
    g_autoptr (SqReadings) three = sq_read_meter (scene, 3, NULL, NULL);
    for (guint i = 0; i < one->probes->len; i++) {
      const SqProbeReading *a = g_ptr_array_index (one->probes, i);
      const SqProbeReading *b = g_ptr_array_index (three->probes, i);
      double sum = 0.0, whole = i == 2 ? a->cd_m2 : a->lux;
      for (guint k = 0; k < a->rows->len; k++)
        sum += row (a->rows, k)->lux;
      g_assert_cmpfloat (sum, ==, whole);
      assert_same_rows (a->rows, b->rows);
    }
    for (guint i = 0; i < one->marks->len; i++) {
      const SqMarkReading *a = g_ptr_array_index (one->marks, i);
      const SqMarkReading *b = g_ptr_array_index (three->marks, i);
      double dome = 0.0, all = 0.0, key = 0.0;
      for (guint k = 0; k < a->rows->len; k++) {
        dome += row (a->rows, k)->dome_lux;
        all += row (a->rows, k)->dome_all_lux;
        key += row (a->rows, k)->role == SQ_ROLE_KEY ? row (a->rows, k)->lux : 0.0;
      }
      g_assert_cmpfloat (dome, ==, a->lux);
      g_assert_cmpfloat (all, ==, a->lux_all);
      g_assert_cmpfloat (key, ==, a->key_lux);
      assert_same_rows (a->rows, b->rows);
    }
  }
}

static void
assert_says (const SqReadings *readings, const char *line)
{
  for (guint i = 0; i < readings->not_counted->len; i++)
    if (g_str_equal (g_ptr_array_index (readings->not_counted, i), line))
      return;
  g_error ("nothing says: %s", line);
}

/* What does not count is said, and only that. */
static void
test_left_out (void)
{
  g_autoptr (SqReadings) nothing = stage ("", ", 'room': {'bounce': false}");
  g_assert_cmpuint (nothing->not_counted->len, ==, 0);
  g_autoptr (SqScene) scene = scene_of (
    "'classes': [{'id': 'c', 'emits': 'lambert', 'lumens': 1000},"
    "  {'id': 'w', 'photometry': 'IESNA:LM-63-2002'}],"
    "'materials': [{'id': 'm', 'for': 'diffusion', 'direct': 0.2, 'scatter': 0.5}],"
    "'fixtures': ["
    " {'id': 'f1', 'class': 'c', 'at': [0, 0, 2], 'modifiers': ["
    "   {'kind': 'diffusion', 'material': 'm'}, {'kind': 'doors'}]},"
    " {'id': 'f2', 'class': 'w', 'at': [0, 0, 2]},"
    " {'id': 'f3', 'class': 'w', 'at': [0, 0, 2], 'on': false},"
    " {'id': 'f4', 'class': 'c', 'at': [0, 0, 2], 'modifiers': ["
    "   {'kind': 'softbox', 'width': 1, 'height': 1, 'material': 'm'}]}],"
    "'panels': [{'id': 'g1', 'kind': 'diffusion', 'material': 'm', 'at': [0, 0, 1], 'width': 1,"
    "   'height': 1},"
    " {'id': 'g2', 'kind': 'diffusion', 'material': 'm', 'at': [0, 0, 1], 'width': 1,"
    "   'height': 1, 'set': false}],"
    "'walls': [{'path': [[0, 5], [4, 5]], 'openings': [{'id': 'o1', 'kind': 'window', 'offset': "
    "1,"
    "   'width': 1, 'material': 'm'}]}],"
    "'daylight': {'on': true, 'latitude': 50, 'longitude': 0, 'date': '2024-06-20',"
    "   'time': '12:00', 'utc_offset': 0},"
    "'haze': 0.02, 'ambient': [{'at': [0, 0], 'lux': 5}]");
  g_autoptr (SqReadings) readings = readings_of (scene);
  static const char *const lines[] = {
    "f1: diffusion on the lamp (counted as if it were not there)",
    "f1: doors (the lamp has no face to hinge them on)",
    "f2: photometric web (counted as dark)",
    "f4: soft box (counted as if it were not there)",
    "g1: light re-emitted by the frame",
    "o1: light scattered by the material on the opening",
    "room: light given back by walls, floor and ceiling",
    "daylight: sun and sky",
    "ambient: measured light",
    "colour: temperature and tint of the light that is read",
    "haze: what it takes from beams and scatters",
  };
  for (gsize i = 0; i < G_N_ELEMENTS (lines); i++)
    assert_says (readings, lines[i]);
  g_assert_cmpuint (readings->not_counted->len, ==, G_N_ELEMENTS (lines));
}

static void
test_cancelled (void)
{
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (GError) error = NULL;
  g_autoptr (SqScene) scene = scene_of (STAGE);
  g_cancellable_cancel (cancellable);
  g_assert_null (sq_read_meter (scene, 2, cancellable, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/meter/roles, ratios and stops", test_roles);
  g_test_add_func ("/meter/where lights stand", test_angles);
  g_test_add_func ("/meter/another role at a mark", test_role_at_mark);
  g_test_add_func ("/meter/the plain ratio", test_plain_ratio);
  g_test_add_func ("/meter/in the dark", test_dark);
  g_test_add_func ("/meter/the far tail of a beam has its stops", test_far_tail);
  g_test_add_func ("/meter/the own person does not shade", test_own_person);
  g_test_add_func ("/meter/no camera", test_no_camera);
  g_test_add_func ("/meter/spot readings", test_spot);
  g_test_add_func ("/meter/probes", test_probes);
  g_test_add_func ("/meter/rows add up", test_rows_add_up);
  g_test_add_func ("/meter/what is left out is said", test_left_out);
  g_test_add_func ("/meter/cancelled", test_cancelled);
  return g_test_run ();
}
