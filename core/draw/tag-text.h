/* tag-text.h: what a lamp's tag says, as strings, before anything is drawn */
#pragma once

#include "draw/label.h"
#include "draw/lamp-mount.h"
#include "scene/scene.h"

G_BEGIN_DECLS

/* Further rows of a tag, on request. */
typedef enum {
  SQ_TAG_ROW_CHANNEL = 1 << 0, /* channel and address */
  SQ_TAG_ROW_CIRCUIT = 1 << 1,
} SqTagRows;

typedef struct {
  char *number;            /* unit number, else id */
  char *type;              /* name of the class, without remarks in brackets */
  char *level;             /* `60 %`; `off` */
  char *colour;            /* gels, else colour temperature; "" where the lamp is off */
  char *height;            /* of the lens, with its unit */
  char *channel, *circuit; /* NULL: not asked for, or none */
  const char *role_word;
  int role_line;
  SqMountGlyph mount;
  gboolean on;
  gboolean changed; /* by the look that is applied */
} SqTagText;

SqTagText *sq_tag_text_new (const SqScene *scene,
                            const SqFixture *fixture,
                            SqUnits units,
                            SqTagRows rows);
void sq_tag_text_free (SqTagText *text);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqTagText, sq_tag_text_free)

/* The second row: level, three spaces, colour. Returns: (transfer full) */
char *sq_tag_level_row (const SqTagText *text, SqTagDetail detail);

/* TRUE if the look applied to @scene says anything about the fixture of this id. */
gboolean sq_look_changes_fixture (const SqScene *scene, const char *id);

G_END_DECLS
