/* machine.h: what this machine is, and how fast its memory can be read */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Prints the processor as it names itself, its cores, caches and vector units, and the compiler. */
void machine_print (void);

/* machine_sum_ms:
 * @n_maps, @n: so many arrays of so many values
 * @value_bytes: 4 or 8: single or double precision
 *
 * The time to add the arrays up into one more, value by value, with nothing else done and with the
 * threads already standing: what a weighted sum of kept fields can at best take. Median. */
double machine_sum_ms (guint n_maps, gsize n, guint value_bytes, int threads);

/* a = b + 1.5 c over arrays far beyond any cache: 10⁹ bytes a second, the median. */
double machine_triad_gb_s (int threads);

/* The most memory this process had so far, or since the last machine_forget_peak(), in MiB; NAN
 * where the system does not say. */
double machine_peak_mib (void);
void machine_forget_peak (void);

G_END_DECLS
