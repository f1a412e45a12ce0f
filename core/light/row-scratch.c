/* row-scratch.c: what a thread needs to light rows, used over and over */
#include "light/row-scratch.h"

SqRowScratch *
sq_row_scratch_new (void)
{
  SqRowScratch *scratch = g_new0 (SqRowScratch, 1);
  sq_sight_init (&scratch->sight);
  return scratch;
}

void
sq_row_scratch_free (SqRowScratch *scratch)
{
  if (!scratch)
    return;
  sq_sight_clear (&scratch->sight);
  g_free (scratch->some);
  g_free (scratch->all);
  g_free (scratch->coming);
  g_free (scratch->here);
  g_free (scratch->which);
  g_free (scratch->whole);
  g_free (scratch->shadows);
  g_free (scratch->between);
  g_free (scratch->x);
  g_free (scratch->quick.x);
  g_free (scratch->dimmed);
  for (guint i = 0; i < scratch->n_turned; i++)
    sq_turned_face_clear (&scratch->turned[i]);
  g_free (scratch->turned);
  g_free (scratch);
}

void
sq_row_scratch_fit (SqRowScratch *scratch, guint n_shades, guint n_columns)
{
  if (n_shades > scratch->n_shades) {
    scratch->n_shades = n_shades;
    scratch->some = g_renew (SqSpan, scratch->some, (gsize)n_shades * SQ_BLOCK_ROWS);
    scratch->all = g_renew (SqSpan, scratch->all, (gsize)n_shades * SQ_BLOCK_ROWS);
    scratch->coming = g_renew (SqRowShade, scratch->coming, n_shades);
    scratch->here = g_renew (SqRowShade, scratch->here, n_shades);
    scratch->which = g_renew (guint, scratch->which, n_shades);
    scratch->whole = g_renew (gboolean, scratch->whole, n_shades);
    scratch->shadows = g_renew (const void *, scratch->shadows, n_shades);
    scratch->between = g_renew (const SqObstacle *, scratch->between, n_shades);
  }
  if (n_columns > scratch->n_columns) {
    scratch->n_columns = n_columns;
    scratch->dimmed = g_renew (SqSpan, scratch->dimmed, n_columns);
    guint n_turned = (n_columns + SQ_TURNED_TILE - 1) / SQ_TURNED_TILE;
    scratch->turned = g_renew (SqTurnedFace, scratch->turned, n_turned);
    for (; scratch->n_turned < n_turned; scratch->n_turned++)
      scratch->turned[scratch->n_turned] = (SqTurnedFace){ 0 };
    scratch->x = g_renew (double, scratch->x, 6 * (gsize)n_columns);
    double **rows[] = { &scratch->y, &scratch->z, &scratch->nx, &scratch->ny, &scratch->nz };
    for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
      *rows[i] = scratch->x + (i + 1) * n_columns;
    SqQuickRow *quick = &scratch->quick;
    float **quick_rows[] = {
      &quick->y, &quick->z, &quick->nx, &quick->ny, &quick->nz, &quick->share
    };
    quick->x = g_renew (float, quick->x, 7 * (gsize)n_columns);
    for (gsize i = 0; i < G_N_ELEMENTS (quick_rows); i++)
      *quick_rows[i] = quick->x + (i + 1) * n_columns;
  }
}
