/* write-format.c: prints the page of the file format, to refresh core/scene/FORMAT.md with */
#include "scene/format-reference.h"

#include <stdio.h>

int
main (void)
{
  g_autofree char *page = sq_format_reference ();
  return fputs (page, stdout) >= 0 && fflush (stdout) == 0 ? 0 : 1;
}
