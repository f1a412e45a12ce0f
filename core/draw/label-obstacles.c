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
