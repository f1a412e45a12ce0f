/* test-cable-run.c: where cables run on the plan, and where they lead off it */
#include "draw-page.h"
#include "draw/cable-run.h"

/* The field of one_to_fifty: 20 … 326 by 10 … 251 mm; (0, 0) lies at 50, 220; 20 mm to the metre.
 * A run that leaves ends 3 mm inside. */
#define LEFT_MM 23.0
#define RIGHT_MM 323.0
#define TOP_MM 13.0
#define BOTTOM_MM 248.0

static SqCableRun
first_run (const SqScene *scene)
{
  return sq_cable_run (&one_to_fifty, scene, SQ_AT (SqCable, scene->cables, 0));
}

/* A generator that stands nowhere: the run goes out over the nearest side, after its own way. */
static void
test_to_nowhere (void)
{
  static const struct {
    const char *box, *cable;
    double x_mm, y_mm;
    const char *text;
  } rows[] = {
    { "[0, 4]", "", LEFT_MM, 140, "to G1" },
    { "[12.5, 4]", "'length': 50, 'conductor_mm2': 16, ", RIGHT_MM, 140,
      "to G1\n50\u00a0m   16\u00a0mm²" },
    { "[6, 9.5]", "'conductor_mm2': 16, ", 170, TOP_MM, "to G1\n16\u00a0mm²" },
    { "[0, 4]", "'via': [[6, 9.5], [6, 4]], ", 170, TOP_MM, "to G1" },
    { "[6, -1]", "'length': 20, ", 170, BOTTOM_MM, "to G1\n20\u00a0m" },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_autofree char *text =
      g_strdup_printf ("'supplies': [{'id': 'g', 'label': 'G1', 'kind': 'generator'},"
                       "{'id': 'd', 'kind': 'distribution', 'at': %s}],"
                       "'cables': [{%s'from': 'g', 'to': 'd'}]",
                       rows[i].box, rows[i].cable);
    g_autoptr (SqScene) scene = right_scene (text);
    SqCableRun run = first_run (scene);
    g_assert_cmpuint (run.n_points, >=, 2);
    g_assert_true (run.leaves);
    g_assert_true (run.leads_to == sq_scene_find (scene, "g"));
    assert_near (run.points[run.n_points - 1].x_mm, rows[i].x_mm, EXACT);
    assert_near (run.points[run.n_points - 1].y_mm, rows[i].y_mm, EXACT);
    g_assert_cmpstr (run.text, ==, rows[i].text);
    sq_cable_run_clear (&run);
  }
}

/* Fed from the plan, to a box that stands nowhere; and nothing at all where neither end does. */
static void
test_from_here (void)
{
  g_autoptr (SqScene) scene =
    right_scene ("'supplies': [{'id': 'g', 'kind': 'generator', 'at': [0, 4]},"
                 "{'id': 'd', 'label': 'Box Q', 'kind': 'distribution'},"
                 "{'id': 'e', 'kind': 'distribution'}], 'cables': ["
                 "{'from': 'g', 'to': 'd', 'via': [[6, 4], [6, 9.5]]}, {'from': 'e', 'to': 'd'}]");
  SqCableRun run = first_run (scene);
  g_assert_true (run.leaves);
  g_assert_cmpstr (run.text, ==, "to Box Q");
  assert_near (run.points[run.n_points - 1].x_mm, 170.0, EXACT);
  assert_near (run.points[run.n_points - 1].y_mm, TOP_MM, EXACT);
  sq_cable_run_clear (&run);
  run = sq_cable_run (&one_to_fifty, scene, SQ_AT (SqCable, scene->cables, 1));
  g_assert_cmpuint (run.n_points, ==, 0);
  sq_cable_run_clear (&run);
}

/* Between two that stand there: from edge to edge, as long as its way. */
static void
test_between (void)
{
  g_autoptr (SqScene) scene =
    right_scene ("'supplies': [{'id': 'g', 'kind': 'generator', 'at': [0, 4]},"
                 "{'id': 'd', 'kind': 'distribution', 'at': [3, 8]}],"
                 "'cables': [{'from': 'g', 'to': 'd', 'via': [[3, 4]]}]");
  SqCableRun run = first_run (scene);
  g_assert_false (run.leaves);
  g_assert_cmpuint (run.n_points, ==, 3);
  g_assert_cmpstr (run.text, ==, "7\u00a0m");
  /* A box is 4.4 mm high, a generator a circle of radius 3. */
  assert_near (run.points[0].x_mm, 110.0, EXACT);
  assert_near (run.points[0].y_mm, 60.0 + 2.2, EXACT);
  assert_near (run.points[2].x_mm, 50.0 + 3.0, EXACT);
  assert_near (run.points[2].y_mm, 140.0, EXACT);
  sq_cable_run_clear (&run);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/cables/to a supply that stands nowhere", test_to_nowhere);
  g_test_add_func ("/draw/cables/from here to nowhere", test_from_here);
  g_test_add_func ("/draw/cables/between two that are there", test_between);
  return g_test_run ();
}
