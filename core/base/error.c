/* error.c: the quark of our error domain */
#include "base/error.h"

G_DEFINE_QUARK (sq - error - quark, sq_error)
