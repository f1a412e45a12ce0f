/* lamp.c: a lamp made ready: its face, its doors, its output */
#include "light/lamp.h"

#include <string.h>

#include "light/face-kernel.h"
#include "light/steady-math.h"

/* A tube that is drawn without a diameter is as thin as this. */
#define THINNEST_TUBE_M 0.001
/* A face that is thinner than this is a point. */
#define THINNEST_FACE_M 1e-6

void
sq_disc_corners (SqPoint centre, SqVector half_across, SqVector half_up, SqPoint *corners)
{
  double step = 2.0 * G_PI / SQ_DISC_SIDES, grow = sqrt (step / sq_steady_sin (step));
  for (int i = 0; i < SQ_DISC_SIDES; i++) {
    SqPoint p = sq_point_along (centre, half_across, grow * sq_steady_cos (i * step));
    corners[i] = sq_point_along (p, half_up, grow * sq_steady_sin (i * step));
  }
}

void
sq_rect_corners (SqPoint centre, SqVector half_across, SqVector half_up, SqPoint *corners)
{
  static const int signs[4][2] = { { -1, -1 }, { 1, -1 }, { 1, 1 }, { -1, 1 } };
  for (int i = 0; i < 4; i++) {
    SqPoint p = sq_point_along (centre, half_across, signs[i][0]);
    corners[i] = sq_point_along (p, half_up, signs[i][1]);
  }
}

/* A leaf hinged along one side of the face: @out points from the middle of the face to the hinge,
 * @along is half of the hinge, @across is the face's size across it, which is the leaf's length. */
static void
add_leaf (SqLamp *lamp, SqVector out, SqVector along, double across_m, double open_deg)
{
  SqVector away = sq_vector_unit (out);
  double a = SQ_RADIANS (open_deg);
  SqVector leaf = sq_vector_sum (sq_vector_scale (lamp->frame.forward, sq_steady_cos (a)),
                                 sq_vector_scale (away, sq_steady_sin (a)));
  SqPoint hinge = sq_point_along (lamp->fixture->at, out, 1.0);
  SqObstacle *door = sq_obstacles_add (lamp->doors, &lamp->fixture->thing, 0.0, 0.0);
  sq_solid_init_sheet (&door->solid, sq_point_along (hinge, leaf, across_m / 2.0),
                       sq_vector_scale (leaf, across_m / 2.0), along);
}

/* Doors hang on a frame round a lens, not on its glass: so far out, in radii, that the polygon that
 * stands for a disc is within them. */
#define LENS_FRAME 1.004

static void
add_doors (SqLamp *lamp, const SqModifier *doors)
{
  double frame = lamp->n_face == SQ_DISC_SIDES ? LENS_FRAME : 1.0;
  SqVector right = sq_vector_scale (lamp->frame.right, frame * lamp->width_m / 2.0);
  SqVector up = sq_vector_scale (lamp->frame.up, frame * lamp->height_m / 2.0);
  const struct {
    SqVector out, along;
    double across_m;
  } hinges[SQ_LEAVES] = {
    [SQ_LEAF_TOP] = { up, right, lamp->height_m },
    [SQ_LEAF_RIGHT] = { right, up, lamp->width_m },
    [SQ_LEAF_BOTTOM] = { sq_vector_scale (up, -1.0), right, lamp->height_m },
    [SQ_LEAF_LEFT] = { sq_vector_scale (right, -1.0), up, lamp->width_m },
  };
  if (!lamp->doors)
    lamp->doors = sq_obstacles_new_empty ();
  for (int i = 0; i < SQ_LEAVES; i++)
    add_leaf (lamp, hinges[i].out, hinges[i].along, hinges[i].across_m, doors->leaves_deg[i]);
}

static void
shape_face (SqLamp *lamp, const SqFace *face)
{
  SqPoint at = lamp->fixture->at;
  lamp->width_m = face->width_m;
  lamp->height_m = sq_face_height_m (face);
  if (lamp->intensity.sends == SQ_SENDS_SPHERE) {
    lamp->shaped = SQ_SHAPED_BALL;
    lamp->height_m = lamp->width_m;
    lamp->radius_m = lamp->width_m / 2.0;
    return;
  }
  if (lamp->intensity.sends == SQ_SENDS_TUBE) {
    lamp->shaped = SQ_SHAPED_TUBE;
    lamp->height_m = MAX (lamp->height_m, THINNEST_TUBE_M);
    lamp->radius_m = sqrt (lamp->width_m * lamp->width_m + lamp->height_m * lamp->height_m) / 2.0;
    return;
  }
  SqVector right = sq_vector_scale (lamp->frame.right, lamp->width_m / 2.0);
  SqVector up = sq_vector_scale (lamp->frame.up, lamp->height_m / 2.0);
  lamp->shaped = SQ_SHAPED_FLAT;
  lamp->n_face = face->shape == SQ_SHAPE_DISC ? SQ_DISC_SIDES : 4;
  lamp->face = g_new (SqPoint, lamp->n_face);
  if (face->shape == SQ_SHAPE_DISC)
    sq_disc_corners (at, right, up, lamp->face);
  else
    sq_rect_corners (at, right, up, lamp->face);
  for (guint i = 0; i < lamp->n_face; i++) {
    double r = sq_vector_length (sq_vector_between (at, lamp->face[i]));
    lamp->radius_m = MAX (lamp->radius_m, r);
  }
}

double
sq_lamp_reach_rad (const SqLamp *lamp, double dim)
{
  double reach = sq_intensity_reach_rad (&lamp->intensity, dim);
  const GArray *parts = lamp->passing.parts;
  for (guint i = 0; i < parts->len; i++) {
    const SqPassingPart *part = &g_array_index (parts, SqPassingPart, i);
    if (part->kind == SQ_PASSING_EGG_CRATE) /* the corners of its square */
      reach = MIN (reach, sq_steady_atan2 (G_SQRT2 * part->tangent, 1.0));
    if (part->kind == SQ_PASSING_SNOOT)
      reach = MIN (reach, sq_steady_atan2 (part->tangent, 1.0));
  }
  return reach;
}

/* Parts are fine enough for a point that is one radius off the ball that holds the face, but no
 * finer than a quarter of the radius: nearer to a narrow beam they are made on the way. Even faces
 * need few, they have better ways. */
#define FINEST 0.25

static void
add_places (SqLamp *lamp, const SqLamp *like)
{
  if (like && like->places && like->n_face == lamp->n_face && like->even == lamp->even &&
      memcmp (like->face, lamp->face, lamp->n_face * sizeof (SqPoint)) == 0 &&
      sq_lamp_part_limit (like) == sq_lamp_part_limit (lamp)) {
    lamp->places = sq_face_places_ref (like->places);
    return;
  }

  double right_m[SQ_DISC_SIDES], up_m[SQ_DISC_SIDES];
  for (guint i = 0; i < lamp->n_face; i++) {
    SqVector off = sq_vector_between (lamp->fixture->at, lamp->face[i]);
    right_m[i] = sq_vector_dot (off, lamp->frame.right);
    up_m[i] = sq_vector_dot (off, lamp->frame.up);
  }
  double finest_m = lamp->radius_m * (lamp->even ? 0.5 : MAX (sq_lamp_part_limit (lamp), FINEST));
  lamp->places = sq_face_places_new (lamp->fixture->at, lamp->frame.right, lamp->frame.up, right_m,
                                     up_m, lamp->n_face, finest_m);
}

static gboolean
has_size (const SqFace *face, SqSends sends)
{
  return face && face->width_m >= THINNEST_FACE_M &&
         (sends == SQ_SENDS_TUBE || sq_face_height_m (face) >= THINNEST_FACE_M);
}

static double
output_of (const SqFixture *fixture, const SqClass *class)
{
  if (!fixture->on || fixture->level <= 0.0 || fixture->level < class->level_min)
    return 0.0;
  return fixture->level * sq_steady_exp2 (fixture->trim_stops);
}

static void
source_init (SqLamp *lamp, const SqScene *scene, const SqFixture *fixture, const SqLamp *like)
{
  const SqClass *class = sq_scene_class (scene, fixture->class_id);
  *lamp = (SqLamp){
    .fixture = fixture,
    .frame = sq_fixture_frame (scene, fixture),
    .intensity = sq_intensity_of (class, fixture->beam),
    .output = output_of (fixture, class),
  };
  SqSends sends = lamp->intensity.sends;
  sq_passing_init (&lamp->passing, scene, fixture, sq_intensity_half_up_rad (&lamp->intensity));
  if (sends == SQ_SENDS_NOTHING)
    lamp->output = 0.0;
  else if (has_size (class->face, sends))
    shape_face (lamp, class->face);
  else
    lamp->shaped = SQ_SHAPED_POINT;
  lamp->even = lamp->passing.parts->len == 0 && sends != SQ_SENDS_BEAM && sends != SQ_SENDS_SKIRT;
  if (lamp->shaped == SQ_SHAPED_FLAT)
    add_places (lamp, like);
  for (guint i = 0; i < fixture->modifiers->len && lamp->width_m > 0.0; i++) {
    const SqModifier *modifier = SQ_AT (SqModifier, fixture->modifiers, i);
    if (modifier->kind == SQ_MODIFIER_DOORS)
      add_doors (lamp, modifier);
  }
}

static void
clear_source (gpointer data)
{
  SqLamp *lamp = data;
  sq_passing_clear (&lamp->passing);
  g_clear_pointer (&lamp->face, g_free);
  g_clear_pointer (&lamp->places, sq_face_places_unref);
  g_clear_pointer (&lamp->doors, g_array_unref);
}

GArray *
sq_lamps_new (const SqScene *scene, const GArray *like)
{
  GArray *lamps = g_array_sized_new (FALSE, TRUE, sizeof (SqLamp), scene->fixtures->len);
  g_array_set_clear_func (lamps, clear_source);
  g_array_set_size (lamps, scene->fixtures->len);
  for (guint i = 0; i < scene->fixtures->len; i++)
    source_init (&g_array_index (lamps, SqLamp, i), scene, SQ_AT (SqFixture, scene->fixtures, i),
                 like && i < like->len ? &g_array_index (like, SqLamp, i) : NULL);
  return lamps;
}

double
sq_lamp_detail_rad (const SqLamp *lamp)
{
  return MIN (sq_intensity_detail_rad (&lamp->intensity), lamp->passing.detail_rad);
}

double
sq_lamp_part_limit (const SqLamp *lamp)
{
  return MIN (1.0 / 3.0, sq_lamp_detail_rad (lamp) / 2.0);
}

double
sq_lamp_shown_area_m2 (const SqLamp *lamp)
{
  double box_m2 = lamp->width_m * lamp->height_m;
  gboolean round = lamp->shaped == SQ_SHAPED_BALL || lamp->n_face == SQ_DISC_SIDES;
  return round ? box_m2 * G_PI_4 : box_m2;
}

void
sq_lamp_candela (
  const SqLamp *lamp, const double *x, const double *y, const double *z, gsize n, double *candela)
{
  sq_face_kernel_best ()->candela (&lamp->intensity, &lamp->passing, x, y, z, n, candela);
}
