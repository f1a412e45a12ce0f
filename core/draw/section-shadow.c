/* section-shadow.c: the shadow that somebody throws on the cut
 *
 * Rays are told apart by the height at which they pass the figure. Between two heights at which a
 * corner of something is in line, they all end on the same straight line: its ends are exact. */
#include "draw/section-shadow.h"

/* Nearer on the cut than this the lamp hangs over the figure. */
#define LEAST_AWAY_M 0.2

/* Past this no ray is followed. */
#define MOST_REACH_M 60.0

typedef struct {
  const GArray *parts;
  const SqThing *figure; /* not its own obstacle */
  SqPlace source;
  double at_m; /* where the figure stands, along the cut */
} Fan;

/* What a ray past the figure meets: a straight line from @a to @b, or the floor. */
typedef struct {
  gboolean any, floor;
  SqPlace a, b;
  const SqThing *on;
  double share; /* along the ray: 1 at the figure */
} Meeting;

#define MOST_MEETINGS 8

static gboolean
stops (const Fan *fan, const SqCutPart *part)
{
  return part->owner != fan->figure && sq_cut_stops (part->owner, part->passes);
}

/* Along from @from through @through, where it crosses the line a b, in lengths; NAN: it does not.
 */
static double
crossing (SqPlace from, SqPlace through, SqPlace a, SqPlace b)
{
  double dx = through.x_m - from.x_m, dy = through.y_m - from.y_m;
  double ex = b.x_m - a.x_m, ey = b.y_m - a.y_m;
  double cross = dx * ey - dy * ex;
  if (fabs (cross) < 1e-12)
    return NAN;
  double u = ((a.x_m - from.x_m) * dy - (a.y_m - from.y_m) * dx) / cross;
  if (u < -1e-9 || u > 1.0 + 1e-9)
    return NAN;
  return ((a.x_m - from.x_m) * ey - (a.y_m - from.y_m) * ex) / cross;
}

/* Furniture before the figure, and what it sits on, make one shadow with it, and the shadow goes on
 * behind furniture. */
static gboolean
is_furniture (const SqCutPart *part)
{
  return part->owner->kind == &sq_piece_kind;
}

static gboolean
stands_on (const Fan *fan, SqPlace place)
{
  const double just_over = 1e-6;
  place.y_m += just_over;
  for (guint i = 0; i < fan->parts->len; i++) {
    const SqCutPart *part = &g_array_index (fan->parts, SqCutPart, i);
    if (is_furniture (part) && sq_cut_holds (part, place))
      return TRUE;
  }
  return FALSE;
}

/* The side of a part that looks at the source: its outline runs counter-clockwise. */
static gboolean
looks_at (const SqCutPart *part, SqPlace a, SqPlace b, SqPlace source)
{
  return part->sheet ||
         (b.x_m - a.x_m) * (source.y_m - a.y_m) - (b.y_m - a.y_m) * (source.x_m - a.x_m) < 0.0;
}

static SqPlace
on_ray (const Fan *fan, double height_m, double share)
{
  return (SqPlace){ fan->source.x_m + share * (fan->at_m - fan->source.x_m),
                    fan->source.y_m + share * (height_m - fan->source.y_m) };
}

/* What the ray meets past the figure: furniture, in any order, then what ends it, if anything does.
 * Returns: how many; 0 too where something else keeps the light off the figure */
static guint
follow (const Fan *fan, double height_m, Meeting met[MOST_MEETINGS])
{
  const double clear = 1e-3, at_figure = 1.0 - 1e-9;
  SqPlace through = { fan->at_m, height_m };
  Meeting last = { .share = MOST_REACH_M / sq_place_distance_m (fan->source, through) };
  guint n = 0, kept = 0;
  double sinks = fan->source.y_m - height_m;
  if (sinks > 0.0 && fan->source.y_m / sinks < last.share)
    last = (Meeting){ .any = TRUE, .floor = TRUE, .share = fan->source.y_m / sinks };
  for (guint i = 0; i < fan->parts->len; i++) {
    const SqCutPart *part = &g_array_index (fan->parts, SqCutPart, i);
    if (!stops (fan, part) || sq_cut_holds (part, fan->source))
      continue;
    for (guint k = 0; k < (part->sheet ? 1 : part->n); k++) {
      SqPlace a = part->corner[k], b = part->corner[(k + 1) % part->n];
      double share = crossing (fan->source, through, a, b);
      if (!(share > clear) || !looks_at (part, a, b, fan->source))
        continue;
      const Meeting meeting = { TRUE, FALSE, a, b, part->owner, share };
      if (is_furniture (part) && share >= at_figure && n + 1 < MOST_MEETINGS)
        met[n++] = meeting;
      else if (!is_furniture (part) && share < last.share)
        last = meeting;
    }
  }
  if (last.any && last.share < at_figure)
    return 0;
  for (guint i = 0; i < n; i++)
    if (met[i].share < last.share)
      met[kept++] = met[i];
  if (last.any && !(last.floor && stands_on (fan, on_ray (fan, height_m, last.share))))
    met[kept++] = last;
  return kept;
}

/* Where the ray past the figure at @height_m meets the line that @meeting says, however far on. */
static SqPlace
meets (const Fan *fan, double height_m, const Meeting *meeting)
{
  double dx = fan->at_m - fan->source.x_m, dy = height_m - fan->source.y_m;
  double share = meeting->share;
  if (meeting->floor) {
    share = dy < 0.0 ? fan->source.y_m / -dy : share;
  } else if (meeting->any) {
    double ex = meeting->b.x_m - meeting->a.x_m, ey = meeting->b.y_m - meeting->a.y_m;
    double cross = dx * ey - dy * ex;
    share =
      ((meeting->a.x_m - fan->source.x_m) * ey - (meeting->a.y_m - fan->source.y_m) * ex) / cross;
  }
  return on_ray (fan, height_m, share);
}

static int
rising (gconstpointer a, gconstpointer b)
{
  double x = *(const double *)a, y = *(const double *)b;
  return (x > y) - (x < y);
}

/* Heights at the figure at which a corner is in line with the source. */
static GArray *
heights (const Fan *fan, double foot_m, double crown_m)
{
  GArray *list = g_array_new (FALSE, FALSE, sizeof (double));
  g_array_append_val (list, foot_m);
  g_array_append_val (list, crown_m);
  for (guint i = 0; i < fan->parts->len; i++) {
    const SqCutPart *part = &g_array_index (fan->parts, SqCutPart, i);
    for (guint k = 0; stops (fan, part) && k < part->n; k++) {
      double share = (fan->at_m - fan->source.x_m) / (part->corner[k].x_m - fan->source.x_m);
      double height = fan->source.y_m + share * (part->corner[k].y_m - fan->source.y_m);
      if (share > 0.0 && height > foot_m && height < crown_m)
        g_array_append_val (list, height);
      /* and at which a side goes past the figure */
      SqPlace a = part->corner[k], b = part->corner[(k + 1) % part->n];
      if ((a.x_m < fan->at_m) == (b.x_m < fan->at_m))
        continue;
      height = a.y_m + (fan->at_m - a.x_m) / (b.x_m - a.x_m) * (b.y_m - a.y_m);
      if (height > foot_m && height < crown_m)
        g_array_append_val (list, height);
    }
  }
  g_array_sort (list, rising);
  return list;
}

static gboolean
is_same_line (const SqShadowStretch *stretch, SqPlace to)
{
  const double level = 1e-9;
  double turn = (stretch->to.x_m - stretch->from.x_m) * (to.y_m - stretch->from.y_m) -
                (stretch->to.y_m - stretch->from.y_m) * (to.x_m - stretch->from.x_m);
  return fabs (turn) < level;
}

/* Goes on with what it continues, if there is such. */
static void
add_stretch (GArray *stretches, SqPlace from, SqPlace to, const SqThing *on)
{
  const double least = 1e-6;
  if (sq_place_distance_m (from, to) < least)
    return;
  for (guint i = 0; i < stretches->len; i++) {
    SqShadowStretch *before = &g_array_index (stretches, SqShadowStretch, i);
    if (before->on == on && sq_place_distance_m (before->to, from) < least &&
        is_same_line (before, to)) {
      before->to = to;
      return;
    }
  }
  const SqShadowStretch stretch = { from, to, on };
  g_array_append_val (stretches, stretch);
}

static void
run_along (const Fan *fan, SqSectionShadow *shadow)
{
  g_autoptr (GArray) list = heights (fan, shadow->foot.y_m, shadow->crown.y_m);
  for (guint i = 0; i + 1 < list->len; i++) {
    double low = g_array_index (list, double, i), high = g_array_index (list, double, i + 1);
    Meeting met[MOST_MEETINGS];
    if (high - low < 1e-9)
      continue;
    guint n = follow (fan, (low + high) / 2, met);
    for (guint k = 0; k < n; k++)
      add_stretch (shadow->stretches, meets (fan, low, &met[k]), meets (fan, high, &met[k]),
                   met[k].on);
  }
}

/* The first that the ray from @source over the crown meets. */
static gboolean
over_crown (Fan fan, SqPlace source, SqPlace crown, SqPlace *end, const SqThing **on)
{
  Meeting met[MOST_MEETINGS];
  fan.source = source;
  fan.at_m = crown.x_m;
  guint n = follow (&fan, crown.y_m, met), first = 0;
  for (guint i = 1; i < n; i++)
    if (met[i].share < met[first].share)
      first = i;
  if (n == 0)
    return FALSE;
  *end = meets (&fan, crown.y_m, &met[first]);
  *on = met[first].on;
  return TRUE;
}

gboolean
sq_section_shadow (const SqSectionThrow *way,
                   const GArray *parts,
                   const SqCutPlane *plane,
                   const SqMark *mark,
                   SqSectionShadow *shadow)
{
  SqPlace foot = sq_cut_place (plane, sq_point_above (mark->at, mark->floor_m));
  *shadow = (SqSectionShadow){ .mark = mark,
                               .foot = foot,
                               .crown = { foot.x_m, foot.y_m + sq_mark_crown_height_m (mark) } };
  SqPlace source = way->framed_m > 0.0 ? way->ticks_from : way->from;
  Fan fan = { parts, &mark->thing, source, foot.x_m };
  if (mark->posture == SQ_POSTURE_LIE || fabs (foot.x_m - source.x_m) < LEAST_AWAY_M)
    return FALSE;
  shadow->stretches = g_array_new (FALSE, FALSE, sizeof (SqShadowStretch));
  run_along (&fan, shadow);
  const SqThing *edge_on[SQ_EDGES];
  shadow->ends = over_crown (fan, source, shadow->crown, &shadow->end, &shadow->end_on);
  double size = sq_place_distance_m (way->source[SQ_EDGE_ABOVE], way->source[SQ_EDGE_UNDER]);
  for (int edge = 0; edge < SQ_EDGES && shadow->ends && size > 0.0; edge++)
    shadow->has_edge[edge] =
      over_crown (fan, way->source[edge], shadow->crown, &shadow->edge[edge], &edge_on[edge]) &&
      edge_on[edge] == shadow->end_on;
  if (shadow->stretches->len > 0)
    return TRUE;
  sq_section_shadow_clear (shadow);
  return FALSE;
}

void
sq_section_shadow_clear (SqSectionShadow *shadow)
{
  g_clear_pointer (&shadow->stretches, g_array_unref);
}

double
sq_section_shadow_length_m (const SqSectionShadow *shadow)
{
  return shadow->ends ? fabs (shadow->end.x_m - shadow->foot.x_m) : INFINITY;
}

double
sq_section_shadow_height_m (const SqSectionShadow *shadow)
{
  return shadow->ends && shadow->end_on != NULL ? shadow->end.y_m : 0.0;
}
