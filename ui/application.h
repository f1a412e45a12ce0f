/* application.h: the program with a window */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Opens a window for each scene named on the command line, or an empty one, and runs until the last
 * is closed. Returns: an exit code; 2 if no display can be opened */
int sq_application_run (int argc, char **argv);

G_END_DECLS
