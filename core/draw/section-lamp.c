/* section-lamp.c: a lamp from the side, and what holds it */
#include "draw/section-lamp.h"

/* From the body to the pipe, besides half of the body (common practice). */
#define YOKE_AND_CLAMP_M 0.15

/* Legs meet the stem this share of their reach above the floor. */
#define HUB 0.8

/* A wall is looked for so far behind a lamp that hangs on one. */
#define MOST_WALL_ARM_M 0.8
#define WALL_ARM_M 0.2

/* Seen from the side, leaves and half scrims that are up are at the left of a throw to the right.
 */
static SqModifier *
side_modifier (const SqModifier *modifier, gboolean to_right)
{
  static const int swapped[] = { SQ_PART_FULL, SQ_PART_BOTTOM, SQ_PART_TOP };
  SqModifier *side = g_new (SqModifier, 1);
  *side = *modifier;
  side->leaves_deg[to_right ? SQ_LEAF_LEFT : SQ_LEAF_RIGHT] = modifier->leaves_deg[SQ_LEAF_TOP];
  side->leaves_deg[to_right ? SQ_LEAF_RIGHT : SQ_LEAF_LEFT] = modifier->leaves_deg[SQ_LEAF_BOTTOM];
  if (to_right)
    side->part = swapped[modifier->part];
  return side;
}

SqSideLamp *
sq_side_lamp_new (const SqView *view,
                  const SqScene *scene,
                  const SqCutPlane *plane,
                  const SqFixture *fixture)
{
  SqSideLamp *side = g_new0 (SqSideLamp, 1);
  SqFrame frame = sq_fixture_frame (scene, fixture);
  SqVector forward = sq_cut_direction (plane, frame.forward);
  SqVector up = sq_cut_direction (plane, frame.up);
  gboolean aimed = hypot (forward.x, forward.y) >= SQ_CUT_LEAST_COSINE;
  side->side = *fixture;
  side->modifiers = g_ptr_array_new_with_free_func (g_free);
  for (guint i = 0; i < fixture->modifiers->len; i++)
    g_ptr_array_add (side->modifiers,
                     side_modifier (SQ_AT (SqModifier, fixture->modifiers, i), forward.x >= 0.0));
  side->side.modifiers = side->modifiers;
  SqVector shown = aimed ? forward : up;
  side->lamp = (SqLamp){
    .lamp_class = sq_scene_class (scene, fixture->class_id),
    .fixture = &side->side,
    .at = sq_view_paper (view, sq_cut_place (plane, fixture->at)),
    .azimuth_deg = SQ_DEGREES (atan2 (shown.y, shown.x)),
    .elevation_deg = aimed             ? 0.0
                     : forward.z > 0.0 ? 90.0
                                       : -90.0,
    .roll_deg = fixture->roll_deg + 90.0,
  };
  return side;
}

void
sq_side_lamp_free (SqSideLamp *lamp)
{
  if (lamp == NULL)
    return;
  g_ptr_array_unref (lamp->modifiers);
  g_free (lamp);
}

double
sq_hang_height_m (const SqScene *scene, const SqFixture *fixture)
{
  const SqClass *lamp_class = sq_scene_class (scene, fixture->class_id);
  double ceiling = scene->room->ceiling_height_m;
  if (fixture->mount == SQ_MOUNT_CEILING && ceiling > fixture->at.z_m)
    return ceiling;
  if (fixture->mount != SQ_MOUNT_CEILING && fixture->mount != SQ_MOUNT_PIPE)
    return NAN;
  SqFrame frame = sq_fixture_frame (scene, fixture);
  double half = MAX (lamp_class->body->height_m, lamp_class->body->depth_m) / 2;
  double pivot = fixture->at.z_m - frame.forward.z * lamp_class->body->depth_m / 2;
  double hang = pivot + half + YOKE_AND_CLAMP_M;
  return ceiling > fixture->at.z_m ? MIN (hang, ceiling) : hang;
}

double
sq_stand_radius_m (const SqScene *scene, int mount, const char *stand_id)
{
  const SqStand *stand = stand_id != NULL ? sq_library_stand (scene->library, stand_id) : NULL;
  if (mount != SQ_MOUNT_STAND)
    return 0.0;
  return stand != NULL ? stand->footprint_m / 2 : SQ_LEGS_RADIUS_M;
}

void
sq_draw_side_stand (SqDrawing *drawing, SqPaperPoint top, double floor_mm, double radius_mm)
{
  SqColour soft = sq_ink (drawing->view, SQ_SOFT);
  double hub = MIN (HUB * radius_mm, 0.7 * (floor_mm - top.y_mm));
  SqPaperPoint foot = { top.x_mm, floor_mm - 0.3 * hub };
  SqPaperPoint joint = { top.x_mm, floor_mm - hub };
  sq_draw_line (drawing, top, foot, SQ_PEN_35, soft);
  for (int side = -1; side <= 1; side += 2) {
    SqPaperPoint toe = { top.x_mm + side * radius_mm, floor_mm };
    SqPaperPoint brace = { (joint.x_mm + toe.x_mm) / 2, (joint.y_mm + toe.y_mm) / 2 };
    sq_draw_line (drawing, joint, toe, SQ_PEN_18, soft);
    sq_draw_line (drawing, foot, brace, SQ_PEN_18, soft);
    sq_draw_dot (drawing, toe, 0.28, soft);
  }
}

/* A mast on a wheeled base: towers and lifts of every kind. */
static void
draw_lift (SqDrawing *drawing, SqPaperPoint top, double floor_mm)
{
  SqColour soft = sq_ink (drawing->view, SQ_SOFT);
  double k = drawing->view->mm_per_m, half = MAX (0.6 * k, 3.0), wheel = MAX (0.08 * k, 0.5);
  for (int side = -1; side <= 1; side += 2) {
    double x = top.x_mm + side * 0.7;
    sq_draw_line (drawing, (SqPaperPoint){ x, top.y_mm }, (SqPaperPoint){ x, floor_mm - 2 * wheel },
                  SQ_PEN_25, soft);
    sq_draw_circle_path (
      drawing, (SqPaperPoint){ top.x_mm + side * (half - wheel), floor_mm - wheel }, wheel);
    sq_draw_stroke (drawing, SQ_PEN_25, soft);
  }
  sq_draw_line (drawing, (SqPaperPoint){ top.x_mm - half, floor_mm - 2 * wheel },
                (SqPaperPoint){ top.x_mm + half, floor_mm - 2 * wheel }, SQ_PEN_35, soft);
}

/* The pipe, end on, and the clamp under it. */
static void
draw_pipe (SqDrawing *drawing, SqPaperPoint pivot, double pipe_mm)
{
  SqColour ink = sq_ink (drawing->view, SQ_INK);
  double radius = MAX (0.024 * drawing->view->mm_per_m, 0.8);
  SqPaperPoint pipe = { pivot.x_mm, pipe_mm };
  sq_draw_line (drawing, pivot, pipe, SQ_PEN_25, ink);
  sq_draw_box_path (
    drawing, sq_paper_box_round ((SqPaperPoint){ pipe.x_mm, pipe_mm + radius + 0.5 }, 0.65, 0.65),
    0.0);
  sq_draw_fill (drawing, ink, 1.0);
  sq_draw_circle_path (drawing, pipe, radius);
  sq_draw_outlined (drawing, SQ_PAPER, SQ_PEN_35);
}

static void
draw_ceiling_plate (SqDrawing *drawing, SqPaperPoint pivot, double ceiling_mm)
{
  SqColour ink = sq_ink (drawing->view, SQ_INK);
  sq_draw_line (drawing, pivot, (SqPaperPoint){ pivot.x_mm, ceiling_mm }, SQ_PEN_35, ink);
  sq_draw_line (drawing, (SqPaperPoint){ pivot.x_mm - 1.6, ceiling_mm + 0.35 },
                (SqPaperPoint){ pivot.x_mm + 1.6, ceiling_mm + 0.35 }, SQ_PEN_70, ink);
}

/* An arm to the wall behind, its plate on it. */
static void
draw_wall_arm (SqDrawing *drawing,
               const SqCutPlane *plane,
               const GArray *obstacles,
               SqPaperPoint pivot,
               gboolean to_right)
{
  const SqView *view = drawing->view;
  SqColour ink = sq_ink (view, SQ_INK);
  double sign = to_right ? -1.0 : 1.0;
  SqPlace place = sq_view_place (view, pivot);
  SqVector back = sq_vector_scale (plane->along, sign);
  double reach =
    sq_cut_reach_m (obstacles, sq_cut_point (plane, place), back, MOST_WALL_ARM_M, NULL);
  double arm = (reach < MOST_WALL_ARM_M ? reach : WALL_ARM_M) * view->mm_per_m;
  double x = pivot.x_mm + sign * MAX (arm, 1.0);
  sq_draw_line (drawing, pivot, (SqPaperPoint){ x, pivot.y_mm }, SQ_PEN_35, ink);
  sq_draw_line (drawing, (SqPaperPoint){ x, pivot.y_mm - 1.6 },
                (SqPaperPoint){ x, pivot.y_mm + 1.6 }, SQ_PEN_70, ink);
}

static void
draw_held (SqDrawing *drawing,
           const SqScene *scene,
           const SqCutPlane *plane,
           const GArray *obstacles,
           const SqSideLamp *side,
           double ceiling_m)
{
  const SqView *view = drawing->view;
  const SqFixture *fixture = &side->side;
  SqColour ink = sq_ink (view, SQ_INK);
  SqPaperPoint pivot = sq_lamp_body (view, &side->lamp).middle;
  double floor = sq_view_paper (view, (SqPlace){ 0.0, 0.0 }).y_mm;
  double hang = sq_hang_height_m (scene, fixture);
  double hang_mm = sq_view_paper (view, (SqPlace){ 0.0, hang }).y_mm;

  switch (fixture->mount) {
  case SQ_MOUNT_STAND:
    sq_draw_side_stand (drawing, pivot, floor,
                        sq_stand_radius_m (scene, fixture->mount, fixture->stand) * view->mm_per_m);
    break;
  case SQ_MOUNT_LIFT:
    draw_lift (drawing, pivot, floor);
    break;
  case SQ_MOUNT_CEILING:
    if (!isnan (ceiling_m) && hang >= ceiling_m) {
      draw_ceiling_plate (drawing, pivot, hang_mm);
      break;
    }
    draw_pipe (drawing, pivot, hang_mm);
    break;
  case SQ_MOUNT_PIPE:
    draw_pipe (drawing, pivot, hang_mm);
    break;
  case SQ_MOUNT_BOOM: /* the arm, end on */
    draw_pipe (drawing, pivot, pivot.y_mm - 3.0);
    break;
  case SQ_MOUNT_WALL:
    draw_wall_arm (drawing, plane, obstacles, pivot,
                   fabs (side->lamp.azimuth_deg) < 90.0 || side->lamp.elevation_deg != 0.0);
    break;
  case SQ_MOUNT_FLOOR:
    sq_draw_line (drawing, pivot, (SqPaperPoint){ pivot.x_mm, floor }, SQ_PEN_35, ink);
    sq_draw_line (drawing, (SqPaperPoint){ pivot.x_mm - 2.2, floor - 0.35 },
                  (SqPaperPoint){ pivot.x_mm + 2.2, floor - 0.35 }, SQ_PEN_70, ink);
    break;
  case SQ_MOUNT_HAND:
    sq_draw_line (drawing, pivot, (SqPaperPoint){ pivot.x_mm, pivot.y_mm + 4.6 }, SQ_PEN_35, ink);
    sq_draw_circle_path (drawing, (SqPaperPoint){ pivot.x_mm, pivot.y_mm + 5.4 }, 0.8);
    sq_draw_stroke (drawing, SQ_PEN_35, ink);
    break;
  case SQ_MOUNT_SET:
  default:
    break;
  }
}

void
sq_draw_side_lamp (SqDrawing *drawing,
                   const SqScene *scene,
                   const SqCutPlane *plane,
                   const GArray *obstacles,
                   const SqSideLamp *side,
                   double ceiling_m)
{
  if (side->lamp.lamp_class->optics != SQ_OPTICS_BULB)
    draw_held (drawing, scene, plane, obstacles, side, ceiling_m);
  sq_draw_lamp (drawing, &side->lamp);
}
