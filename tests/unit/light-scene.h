/* light-scene.h: scenes written as text, and what is read in them */
#pragma once

#include "light/map.h"
#include "light/readings.h"

#include <float.h>
#include <string.h>

/* The scene whose members are given by @format, printf-like, with ' for ". */
static G_GNUC_PRINTF (1, 2) SqScene *scene_of (const char *format, ...)
{
  static SqLibrary *library = NULL; /* read once: tests make thousands of scenes */
  g_autoptr (GError) error = NULL;
  if (!library)
    library = sq_library_new ();
  va_list arguments;
  va_start (arguments, format);
  g_autofree char *members = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  g_strdelimit (members, "'", '"');
  g_autofree char *text = g_strdup_printf ("{\"format\": 1, %s}", members);
  SqScene *scene = sq_scene_parse (text, strlen (text), library, NULL, &error);
  if (error)
    g_error ("%s in %s", error->message, text);
  return scene;
}

static G_GNUC_UNUSED SqReadings *
readings_of (const SqScene *scene)
{
  g_autoptr (GError) error = NULL;
  SqReadings *readings = sq_read_meter (scene, 1, NULL, &error);
  g_assert_no_error (error);
  return readings;
}

static G_GNUC_UNUSED const SqProbeReading *
first_probe (const SqReadings *readings)
{
  return g_ptr_array_index (readings->probes, 0);
}

static G_GNUC_UNUSED const SqMarkReading *
first_mark (const SqReadings *readings)
{
  return g_ptr_array_index (readings->marks, 0);
}

/* What the first probe reads. */
static G_GNUC_UNUSED double
lux_of (const SqScene *scene)
{
  g_autoptr (SqReadings) readings = readings_of (scene);
  return first_probe (readings)->lux;
}

/* @value is within @tolerance of @expected, relative to it. */
#define assert_near(value, expected, tolerance)                                                    \
  g_assert_cmpfloat_with_epsilon ((value), (expected), fabs (expected) * (tolerance) + DBL_MIN)
