/* kept-field.h: one lamp's field on one grid, and how it is mended when something moved */
#pragma once

#include "light/lamp-rows.h"
#include "light/lit-scene.h"
#include "light/map.h"

G_BEGIN_DECLS

typedef struct {
  SqLitScene *lit; /* a reference: what the field holds for */
  guint lamp;      /* index in lit->lamps */
  SqReceivers receivers;
  SqWay way;
  SqLampRows rows;
  SqSpan *todo;  /* (nullable): of each row, the columns still to be worked out */
  double *exact; /* rows × columns; or */
  float *quick;
  guint64 used;  /* when; the store's own count */
  guint64 stamp; /* another whenever its light changed */
} SqKeptField;

/* All of it is still to be worked out. */
SqKeptField *sq_kept_field_new (SqLitScene *lit,
                                guint lamp,
                                const SqReceivers *receivers,
                                SqWay way);
void sq_kept_field_free (SqKeptField *field);

/* TRUE if the field is that of @lit's lamp number @lamp, but for what may stand in its way. */
gboolean sq_kept_field_suits (const SqKeptField *field,
                              const SqLitScene *lit,
                              guint lamp,
                              const SqReceivers *receivers,
                              SqWay way);

/* sq_kept_field_move:
 * @was: what sq_obstacles_match() says of the obstacles of field->lit and those of @lit
 *
 * The field is for @lit from now on; where a shadow was or is that is there no longer or was not
 * there is to be worked out anew. */
void sq_kept_field_move (SqKeptField *field, SqLitScene *lit, guint lamp, const int *was);

/* The same where nothing that may stand in its way has changed. */
void sq_kept_field_stay (SqKeptField *field, SqLitScene *lit, guint lamp);

/* TRUE if any of a block of rows is to be worked out. */
gboolean sq_kept_field_has_todo (const SqKeptField *field, int first_row, int n_rows);

/* Works out what is to be done in a block of rows. Returns: how many points that was */
gsize sq_kept_field_do (SqKeptField *field, int first_row, int n_rows, SqRowScratch *scratch);

/* Nothing is left to be done. */
void sq_kept_field_done (SqKeptField *field);

gsize sq_kept_field_bytes (const SqKeptField *field);

G_END_DECLS
