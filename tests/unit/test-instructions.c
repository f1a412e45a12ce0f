/* test-instructions.c: the same digits by every set of instructions
 *
 * For each class of the library, bare and with each set of modifiers, spot and flood by turns: what
 * a meter reads of a whole face, flat and dome, and candela; then the same of the quick kernels. */
#include "light-scene.h"
#include "light/whole-face.h"

#define MANY 71 /* not a multiple of any width of register */
#define FIRST_SEED 900

static const char *const modifier_rows[] = {
  "",
  "{'kind': 'scrim', 'stops': 1}",
  "{'kind': 'scrim', 'stops': 2, 'part': 'bottom'}",
  "{'kind': 'egg-crate', 'cutoff_deg': 40, 'transmission': 0.8}",
  "{'kind': 'snoot', 'cutoff_deg': 25}",
  "{'kind': 'scrim', 'part': 'top'}, {'kind': 'egg-crate', 'cutoff_deg': 50}",
};

/* Receptors, and the same for the eye; directions in the lamp's frame. */
typedef struct {
  double x[MANY], y[MANY], z[MANY], nx[MANY], ny[MANY], nz[MANY];
  float qx[MANY], qy[MANY], qz[MANY], qnx[MANY], qny[MANY], qnz[MANY];
} Crowd;

static SqVector
random_direction (GRand *dice)
{
  double length;
  SqVector v;
  do {
    v.x = g_rand_double_range (dice, -1, 1);
    v.y = g_rand_double_range (dice, -1, 1);
    v.z = g_rand_double_range (dice, -1, 1);
    length = sq_vector_length (v);
  } while (length > 1.0 || length < 0.1);
  return sq_vector_scale (v, 1.0 / length);
}

/* Most of them before the lamp, from its own size off to twenty times that; some behind it. */
static void
crowd_init (Crowd *crowd, GRand *dice, const SqLamp *lamp)
{
  for (gsize i = 0; i < MANY; i++) {
    SqVector way = random_direction (dice);
    if (i % 4 != 0)
      way = sq_vector_unit (sq_vector_sum (
        lamp->frame.forward, sq_vector_scale (way, g_rand_double_range (dice, 0.0, 0.9))));
    SqVector normal = random_direction (dice);
    if (i % 3 != 0)
      normal = sq_vector_unit (sq_vector_sum (normal, sq_vector_scale (way, -1.3)));
    /* Right before a face no kernel is asked, and it takes long. */
    double least_m = i == 0 ? 0.1 : MAX (2.0 * lamp->radius_m, 0.02);
    double far_m = g_rand_double_range (dice, 1.0, 20.0);
    SqPoint at = sq_point_along (lamp->fixture->at, way, least_m * far_m);
    crowd->x[i] = at.x_m, crowd->y[i] = at.y_m, crowd->z[i] = at.z_m;
    crowd->nx[i] = normal.x, crowd->ny[i] = normal.y, crowd->nz[i] = normal.z;
    crowd->qx[i] = (float)at.x_m, crowd->qy[i] = (float)at.y_m, crowd->qz[i] = (float)at.z_m;
    crowd->qnx[i] = (float)normal.x, crowd->qny[i] = (float)normal.y;
    crowd->qnz[i] = (float)normal.z;
  }
}

static void
hold_lux (const SqLamp *lamp, const Crowd *crowd, gboolean dome, guint *n_lit)
{
  const SqReceptors receptors = { crowd->x,  crowd->y,  crowd->z, crowd->nx,
                                  crowd->ny, crowd->nz, dome };
  double plain[MANY], lux[MANY];
  SqWholeFace face;
  sq_whole_face_init (&face, lamp, dome);
  sq_whole_face_find (&face, sq_face_kernel_of (0), &receptors, MANY, plain);
  for (gsize i = 0; i < MANY; i++)
    *n_lit += plain[i] > 0.0;
  for (guint k = 1; sq_face_kernel_of (k); k++) {
    sq_whole_face_find (&face, sq_face_kernel_of (k), &receptors, MANY, lux);
    g_assert_cmpmem (lux, sizeof lux, plain, sizeof plain);
  }
  sq_whole_face_lux (lamp, &receptors, MANY, lux); /* by whichever the meter takes */
  g_assert_cmpmem (lux, sizeof lux, plain, sizeof plain);
}

static void
hold_candela (const SqLamp *lamp, const Crowd *crowd)
{
  double plain[MANY], candela[MANY];
  float quick_plain[MANY], quick[MANY];
  /* The normals are as good directions as any. */
  for (guint k = 0; sq_face_kernel_of (k); k++) {
    sq_face_kernel_of (k)->candela (&lamp->intensity, &lamp->passing, crowd->nx, crowd->ny,
                                    crowd->nz, MANY, k ? candela : plain);
    if (k)
      g_assert_cmpmem (candela, sizeof candela, plain, sizeof plain);
  }
  for (guint k = 0; sq_quick_face_kernel_of (k); k++) {
    sq_quick_face_kernel_of (k)->candela (&lamp->intensity, &lamp->passing, crowd->qnx, crowd->qny,
                                          crowd->qnz, MANY, k ? quick : quick_plain);
    if (k)
      g_assert_cmpmem (quick, sizeof quick, quick_plain, sizeof quick_plain);
  }
}

static void
hold_quick (const SqLamp *lamp, const Crowd *crowd)
{
  const SqQuickReceptors receptors = { crowd->qx,  crowd->qy,  crowd->qz, crowd->qnx,
                                       crowd->qny, crowd->qnz, FALSE };
  float plain[MANY], lux[MANY];
  SqWholeFace face;
  sq_whole_face_init_quick (&face, lamp, sq_point (0, 0, 0), FALSE);
  sq_whole_face_find_quick (&face, sq_quick_face_kernel_of (0), &receptors, MANY, plain);
  for (guint k = 1; sq_quick_face_kernel_of (k); k++) {
    sq_whole_face_find_quick (&face, sq_quick_face_kernel_of (k), &receptors, MANY, lux);
    g_assert_cmpmem (lux, sizeof lux, plain, sizeof plain);
  }
}

static void
test_library (void)
{
  g_autoptr (SqLibrary) library = sq_library_new ();
  const GPtrArray *classes = sq_library_classes (library);
  g_autoptr (GRand) dice = g_rand_new_with_seed (FIRST_SEED);
  guint n_lit = 0, n_kernels = 0;
  while (sq_face_kernel_of (n_kernels))
    g_test_message ("kernel: %s", sq_face_kernel_of (n_kernels++)->name);
  for (guint i = 0; i < classes->len; i++)
    for (guint k = 0; k < G_N_ELEMENTS (modifier_rows); k++) {
      const SqClass *class = g_ptr_array_index (classes, i);
      g_autoptr (SqScene) scene = scene_of (
        "'fixtures': [{'id': 'f', 'class': '%s', 'at': [1, 2, 3], 'aim': [4, 6, 1.5], 'beam': %u,"
        "'roll': 20, 'modifiers': [%s]}]",
        class->id, (i + k) % 2, modifier_rows[k]);
      g_autoptr (GArray) lamps = sq_lamps_new (scene, NULL);
      const SqLamp *lamp = &g_array_index (lamps, SqLamp, 0);
      Crowd crowd;
      crowd_init (&crowd, dice, lamp);
      hold_lux (lamp, &crowd, FALSE, &n_lit);
      hold_lux (lamp, &crowd, TRUE, &n_lit);
      hold_candela (lamp, &crowd);
      hold_quick (lamp, &crowd);
    }
  g_test_message ("%u classes, %u lit readings", classes->len, n_lit);
  g_assert_cmpuint (n_lit, >, classes->len * MANY);
  if (n_kernels < 2)
    g_test_message ("this machine has one set of instructions only: nothing to compare");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/instructions/all classes and modifiers", test_library);
  return g_test_run ();
}
