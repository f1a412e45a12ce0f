/* lamp-size.c: how big a lamp is drawn: to scale, but never too small to be read */
#include "draw/lamp-parts.h"
#include "draw/shining-face.h"

/* A face is at most this share of its body's width, unless a cloth spreads it. */
#define MOST_FACE_SHARE 0.94

static gboolean
is_panel (const SqClass *lamp_class)
{
  return lamp_class->optics == SQ_OPTICS_PANEL || lamp_class->optics == SQ_OPTICS_TUBE;
}

static SqLampForm
form_of (const SqLamp *lamp)
{
  if (lamp->lamp_class->optics == SQ_OPTICS_ROUND || lamp->lamp_class->optics == SQ_OPTICS_BULB)
    return SQ_FORM_ROUND;
  if (lamp->elevation_deg <= -90.0 + SQ_LAMP_UPRIGHT_DEG)
    return SQ_FORM_DOWN;
  if (lamp->elevation_deg >= 90.0 - SQ_LAMP_UPRIGHT_DEG)
    return SQ_FORM_UP;
  return SQ_FORM_AIMED;
}

static double
front_mark_mm (const SqClass *lamp_class, double face_mm)
{
  switch (lamp_class->optics) {
  case SQ_OPTICS_LENS:
    return MAX (1.15, 0.26 * face_mm);
  case SQ_OPTICS_OPEN:
    return 1.9 * 0.8;
  case SQ_OPTICS_PARALLEL:
    return 2.0;
  case SQ_OPTICS_PROFILE:
    return 1.1;
  case SQ_OPTICS_PANEL:
  case SQ_OPTICS_TUBE:
    return 0.9;
  default:
    return 0.0;
  }
}

static void
keep_readable (SqLampSize *size, const SqClass *lamp_class)
{
  if (is_panel (lamp_class) && size->form == SQ_FORM_AIMED) {
    size->width_mm = MAX (size->width_mm, SQ_LAMP_LEAST_MM);
    size->depth_mm = MAX (size->depth_mm, SQ_PANEL_LAMP_LEAST_DEPTH_MM);
    return;
  }
  if (is_panel (lamp_class)) { /* a tube overhead stays thin, but not to nothing */
    size->width_mm = MAX (size->width_mm, SQ_PANEL_LAMP_LEAST_DEPTH_MM);
    size->depth_mm = MAX (size->depth_mm, SQ_PANEL_LAMP_LEAST_DEPTH_MM);
    return;
  }
  double least = MIN (size->width_mm, size->depth_mm);
  double grow = least < SQ_LAMP_LEAST_MM ? SQ_LAMP_LEAST_MM / MAX (least, 1e-3) : 1.0;
  /* A thin body of one long side would blow up: then each side is brought up alone. */
  if (grow * MAX (size->width_mm, size->depth_mm) > 4.0 * SQ_LAMP_LEAST_MM) {
    size->width_mm = MAX (size->width_mm, SQ_LAMP_LEAST_MM);
    size->depth_mm = MAX (size->depth_mm, SQ_LAMP_LEAST_MM);
  } else {
    size->width_mm *= grow;
    size->depth_mm *= grow;
  }
}

static void
spread_by_cloth (SqLampSize *size, const SqLamp *lamp, double k)
{
  const SqModifier *box = sq_soft_box (lamp->fixture);
  if (box != NULL) {
    SqShiningFace face = sq_shining_face (lamp->lamp_class, lamp->fixture);
    size->face_up_mm = sq_shining_extent_m (&face, lamp->roll_deg + 90.0) * k;
    size->skirt_mm = MAX (box->depth_m * k, 2.2);
    size->front_mm = 0.42;
    return;
  }
  /* A class with a cloth of its own: its body is the housing and the skirt together. */
  size->skirt_mm = CLAMP (0.32 * size->face_mm, 2.2, 6.5);
  size->front_mm = 0.42;
  if (size->width_mm >= 0.8 * size->face_mm) {
    size->width_mm = MAX (0.55 * size->face_mm, SQ_LAMP_LEAST_MM);
    size->depth_mm = MAX (size->depth_mm - size->skirt_mm, SQ_LAMP_LEAST_MM);
  }
}

SqLampSize
sq_lamp_size (const SqView *view, const SqLamp *lamp)
{
  const SqClass *lamp_class = lamp->lamp_class;
  const SqBody *body = lamp_class->body;
  double k = view->mm_per_m;
  const SqShiningFace face = sq_shining_face (lamp_class, lamp->fixture);
  const SqShiningFace outline = { body->width_m, body->height_m,
                                  FALSE }; /* of the body, from ahead */
  SqLampSize size = { .form = form_of (lamp) };

  if (size.form == SQ_FORM_ROUND) {
    double ball_m =
      lamp_class->optics == SQ_OPTICS_ROUND ? MAX (face.width_m, body->width_m) : body->width_m;
    size.width_mm = size.depth_mm = MAX (ball_m * k, SQ_LAMP_LEAST_MM);
    size.face_mm = size.face_up_mm = size.width_mm;
    return size;
  }
  if (size.form == SQ_FORM_AIMED) {
    size.width_mm = sq_shining_extent_m (&outline, lamp->roll_deg) * k;
    size.depth_mm = body->depth_m * k;
    size.face_mm = sq_shining_extent_m (&face, lamp->roll_deg) * k;
  } else { /* the azimuth has the roll in it */
    size.width_mm = body->width_m * k;
    size.depth_mm = body->height_m * k;
    size.face_mm = face.width_m * k;
    size.face_up_mm = face.height_m * k;
  }
  keep_readable (&size, lamp_class);

  gboolean has_box = sq_soft_box (lamp->fixture) != NULL;
  gboolean cloth = lamp_class->optics == SQ_OPTICS_DIFFUSED || has_box;
  if (cloth && size.form == SQ_FORM_AIMED) {
    spread_by_cloth (&size, lamp, k);
    return size;
  }
  if (has_box)
    return size;
  size.face_mm = CLAMP (size.face_mm, 0.4 * size.width_mm, MOST_FACE_SHARE * size.width_mm);
  size.face_up_mm = CLAMP (size.face_up_mm, 0.4 * size.depth_mm, MOST_FACE_SHARE * size.depth_mm);
  size.front_mm = size.form == SQ_FORM_AIMED ? front_mark_mm (lamp_class, size.face_mm) : 0.0;
  return size;
}
