/* kept-fields.c: maps that are asked for again and again, with what moved done anew and no more */
#include "light/kept-fields.h"
#include "light/crew.h"
#include "light/field-sum.h"
#include "light/inside.h"
#include "light/kept-field.h"
#include "light/left-out.h"
#include "light/rest-sum.h"

/* Fields of one lamp, at several places, that are kept for when it comes back. */
#define MOST_OF_A_LAMP 4

struct SqKeptFields {
  gsize most_bytes;
  int threads;
  SqCrew *crew;
  GHashTable *lamps; /* id → GPtrArray of SqKeptField, the last used first */
  SqLitScene *last;  /* (nullable): of the last map */
  guint64 clock;     /* counts maps */
  guint64 stamps;    /* counts changes of fields */
  SqRestSum rest;    /* of the quick way */
  SqInside inside;   /* of the last map */
  SqKeptWork work;
};

SqKeptFields *
sq_kept_fields_new (gsize most_bytes, int threads)
{
  SqKeptFields *kept = g_new (SqKeptFields, 1);
  *kept = (SqKeptFields){
    .most_bytes = most_bytes,
    .threads = threads,
    .crew = sq_crew_new (threads),
    .lamps =
      g_hash_table_new_full (g_str_hash, g_str_equal, g_free, (GDestroyNotify)g_ptr_array_unref),
  };
  return kept;
}

void
sq_kept_fields_free (SqKeptFields *kept)
{
  if (!kept)
    return;
  g_hash_table_unref (kept->lamps);
  sq_lit_scene_unref (kept->last);
  sq_crew_free (kept->crew);
  sq_rest_sum_clear (&kept->rest);
  sq_inside_clear (&kept->inside);
  g_free (kept);
}

SqKeptWork
sq_kept_fields_work (const SqKeptFields *kept)
{
  return kept->work;
}

/* Which of the obstacles of two scenes are the same ones: worked out once for all lamps. */
typedef struct {
  const SqLitScene *then; /* borrowed, and only compared */
  int *was;
  guint changes;
} Match;

static void
match_free (gpointer data)
{
  Match *match = data;
  g_free (match->was);
  g_free (match);
}

/* A lamp that burns: its field, and what is to be done to it. */
typedef struct {
  guint lamp; /* index in lit->lamps */
  SqKeptField *field;
  const Match *move; /* (nullable) */
} Burning;

/* One map on its way. */
typedef struct {
  SqKeptFields *kept;
  SqLightMap *map;
  SqLitScene *lit;
  SqReceivers receivers;
  GPtrArray *matches;   /* Match */
  GArray *burning;      /* Burning, in file order */
  GArray *blocks;       /* Block */
  const double **exact; /* what is summed, of each lamp that burns */
  const float **quick;
  double *times;
  SqRestUse use;
} Job;

/* Rows of one field that have something to be worked out. */
typedef struct {
  SqKeptField *field;
  int first_row, n_rows;
  gsize points; /* (out) */
} Block;

static const Match *
match_with (Job *job, const SqLitScene *then)
{
  for (guint i = 0; i < job->matches->len; i++) {
    const Match *match = g_ptr_array_index (job->matches, i);
    if (match->then == then)
      return match;
  }
  Match *match = g_new (Match, 1);
  const GArray *now = job->lit->obstacles;
  *match = (Match){ .then = then, .was = g_new (int, MAX (now->len, 1)) };
  guint found = sq_obstacles_match (then->obstacles, now, match->was);
  match->changes = now->len - found + then->obstacles->len - found;
  g_ptr_array_add (job->matches, match);
  return match;
}

/* The field of the same light that has least to be mended. */
static void
find_field (Job *job, const GPtrArray *fields, Burning *burning)
{
  guint least = G_MAXUINT;
  for (guint i = 0; fields && i < fields->len; i++) {
    SqKeptField *field = g_ptr_array_index (fields, i);
    if (!sq_kept_field_suits (field, job->lit, burning->lamp, &job->receivers,
                              job->map->request.way))
      continue;
    const Match *match = match_with (job, field->lit);
    if (match->changes >= least)
      continue;
    least = match->changes;
    burning->field = field;
    burning->move = field->lit == job->lit ? NULL : match;
    if (least == 0)
      return;
  }
}

static void
gather (Job *job)
{
  const GArray *lamps = job->lit->lamps;
  SqKeptWork *work = &job->kept->work;
  *work = (SqKeptWork){ 0 };
  for (guint k = 0; k < lamps->len; k++) {
    const SqLamp *lamp = &g_array_index (lamps, SqLamp, k);
    Burning burning = { .lamp = k };
    if (!sq_lamp_burns (lamp))
      continue;
    find_field (job, g_hash_table_lookup (job->kept->lamps, lamp->fixture->id), &burning);
    if (!burning.field)
      work->cold++;
    else if (burning.move && burning.move->changes > 0)
      work->mended++;
    else
      work->kept++;
    g_array_append_val (job->burning, burning);
  }
}

static void
ready_field (guint index, SqRowScratch *scratch, gpointer data)
{
  Job *job = data;
  Burning *burning = &g_array_index (job->burning, Burning, index);
  if (!burning->field)
    burning->field =
      sq_kept_field_new (job->lit, burning->lamp, &job->receivers, job->map->request.way);
  else if (burning->move && burning->move->changes == 0)
    sq_kept_field_stay (burning->field, job->lit, burning->lamp);
  else if (burning->move)
    sq_kept_field_move (burning->field, job->lit, burning->lamp, burning->move->was);
}

/* New fields become the store's, in front of the others of their lamp. */
static void
keep_fields (Job *job)
{
  SqKeptFields *kept = job->kept;
  for (guint i = 0; i < job->burning->len; i++) {
    SqKeptField *field = g_array_index (job->burning, Burning, i).field;
    if (!field)
      continue;
    const char *id = g_array_index (field->lit->lamps, SqLamp, field->lamp).fixture->id;
    GPtrArray *fields = g_hash_table_lookup (kept->lamps, id);
    if (!fields) {
      fields = g_ptr_array_new_with_free_func ((GDestroyNotify)sq_kept_field_free);
      g_hash_table_insert (kept->lamps, g_strdup (id), fields);
    }
    guint place;
    if (g_ptr_array_find (fields, field, &place))
      g_ptr_array_steal_index (fields, place);
    g_ptr_array_insert (fields, 0, field);
    if (fields->len > MOST_OF_A_LAMP)
      g_ptr_array_set_size (fields, MOST_OF_A_LAMP);
    field->used = kept->clock;
  }
}

static void
do_block (guint index, SqRowScratch *scratch, gpointer data)
{
  Block *block = &g_array_index (((Job *)data)->blocks, Block, index);
  block->points = sq_kept_field_do (block->field, block->first_row, block->n_rows, scratch);
}

static void
list_blocks (Job *job)
{
  for (guint i = 0; i < job->burning->len; i++) {
    Block block = { .field = g_array_index (job->burning, Burning, i).field };
    if (!block.field->todo)
      continue;
    for (int first = 0; first < job->map->rows; first += SQ_BLOCK_ROWS) {
      block.first_row = first;
      block.n_rows = MIN (SQ_BLOCK_ROWS, job->map->rows - first);
      if (sq_kept_field_has_todo (block.field, first, block.n_rows))
        g_array_append_val (job->blocks, block);
    }
  }
}

/* What goes into the sum, in file order. */
static void
list_addends (Job *job)
{
  guint n = job->burning->len;
  g_autofree SqAddend *addends = g_new (SqAddend, n);
  job->exact = g_new (const double *, n);
  job->quick = g_new (const float *, n);
  job->times = g_new (double, n);
  for (guint k = 0; k < n; k++) {
    const Burning *burning = &g_array_index (job->burning, Burning, k);
    job->exact[k] = burning->field->exact;
    job->quick[k] = burning->field->quick;
    job->times[k] = g_array_index (job->lit->lamps, SqLamp, burning->lamp).output;
    addends[k] = (SqAddend){ burning->field->stamp, job->times[k] };
  }
  if (job->map->request.way == SQ_WAY_QUICK)
    job->use = sq_rest_sum_next (&job->kept->rest, addends, n,
                                 (gsize)job->map->rows * (gsize)job->map->columns);
}

/* The quick way: all fields, or the rest of them and the one that changes. */
static void
sum_quickly (const Job *job, gsize first, gsize n)
{
  const SqRestSum *rest = &job->kept->rest;
  guint n_fields = job->burning->len;
  double *total = job->map->lux + first;
  if (job->use == SQ_REST_NOT) {
    g_autofree float *sum = g_new (float, n);
    g_autofree const float **fields = g_new (const float *, n_fields);
    for (guint k = 0; k < n_fields; k++)
      fields[k] = job->quick[k] + first;
    sq_field_sum_quick (sum, fields, job->times, n_fields, n_fields, 0, n);
    for (gsize i = 0; i < n; i++)
      total[i] = sum[i];
    return;
  }
  if (job->use == SQ_REST_MAKE)
    sq_field_sum_quick (rest->sum, job->quick, job->times, n_fields, rest->but, first, n);
  sq_field_add_quick (total, rest->sum + first, job->quick[rest->but] + first,
                      job->times[rest->but], n);
}

static void
sum_block (guint index, SqRowScratch *scratch, gpointer data)
{
  const Job *job = data;
  SqLightMap *map = job->map;
  int first_row = (int)index * SQ_BLOCK_ROWS, n_rows = MIN (SQ_BLOCK_ROWS, map->rows - first_row);
  gsize first = (gsize)first_row * (gsize)map->columns, n = (gsize)n_rows * (gsize)map->columns;
  if (map->request.way == SQ_WAY_EXACT)
    sq_field_sum (map->lux, job->exact, job->times, job->burning->len, first, n);
  else
    sum_quickly (job, first, n);
  sq_inside_mark (&job->kept->inside, first_row, n_rows, map->lux + first);
}

static gboolean
add_up (Job *job, GCancellable *cancellable, GError **error)
{
  guint n_blocks = ((guint)job->map->rows + SQ_BLOCK_ROWS - 1) / SQ_BLOCK_ROWS;
  const SqRows sums = { n_blocks, sum_block, job };
  list_addends (job);
  SqInside *inside = &job->kept->inside;
  if (sq_inside_is_of_others (inside, job->lit->obstacles, &job->receivers.grid)) {
    sq_inside_clear (inside);
    sq_inside_init (inside, job->lit->obstacles, &job->receivers.grid);
  }
  gboolean done = sq_crew_do (job->kept->crew, &sums, cancellable, error);
  if (!done)
    job->kept->rest.stands = FALSE;
  g_free (job->exact);
  g_free (job->quick);
  g_free (job->times);
  return done;
}

/* Drops what was longest not used until all fits. */
static void
fit_cap (SqKeptFields *kept)
{
  for (;;) {
    GPtrArray *oldest_list = NULL, *fields;
    GHashTableIter iter;
    gpointer id, oldest_id = NULL;
    guint64 oldest = G_MAXUINT64;
    kept->work.bytes = 0;
    g_hash_table_iter_init (&iter, kept->lamps);
    while (g_hash_table_iter_next (&iter, &id, (gpointer *)&fields)) {
      for (guint i = 0; i < fields->len; i++)
        kept->work.bytes += sq_kept_field_bytes (g_ptr_array_index (fields, i));
      const SqKeptField *last = g_ptr_array_index (fields, fields->len - 1);
      if (last->used < oldest) {
        oldest = last->used;
        oldest_list = fields;
        oldest_id = id;
      }
    }
    if (kept->work.bytes <= kept->most_bytes)
      return;
    g_ptr_array_set_size (oldest_list, (int)oldest_list->len - 1);
    if (oldest_list->len == 0)
      g_hash_table_remove (kept->lamps, oldest_id);
  }
}

/* TRUE if the fields of all lamps that burn are less than may be kept. */
static gboolean
may_be_kept (const Job *job)
{
  gsize value = job->map->request.way == SQ_WAY_EXACT ? sizeof (double) : sizeof (float);
  gsize points = (gsize)job->map->rows * (gsize)job->map->columns;
  return job->burning->len * points <= job->kept->most_bytes / value;
}

static gboolean
fill (Job *job, GCancellable *cancellable, GError **error)
{
  SqCrew *crew = job->kept->crew;
  const SqRows ready = { job->burning->len, ready_field, job };
  gboolean done = sq_crew_do (crew, &ready, cancellable, error);
  keep_fields (job);
  if (!done)
    return FALSE;
  list_blocks (job);
  const SqRows blocks = { job->blocks->len, do_block, job };
  if (!sq_crew_do (crew, &blocks, cancellable, error))
    return FALSE;
  for (guint i = 0; i < job->burning->len; i++) {
    SqKeptField *field = g_array_index (job->burning, Burning, i).field;
    if (field->todo)
      field->stamp = ++job->kept->stamps;
    sq_kept_field_done (field);
  }
  for (guint i = 0; i < job->blocks->len; i++)
    job->kept->work.points += g_array_index (job->blocks, Block, i).points;
  return add_up (job, cancellable, error);
}

SqLightMap *
sq_kept_fields_map (SqKeptFields *kept,
                    const SqScene *scene,
                    const SqMapRequest *request,
                    GCancellable *cancellable,
                    GError **error)
{
  g_autoptr (SqLightMap) map = sq_light_map_new (scene, request, error);
  if (!map)
    return NULL;
  kept->clock++;
  if (!kept->last || kept->last->scene != scene) {
    SqLitScene *lit = sq_lit_scene_new (scene, kept->last);
    sq_lit_scene_unref (kept->last);
    kept->last = lit;
  }
  map->not_counted = sq_light_left_out (scene, kept->last->obstacles);
  Job job = {
    .kept = kept,
    .map = map,
    .lit = kept->last,
    .receivers = sq_light_map_receivers (map, scene),
    .matches = g_ptr_array_new_with_free_func (match_free),
    .burning = g_array_new (FALSE, FALSE, sizeof (Burning)),
    .blocks = g_array_new (FALSE, FALSE, sizeof (Block)),
  };
  gather (&job);
  gboolean fits = may_be_kept (&job);
  gboolean done = fits && fill (&job, cancellable, error);
  fit_cap (kept);
  g_ptr_array_unref (job.matches);
  g_array_unref (job.burning);
  g_array_unref (job.blocks);
  if (!fits)
    return sq_light_map (scene, request, kept->threads, cancellable, error);
  return done ? g_steal_pointer (&map) : NULL;
}
