/* library-expect.h: failures that name the lamp, material or stand they are about
 *
 * A test over all of them goes on after a failure, so that one run tells every bad row. */
#pragma once

#include <glib.h>
#include <math.h>

static inline void
expect (gboolean holds, const char *id, const char *what)
{
  if (!holds) {
    g_test_message ("%s: %s", id, what);
    g_test_fail ();
  }
}

static inline void
expect_within (double value, double low, double high, const char *id, const char *what)
{
  if (!(value >= low && value <= high)) {
    g_test_message ("%s: %s: %g is outside %g to %g", id, what, value, low, high);
    g_test_fail ();
  }
}

static inline void
expect_near (double value, double expected, double relative, const char *id, const char *what)
{
  double off = fabs (expected) * relative;
  expect_within (value, expected - off, expected + off, id, what);
}
