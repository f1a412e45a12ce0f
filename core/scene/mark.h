/* mark.h: where a subject stands */
#pragma once

#include "scene/common.h"

G_BEGIN_DECLS

typedef enum {
  SQ_POSTURE_STAND,
  SQ_POSTURE_SIT,
  SQ_POSTURE_LIE,
} SqPosture;

typedef enum {
  SQ_SKIN_LIGHT,
  SQ_SKIN_LIGHT_MEDIUM,
  SQ_SKIN_MEDIUM,
  SQ_SKIN_MEDIUM_DEEP,
  SQ_SKIN_DEEP,
} SqSkin;

typedef struct {
  SqThing thing;
  char *id;
  char *label; /* A, B … */
  SqPlace at;
  double floor_m;
  double facing_deg; /* page azimuth */
  double stature_m;
  int posture;  /* SqPosture */
  GArray *path; /* SqPlace: a walk that starts here */
  int skin;     /* SqSkin */
  gboolean shadow_pinned;
  SqCommon common;
} SqMark;

extern const SqKind sq_mark_kind;

/* Height of the eyes above the mark's floor: 0.936 of stature standing (body-segment ratios of
 * Drillis and Contini 1966, from memory), 0.72 sitting, 0.07 lying (common practice). */
double sq_mark_eye_height_m (const SqMark *mark);

/* Height of the crown above it: stature standing, 0.79 of it sitting, 0.13 lying (common practice):
 * as high as the solids that stop light (light/people.c). */
double sq_mark_crown_height_m (const SqMark *mark);

/* Where a meter is held and lamps are aimed: the face. */
SqPoint sq_mark_face (const SqMark *mark);

/* Share of light that skin of this kind gives back (common practice, a few published means lie
 * within 0.05 of it): 0.45 light … 0.10 deep. */
double sq_skin_reflectance (SqSkin skin);

G_END_DECLS
