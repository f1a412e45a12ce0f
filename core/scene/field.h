/* field.h: one row per field: what a thing is made of, said once
 *
 * Every kind of thing (a lamp, a wall, the whole scene) is a plain C struct that starts with an
 * SqThing, and one table of SqField rows that says for each member its key in the file, its type
 * of value, unit, ranges, default, label and help. Reader, writer, `--set`, looks, the format
 * reference and, in the window, details and undo are driven from these tables: a new field is a
 * new member and a new row. */
#pragma once

#include "base/geometry.h"
#include "base/quantity.h"

#include <json-glib/json-glib.h>

G_BEGIN_DECLS

typedef struct SqField SqField;
typedef struct SqKind SqKind;
typedef struct SqThing SqThing;
typedef struct SqWhere SqWhere;

/* Where in a file a value stands, as a chain from the innermost outward; lives on the stack. Its
 * text is what a user reads: `fixtures[3].aim`. */
struct SqWhere {
  const SqWhere *up;
  const char *key; /* NULL: a member of a list */
  guint index;     /* of the member, where @key is NULL */
};

/* Returns: (transfer full): `fixtures[3].aim`; `the file` for NULL */
char *sq_where_text (const SqWhere *where);

/* What a reader is told and tells on the way. */
typedef struct {
  const SqWhere *where;
  GPtrArray *warnings; /* (nullable): lines of text, unknown keys */
  gboolean partial;    /* a look's overrides: nothing is required, nothing is defaulted */
} SqReading;

/* A type of value: how it is read, written, compared, copied. @value points into the struct. */
typedef struct {
  const char *name; /* for the format reference: "number", "point or id" */
  gsize size;       /* of the member */
  void (*reset) (const SqField *field, void *value); /* to the default; @value is raw memory */
  gboolean (*read) (const SqField *field,
                    const SqReading *reading,
                    JsonNode *node,
                    void *value, /* holds its default; replaced only on success */
                    GError **error);
  JsonNode *(*write) (const SqField *field, const void *value);
  gboolean (*is_default) (const SqField *field, const void *value);
  void (*copy) (const SqField *field, void *to, const void *from); /* @to is raw memory */
  void (*clear) (const SqField *field, void *value);
} SqValueType;

extern const SqValueType sq_value_id;        /* char * */
extern const SqValueType sq_value_text;      /* char *, NULL: "" or null */
extern const SqValueType sq_value_date;      /* char *, YYYY-MM-DD */
extern const SqValueType sq_value_time;      /* char *, HH:MM */
extern const SqValueType sq_value_flag;      /* gboolean */
extern const SqValueType sq_value_word;      /* int, index into words; -1: null */
extern const SqValueType sq_value_count;     /* int */
extern const SqValueType sq_value_number;    /* double; NAN: null */
extern const SqValueType sq_value_numbers;   /* double[count]; NAN in the first: null */
extern const SqValueType sq_value_spread;    /* SqSpread: a number, or [across, up] */
extern const SqValueType sq_value_place;     /* SqPlace; NAN: null */
extern const SqValueType sq_value_point;     /* SqPoint; NAN: null */
extern const SqValueType sq_value_direction; /* SqVector, as written, not null */
extern const SqValueType sq_value_path;      /* GArray * of SqPlace; never NULL */
extern const SqValueType sq_value_reference; /* char *, an id; NULL: none */
extern const SqValueType sq_value_aim;       /* SqAim: a point, an id, or null */
extern const SqValueType sq_value_role_at;   /* GPtrArray * of SqRoleAt; never NULL */
extern const SqValueType sq_value_object;    /* SqThing *; NULL only where the field may be null */
extern const SqValueType sq_value_list;      /* GPtrArray * of SqThing; never NULL */
extern const SqValueType sq_value_partial;   /* SqThing *: what a look changes; NULL: nothing */
extern const SqValueType sq_value_partials;  /* GPtrArray * of SqPartial; never NULL */
extern const SqValueType sq_value_json;      /* JsonNode *: kept as it is */

/* Full angles across and up; equal where the file gives one number. */
typedef struct {
  double across, up;
} SqSpread;

/* What something points at: an id, else a point, else nothing (neither given). */
typedef struct {
  char *id;
  SqPoint at;
} SqAim;

/* "For this mark the lamp plays another part." */
typedef struct {
  char *mark;
  int role;
} SqRoleAt;

/* What a look changes of one thing: only the fields in @changes->said count. */
typedef struct {
  char *id;
  SqThing *changes;
} SqPartial;

/* Which kinds of thing an id may name, as bits. */
typedef enum {
  SQ_NAMES_WALL = 1 << 0,
  SQ_NAMES_OPENING = 1 << 1,
  SQ_NAMES_PIECE = 1 << 2,
  SQ_NAMES_MARK = 1 << 3,
  SQ_NAMES_CAMERA = 1 << 4,
  SQ_NAMES_FIXTURE = 1 << 5,
  SQ_NAMES_PANEL = 1 << 6,
  SQ_NAMES_PROBE = 1 << 7,
  SQ_NAMES_SUPPLY = 1 << 8,
  SQ_NAMES_CABLE = 1 << 9,
  SQ_NAMES_NOTE = 1 << 10,
  SQ_NAMES_DIMENSION = 1 << 11,
  SQ_NAMES_AMBIENT = 1 << 12,
  SQ_NAMES_CLASS = 1 << 13,
  SQ_NAMES_MATERIAL = 1 << 14,
  SQ_NAMES_LOOK = 1 << 15,
  SQ_NAMES_STAND = 1 << 16,
  SQ_NAMES_DAYLIGHT = 1 << 17, /* the reserved ids `sun` and `sky` */
} SqNames;

/* What stands somewhere: an aim or a motive may name any of these. */
#define SQ_NAMES_ANYTHING_PLACED                                                                   \
  (SQ_NAMES_WALL | SQ_NAMES_OPENING | SQ_NAMES_PIECE | SQ_NAMES_MARK | SQ_NAMES_CAMERA |           \
   SQ_NAMES_FIXTURE | SQ_NAMES_PANEL | SQ_NAMES_PROBE | SQ_NAMES_SUPPLY | SQ_NAMES_NOTE)

typedef enum {
  SQ_REQUIRED = 1 << 0,     /* must be in the file */
  SQ_MAY_BE_NULL = 1 << 1,  /* null is a value of its own, and the default unless said */
  SQ_PER_LOOK = 1 << 2,     /* a look may change it */
  SQ_ABOVE_MIN = 1 << 3,    /* the minimum itself is not allowed */
  SQ_BELOW_MAX = 1 << 4,    /* nor the maximum */
  SQ_WITHOUT_Z = 1 << 5,    /* a point that may also be written [x, y] */
  SQ_SAYS_VARIANT = 1 << 6, /* the word that decides which other rows apply */
} SqFieldFlags;

struct SqField {
  const char *key;   /* in the file */
  const char *label; /* N_(): for people */
  const SqValueType *type;
  gsize offset; /* of the member in its struct */
  SqDimension dimension;
  double min, max;             /* legal range, of every number in the value; both 0: any */
  double usual_min, usual_max; /* what a slider spans; both 0: the legal range */
  double initial;              /* default of numbers, flags (0, 1), counts and words (index) */
  const char *initial_json;    /* default of what is not one number, as JSON; NULL: empty or null */
  const char *const *words;    /* of a word, NULL-terminated */
  guint count;                 /* of numbers */
  guint least;                 /* fewest members of a list or path */
  SqNames names;               /* what a reference or aim may name */
  const SqKind *of;            /* kind of an object, of a list's members, of partials */
  guint variants;              /* bit n: only for word n of the SQ_SAYS_VARIANT row; 0: always */
  SqFieldFlags flags;
  const char *help; /* N_(): one sentence */
};

/* A kind of thing. */
struct SqKind {
  const char *name; /* N_(): "fixture", as errors and the format reference say it */
  gsize size;       /* of the struct */
  const SqField *fields;
  guint n_fields;                    /* at most 64 */
  SqNames names;                     /* the bit by which references know it; 0: it has no id */
  const char *help;                  /* N_(): one sentence for the format reference */
  void (*finalize) (SqThing *thing); /* (nullable): what is not in the table */
};

/* The head of every thing. Things are immutable once read and shared by reference: a snapshot of
 * a scene is its references. */
struct SqThing {
  const SqKind *kind;
  gatomicrefcount references;
  guint64 said;      /* bit n: the file gave field n */
  GPtrArray *extras; /* (nullable): SqExtra, members that no row knows, kept in their place */
};

/* A member that we do not know: written back after the row it followed. */
typedef struct {
  int after; /* index of the field it stood behind; -1: first */
  char *key;
  JsonNode *value;
} SqExtra;

#define SQ_FIELDS(table) .fields = (table), .n_fields = G_N_ELEMENTS (table)

G_END_DECLS
