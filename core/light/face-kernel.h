/* face-kernel.h: the loops in which the light of a whole face is worked out, for many points */
#pragma once

#include "light/candela-formulas.h"
#include "light/face-places.h"

G_BEGIN_DECLS

/* How the light of a face may be summed for a receptor. */
typedef enum {
  SQ_WAY_PLACES,      /* places, each with its share of the lamp's candela */
  SQ_WAY_CONTOUR,     /* an even polygon, by the contour formula */
  SQ_WAY_CUT_CONTOUR, /* the same of what is above the receptor's horizon */
  SQ_WAY_RIBBON,      /* an even tube: the ribbon that it shows, likewise */
  SQ_WAY_BALL_DOME,   /* an even ball, as a dome reads it */
  SQ_WAY_ELSEWHERE,   /* not by a kernel: SQ_ELSEWHERE stands for the lux */
} SqFaceWayKind;

#define SQ_ELSEWHERE (-1)
#define SQ_MOST_WAYS 16

typedef struct {
  SqFaceWayKind kind;
  double from_m;             /* no nearer to the lamp's middle than this */
  const SqFacePlace *places; /* borrowed */
  guint n_places;
} SqFaceWay;

/* A lamp and how to sum it. */
typedef struct {
  const SqIntensity *intensity; /* borrowed, like all here */
  const SqPassing *passing;
  SqFrame frame;
  SqPoint at;
  SqPoint origin; /* from which receptors are counted */

  SqFaceWay ways[SQ_MOST_WAYS]; /* far to near: the first that is not too near is taken */
  guint n_ways;
  SqFaceWay cut;    /* where a flat receptor's horizon may cut the face */
  gboolean one_way; /* whoever will ask is summed the first way: nobody need be looked at */

  gboolean one_sided;   /* nothing is sent backward */
  gboolean round;       /* a ball */
  gboolean tube;        /* @inside_m is counted from its axis, else from its middle */
  double inside_m;      /* as near as this nothing is read */
  double radius_m;      /* of a ball that holds the face */
  double half_sides[3]; /* right, up, forward: a box that holds the face */
  /* The half-angle of a cone past which there is next to no light: whoever is farther outside than
   * @radius_m is summed the first way. Both 0: no such cone. */
  double bright_sine, bright_cosine;

  const SqPoint *corners; /* SQ_WAY_CONTOUR */
  guint n_corners;
  double length_m, across_m; /* SQ_WAY_RIBBON */
  double luminance_cd_m2;    /* SQ_WAY_CONTOUR and SQ_WAY_RIBBON, past modifiers */
} SqFaceSums;

/* Receptors as arrays: where they stand, and unit normals; a dome's axes. */
#define SQ_RECEPTOR_ARRAYS(Real)                                                                   \
  struct {                                                                                         \
    const Real *x_m, *y_m, *z_m;                                                                   \
    const Real *nx, *ny, *nz;                                                                      \
    gboolean dome; /* (1 + cosine) / 2; else flat, cosine */                                       \
  }
typedef SQ_RECEPTOR_ARRAYS (double) SqReceptors;
typedef SQ_RECEPTOR_ARRAYS (float) SqQuickReceptors;

/* The loops, compiled for one precision and one instruction set. In double precision all kernels
 * give the same bits, and for each point whatever its neighbours are. */
#define SQ_FACE_KERNEL(Real, Receptors)                                                            \
  struct {                                                                                         \
    const char *name; /* of the instruction set */                                                 \
    void (*candela) (const SqIntensity *intensity,                                                 \
                     const SqPassing *passing,                                                     \
                     const Real *x,                                                                \
                     const Real *y,                                                                \
                     const Real *z,                                                                \
                     gsize n,                                                                      \
                     Real *candela);                                                               \
    /* Returns: FALSE if some of it is SQ_ELSEWHERE */                                             \
    gboolean (*lux) (const SqFaceSums *sums, const Receptors *receptors, gsize n, Real *lux);      \
  }
typedef SQ_FACE_KERNEL (double, SqReceptors) SqFaceKernel;
typedef SQ_FACE_KERNEL (float, SqQuickReceptors) SqQuickFaceKernel;

/* sq_face_kernel_of:
 * @i: 0: what runs on every machine; then, slow to fast, what this one has besides
 *
 * Returns: (nullable): NULL past the last */
const SqFaceKernel *sq_face_kernel_of (guint i);
const SqQuickFaceKernel *sq_quick_face_kernel_of (guint i);

/* The fastest that runs here. */
const SqFaceKernel *sq_face_kernel_best (void);
const SqQuickFaceKernel *sq_quick_face_kernel_best (void);

G_END_DECLS
