/* label-obstacles.c: what labels keep clear of, and how dearly */
#include "draw/label-obstacles.h"

SqLabelObstacles *
sq_label_obstacles_new (SqPaperBox field)
{
  SqLabelObstacles *obstacles = g_new0 (SqLabelObstacles, 1);
  obstacles->boxes = g_array_new (FALSE, FALSE, sizeof (SqObstacle));
  obstacles->lines = g_array_new (FALSE, FALSE, sizeof (SqObstacleLine));
  obstacles->field = field;
  return obstacles;
}

void
sq_label_obstacles_free (SqLabelObstacles *obstacles)
{
  if (obstacles == NULL)
    return;
  g_array_unref (obstacles->boxes);
  g_array_unref (obstacles->lines);
  g_free (obstacles);
}

void
sq_label_obstacles_add_box (SqLabelObstacles *obstacles,
                            SqPaperBox box,
                            double cost,
                            const void *of)
{
  const SqObstacle obstacle = { box, cost, of };
  g_array_append_val (obstacles->boxes, obstacle);
}

void
sq_label_obstacles_add_line (SqLabelObstacles *obstacles, SqPaperLine line, double cost)
{
  const SqObstacleLine obstacle = { line, cost };
  g_array_append_val (obstacles->lines, obstacle);
}

void
sq_label_obstacles_add_turned (SqLabelObstacles *obstacles,
                               SqTurnedBox box,
                               double cost,
                               const void *of)
{
  gboolean along = box.half_length_mm >= box.half_width_mm;
  double long_half = along ? box.half_length_mm : box.half_width_mm;
  double short_half = along ? box.half_width_mm : box.half_length_mm;
  double angle = box.angle_rad + (along ? 0.0 : G_PI / 2);
  double c = fabs (cos (angle)), s = fabs (sin (angle));
  /* Upright already: one box is exact. Else pieces as long as they are wide. */
  int n = MIN (c, s) < 1e-3 ? 1 : CLAMP ((int)ceil (long_half / MAX (short_half, 0.5)), 1, 80);
  double piece = long_half / n;

  for (int i = 0; i < n; i++) {
    SqPaperPoint middle = sq_paper_along (box.middle, angle, (2 * i + 1 - n) * piece);
    double half_width = piece * c + short_half * s, half_height = piece * s + short_half * c;
    sq_label_obstacles_add_box (obstacles, sq_paper_box_round (middle, half_width, half_height),
                                cost, of);
  }
}

double
sq_label_obstacles_covered_mm2 (const SqLabelObstacles *obstacles,
                                SqPaperBox box,
                                double least_cost)
{
  double covered = 0.0;
  for (guint i = 0; i < obstacles->boxes->len; i++) {
    const SqObstacle *obstacle = &g_array_index (obstacles->boxes, SqObstacle, i);
    if (obstacle->cost >= least_cost)
      covered += sq_paper_overlap_mm2 (box, obstacle->box);
  }
  return covered;
}

double
sq_label_obstacles_leader_cost (const SqLabelObstacles *obstacles,
                                SqPaperLine leader,
                                const void *of)
{
  double cost = 0.0;
  for (guint i = 0; i < obstacles->boxes->len; i++) {
    const SqObstacle *obstacle = &g_array_index (obstacles->boxes, SqObstacle, i);
    if (obstacle->cost < SQ_COST_PANEL || obstacle->of == of ||
        !sq_paper_line_hits (leader, obstacle->box))
      continue;
    cost += obstacle->cost >= SQ_COST_LABEL ? SQ_COST_LEADER_OVER : SQ_COST_LEADER_BODY;
  }
  for (guint i = 0; i < obstacles->lines->len; i++) {
    SqPaperLine line = g_array_index (obstacles->lines, SqObstacleLine, i).line;
    if (sq_paper_lines_cross (leader.from, leader.to, line.from, line.to))
      cost += SQ_COST_LEADER_LINE;
  }
  return cost;
}

double
sq_label_obstacles_cost (const SqLabelObstacles *obstacles, SqPaperBox box)
{
  double cost = 0.0;
  for (guint i = 0; i < obstacles->boxes->len; i++) {
    const SqObstacle *obstacle = &g_array_index (obstacles->boxes, SqObstacle, i);
    cost += obstacle->cost * sq_paper_overlap_mm2 (box, obstacle->box);
  }
  for (guint i = 0; i < obstacles->lines->len; i++) {
    const SqObstacleLine *line = &g_array_index (obstacles->lines, SqObstacleLine, i);
    if (sq_paper_line_hits (line->line, box))
      cost += line->cost;
  }
  return cost;
}
