/* fixture.h: a lamp where it stands, and what hangs on it */
#pragma once

#include "scene/common.h"

G_BEGIN_DECLS

typedef enum {
  SQ_ROLE_KEY,
  SQ_ROLE_FILL,
  SQ_ROLE_BACK,
  SQ_ROLE_SIDE,
  SQ_ROLE_TOP,
  SQ_ROLE_UNDER,
  SQ_ROLE_BACKGROUND,
  SQ_ROLE_PRACTICAL,
  SQ_ROLE_EFFECT,
  SQ_ROLES,
} SqRole;

typedef enum {
  SQ_MOUNT_STAND,
  SQ_MOUNT_FLOOR,
  SQ_MOUNT_WALL,
  SQ_MOUNT_CEILING,
  SQ_MOUNT_PIPE,
  SQ_MOUNT_BOOM,
  SQ_MOUNT_LIFT,
  SQ_MOUNT_HAND,
  SQ_MOUNT_SET,
} SqMount;

/* Across two of L1, L2, L3, or over all three. */
typedef enum {
  SQ_LINE_NONE = -1,
  SQ_LINE_1,
  SQ_LINE_2,
  SQ_LINE_3,
  SQ_LINE_1_2,
  SQ_LINE_2_3,
  SQ_LINE_1_3,
  SQ_LINE_1_2_3,
} SqLine;

typedef enum {
  SQ_MODIFIER_SCRIM,
  SQ_MODIFIER_GEL,
  SQ_MODIFIER_DIFFUSION,
  SQ_MODIFIER_SOFTBOX,
  SQ_MODIFIER_EGG_CRATE,
  SQ_MODIFIER_SNOOT,
  SQ_MODIFIER_DOORS,
} SqModifierKind;

typedef enum {
  SQ_PART_FULL,
  SQ_PART_TOP,
  SQ_PART_BOTTOM,
} SqPart;

typedef enum {
  SQ_SHAPE_DISC,
  SQ_SHAPE_RECT,
} SqShape;

enum { SQ_LEAF_TOP, SQ_LEAF_RIGHT, SQ_LEAF_BOTTOM, SQ_LEAF_LEFT, SQ_LEAVES };

typedef struct {
  SqThing thing;
  int kind;                          /* SqModifierKind */
  double stops;                      /* scrim */
  int part;                          /* SqPart: scrim */
  char *material;                    /* gel, diffusion, softbox */
  int shape;                         /* SqShape: softbox */
  double width_m, height_m, depth_m; /* softbox */
  double cutoff_deg;                 /* half-angle: egg crate, snoot */
  double transmission;               /* egg crate */
  double leaves_deg[SQ_LEAVES];      /* doors: 90 open, 0 straight ahead, negative folded in */
} SqModifier;

typedef struct {
  SqThing thing;
  char *id;
  char *number; /* on the plan: 7, 12A */
  char *class_id;
  SqPoint at; /* centre of the emitting face */
  SqAim aim;  /* nothing: straight down */
  double roll_deg;
  double beam; /* 0 spot … 1 flood */
  gboolean on;
  double level; /* fraction of light, not of voltage */
  gboolean follows;
  double trim_stops;
  double cct_k; /* NAN: the class's own */
  double tint[2];
  int role;           /* SqRole */
  GPtrArray *role_at; /* SqRoleAt */
  char *motive, *motive_text;
  int mount; /* SqMount */
  char *stand;
  GPtrArray *modifiers; /* SqModifier, from the lamp outward */
  char *supply;
  int line; /* SqLine */
  char *circuit;
  int channel, universe, address; /* 0: none */
  char *mode;
  SqCommon common;
} SqFixture;

/* The axes of a fixture: @forward along the aim, @right = forward × z (page +x where forward is
 * vertical), @up = right × forward; @roll turns the last two right-handed about @forward. */
typedef struct {
  SqVector forward, right, up; /* unit length */
} SqFrame;

extern const SqKind sq_fixture_kind, sq_modifier_kind;

/* The words of the file, by SqRole and SqMount; NULL-terminated. */
extern const char *const sq_role_words[];
extern const char *const sq_mount_words[];
extern const char *const sq_line_words[];

/* The part @fixture plays for the mark of this id. */
SqRole sq_fixture_role_at (const SqFixture *fixture, const char *mark_id);

/* The frame of something that looks along @forward (any length but 0). */
SqFrame sq_frame (SqVector forward, double roll_deg);

G_END_DECLS
