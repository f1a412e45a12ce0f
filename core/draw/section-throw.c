/* section-throw.c: where a lamp's light goes on the cut
 *
 * Light falls off as 1 / d²: each tick toward the lamp, at 1/√2 of the distance, is one stop more.
 */
#include "draw/section-throw.h"

#include "draw/beam-angles.h"
#include "draw/ray-cut.h"
#include "draw/shining-face.h"

/* No line is followed further than this. */
#define MOST_REACH_M 60.0

/* A ray may end this much short of the aim and still reach it. */
#define REACHED_M 0.01

/* Edges wider than this off the axis say nothing. */
#define MOST_EDGE_DEG 85.0

/* Turned a quarter about its axis, a lamp's beam is as wide as it is high. */
static void
beam_upward_deg (const SqScene *scene, const SqFixture *fixture, SqSectionThrow *way)
{
  SqFixture turned = *fixture;
  double half, tenth;
  turned.roll_deg += 90.0;
  if (!sq_fixture_beam_deg (scene, &turned, &half, &tenth) || half >= SQ_HARD_BEAM_DEG)
    return;
  way->hard = way->framed_m == 0.0;
  for (int edge = 0; edge < SQ_EDGES; edge++) {
    way->edge_deg[edge] = half / 2;
    way->tenth_deg[edge] = MIN (tenth / 2, MOST_EDGE_DEG);
  }
}

/* The upright direction across the axis, on the cut. */
static SqVector
across_axis (const SqSectionThrow *way)
{
  double tilt = SQ_RADIANS (way->tilt_deg);
  return sq_vector (-sin (tilt), cos (tilt), 0.0);
}

/* Leaves hang on the face's sides, as long as the face is across the hinge: from its middle light
 * gets past one's tip and no closer. */
static void
cut_by_doors (const SqClass *lamp_class,
              const SqModifier *doors,
              SqFrame frame,
              const SqCutPlane *plane,
              SqSectionThrow *way)
{
  const double in_line = 0.8;
  SqVector up = across_axis (way);
  if (lamp_class->face == NULL)
    return;
  double width = lamp_class->face->width_m, height = sq_face_height_m (lamp_class->face);
  const struct {
    SqVector out;
    double long_m;
  } leaves[SQ_LEAVES] = {
    [SQ_LEAF_TOP] = { frame.up, height },
    [SQ_LEAF_RIGHT] = { frame.right, width },
    [SQ_LEAF_BOTTOM] = { sq_vector_scale (frame.up, -1.0), height },
    [SQ_LEAF_LEFT] = { sq_vector_scale (frame.right, -1.0), width },
  };
  for (int i = 0; i < SQ_LEAVES; i++) {
    SqVector out = sq_cut_direction (plane, leaves[i].out);
    double side = out.x * up.x + out.y * up.y, open = SQ_RADIANS (doors->leaves_deg[i]);
    int edge = side > 0.0 ? SQ_EDGE_ABOVE : SQ_EDGE_UNDER;
    double tip = SQ_DEGREES (atan2 (0.5 + sin (open), cos (open)));
    if (fabs (side) < in_line || tip >= way->edge_deg[edge])
      continue;
    way->edge_deg[edge] = way->tenth_deg[edge] = tip;
    way->by_door[edge] = TRUE;
  }
}

static SqPlace
ray_end (const SqCutPlane *plane,
         const GArray *obstacles,
         SqPlace from,
         double angle_deg,
         const SqThing *not_of)
{
  double angle = SQ_RADIANS (angle_deg);
  SqVector toward = sq_vector_scale (plane->along, cos (angle));
  toward.z = sin (angle);
  double reach =
    sq_cut_reach_m (obstacles, sq_cut_point (plane, from), toward, MOST_REACH_M, not_of);
  return (SqPlace){ from.x_m + reach * cos (angle), from.y_m + reach * sin (angle) };
}

static void
work_out_edges (const SqCutPlane *plane, const GArray *obstacles, SqSectionThrow *way)
{
  for (int edge = 0; edge < SQ_EDGES; edge++) {
    double sign = edge == SQ_EDGE_ABOVE ? 1.0 : -1.0;
    way->half[edge] =
      ray_end (plane, obstacles, way->from, way->tilt_deg + sign * way->edge_deg[edge], NULL);
    way->tenth[edge] =
      ray_end (plane, obstacles, way->from, way->tilt_deg + sign * way->tenth_deg[edge], NULL);
  }
}

static void
add_ticks (SqSectionThrow *way)
{
  double whole = sq_place_distance_m (way->ticks_from, way->aim);
  double seen = sq_place_distance_m (way->ticks_from, way->end) + REACHED_M;
  for (int n = 0; n < SQ_SECTION_TICKS; n++) {
    double share = exp2 (-n / 2.0);
    if (share * whole > seen) { /* past what stops the light it says nothing */
      way->tick[way->n_ticks++] = SQ_NO_PLACE;
      continue;
    }
    way->tick[way->n_ticks++] =
      (SqPlace){ way->ticks_from.x_m + share * (way->aim.x_m - way->ticks_from.x_m),
                 way->ticks_from.y_m + share * (way->aim.y_m - way->ticks_from.y_m) };
  }
}

/* The frame takes over where its cut is met; else what shines of the lamp itself. */
static void
find_source (const SqClass *lamp_class,
             const SqFixture *fixture,
             const GArray *parts,
             SqSectionThrow *way)
{
  SqVector up = across_axis (way);
  SqShiningFace face = sq_shining_face (lamp_class, fixture);
  double half = sq_shining_extent_m (&face, fixture->roll_deg + 90.0) / 2;
  way->source[SQ_EDGE_ABOVE] =
    (SqPlace){ way->from.x_m + half * up.x, way->from.y_m + half * up.y };
  way->source[SQ_EDGE_UNDER] =
    (SqPlace){ way->from.x_m - half * up.x, way->from.y_m - half * up.y };
  for (guint i = 0; way->framed_m > 0.0 && i < parts->len; i++) {
    const SqCutPart *part = &g_array_index (parts, SqCutPart, i);
    if (part->owner->kind != &sq_panel_kind ||
        ((const SqPanel *)part->owner)->kind != SQ_PANEL_DIFFUSION)
      continue;
    SqPlace middle = { (part->corner[0].x_m + part->corner[1].x_m) / 2,
                       (part->corner[0].y_m + part->corner[1].y_m) / 2 };
    if (sq_place_distance_m (middle, way->ticks_from) >
        sq_place_distance_m (part->corner[0], part->corner[1]) / 2 + REACHED_M)
      continue;
    gboolean rises = part->corner[1].y_m > part->corner[0].y_m;
    way->source[SQ_EDGE_ABOVE] = part->corner[rises ? 1 : 0];
    way->source[SQ_EDGE_UNDER] = part->corner[rises ? 0 : 1];
  }
}

SqSectionThrow
sq_section_throw (const SqScene *scene,
                  const SqFixture *fixture,
                  const SqCutPlane *plane,
                  const GArray *obstacles)
{
  const SqClass *lamp_class = sq_scene_class (scene, fixture->class_id);
  SqFrame frame = sq_fixture_frame (scene, fixture);
  SqSectionThrow way = { .from = { 0.0, fixture->at.z_m } };
  g_autoptr (GArray) parts = sq_cut_parts (plane, obstacles);
  SqPoint aim;
  way.aimed = lamp_class->optics != SQ_OPTICS_ROUND && lamp_class->optics != SQ_OPTICS_BULB &&
              sq_vector_length (frame.forward) > 0.0;
  way.aim = way.end = way.ticks_from = way.from;
  if (way.aimed) {
    SqVector forward = sq_cut_direction (plane, frame.forward);
    way.tilt_deg = SQ_DEGREES (atan2 (forward.y, forward.x));
    const SqThing *at = fixture->aim.id != NULL ? sq_scene_find (scene, fixture->aim.id) : NULL;
    gboolean has_aim = sq_scene_aim_point (scene, &fixture->aim, &aim) &&
                       sq_vector_length (sq_vector_between (fixture->at, aim)) > REACHED_M;
    way.end = ray_end (plane, obstacles, way.from, way.tilt_deg, at);
    way.aim = has_aim ? sq_cut_place (plane, aim) : way.end;
    way.away_m = sq_place_distance_m (way.from, way.aim);
    way.reaches = sq_place_distance_m (way.from, way.end) > way.away_m - REACHED_M;
    if (way.reaches)
      way.end = way.aim;
    way.ticks_from = way.from;
    way.framed_m =
      sq_frame_on_the_way_m (scene, fixture->at, sq_vector_scale (frame.forward, way.away_m));
    if (way.framed_m > 0.0 && way.framed_m < sq_place_distance_m (way.from, way.end)) {
      double share = way.framed_m / way.away_m;
      way.ticks_from = (SqPlace){ way.from.x_m + share * (way.aim.x_m - way.from.x_m),
                                  way.from.y_m + share * (way.aim.y_m - way.from.y_m) };
    }
    add_ticks (&way);
    beam_upward_deg (scene, fixture, &way);
    for (guint i = 0; way.hard && i < fixture->modifiers->len; i++)
      if (SQ_AT (SqModifier, fixture->modifiers, i)->kind == SQ_MODIFIER_DOORS)
        cut_by_doors (lamp_class, SQ_AT (SqModifier, fixture->modifiers, i), frame, plane, &way);
    if (way.hard)
      work_out_edges (plane, obstacles, &way);
  }
  find_source (lamp_class, fixture, parts, &way);
  return way;
}

double
sq_section_beam_m (const SqSectionThrow *way)
{
  if (!way->hard)
    return 0.0;
  return way->away_m * (tan (SQ_RADIANS (way->edge_deg[SQ_EDGE_ABOVE])) +
                        tan (SQ_RADIANS (way->edge_deg[SQ_EDGE_UNDER])));
}

double
sq_section_source_deg (const SqSectionThrow *way)
{
  SqPlace a = way->source[SQ_EDGE_ABOVE], b = way->source[SQ_EDGE_UNDER];
  double above = atan2 (a.y_m - way->aim.y_m, a.x_m - way->aim.x_m);
  double under = atan2 (b.y_m - way->aim.y_m, b.x_m - way->aim.x_m);
  double between = fabs (above - under);
  return way->away_m > 0.0 ? SQ_DEGREES (MIN (between, 2.0 * G_PI - between)) : 0.0;
}
