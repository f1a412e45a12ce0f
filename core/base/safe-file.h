/* safe-file.h: files read whole and saved whole, or not at all */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define SQ_FILE_BYTES_MAX ((gsize)64 << 20) /* 64 MiB: no plan or photometry comes near */

/* What a save that was killed may leave behind in the folder is called this and eight hexadecimal
 * digits; a file of such a name that is older than a moment is no one's and may be deleted. */
#define SQ_FILE_STRAY_PREFIX ".squarelaw-unfinished-"

/* The path for a message: UTF-8, one line. (transfer full) */
char *sq_file_shown_path (const char *path);

/* sq_file_load:
 * @path: in the file system's encoding; "-" is standard input. Pipes and devices are read to their
 *   end, which may mean waiting for whoever writes them
 * @length: (out) (optional): bytes, without the NUL that is put behind them
 *
 * Returns: (transfer full): the bytes, or NULL with SQ_ERROR_FILE: `PATH: is a folder, expected a
 *   file`. More than SQ_FILE_BYTES_MAX is an error, and no more than that is ever held. */
char *sq_file_load (const char *path, gsize *length, GError **error);

/* sq_file_save:
 * @path: in the file system's encoding; "-" and "/dev/stdout" are standard output
 * @data: (array length=length): what the file shall hold
 *
 * Whatever moment the program dies, the disk fills or the power fails, @path then names the old
 * file whole or the new file whole. The new one is written beside it, forced to the disk and put in
 * its place by a rename. Permissions stay, and the owner where the system lets us; a new file gets
 * 0666 less the umask. Through a symbolic link the file it leads to is replaced, never the link.
 * Other hard links keep the old contents, access lists and extended attributes are not carried
 * over.
 *
 * What is no regular file (a device, a pipe) is written straight into; there nothing can be taken
 * back.
 *
 * The program must ignore SIGXFSZ, else the system kills it where a file grows past its limit
 * instead of letting us report that; who writes to pipes may want the same for SIGPIPE.
 *
 * Returns: FALSE with SQ_ERROR_FILE: `PATH: the disk is full, expected room for the whole file`;
 *   the old file is then untouched and nothing is left beside it */
gboolean sq_file_save (const char *path, const void *data, gsize length, GError **error);

G_END_DECLS
