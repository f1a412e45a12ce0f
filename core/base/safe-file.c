/* safe-file.c: files read whole and saved whole, or not at all
 *
 * g_file_set_contents_full() syncs and renames too, but it replaces symbolic links, pipes and
 * devices by a plain file, gives the file new permissions, and its unfinished file bears the
 * target's name. Where the system can, ours has no name until it is complete, so that a killed
 * program leaves nothing behind. */
#ifndef _GNU_SOURCE
#define _GNU_SOURCE /* O_TMPFILE */
#endif
#include "base/safe-file.h"

#include "base/error.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gi18n-lib.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

typedef struct {
  int code; /* an errno */
  const char *wrong, *expected;
} Reason;

/* clang-format off */
static const Reason load_reasons[] = {
  { ENOENT,  N_("does not exist"),        N_("a file") },
  { EISDIR,  N_("is a folder"),           N_("a file") },
  { ENOTDIR, N_("stands under a file"),   N_("a folder there") },
  { EACCES,  N_("is read-protected"),     N_("a file that you may read") },
  { EFBIG,   N_("is larger than 64 MiB"), N_("less") },
};

static const Reason save_reasons[] = {
  { ENOENT,  N_("its folder does not exist"),        N_("an existing folder") },
  { EISDIR,  N_("is a folder"),                      N_("the name of a file") },
  { ENOTDIR, N_("stands under a file"),              N_("a folder there") },
  { EACCES,  N_("is write-protected"),               N_("a file and folder that you may write") },
  { EPERM,   N_("is write-protected"),               N_("a file and folder that you may write") },
  { EROFS,   N_("is on a read-only disk"),           N_("a disk that can be written") },
  { ENOSPC,  N_("the disk is full"),                 N_("room for the whole file") },
  { EDQUOT,  N_("your share of the disk is full"),   N_("room for the whole file") },
  { EFBIG,   N_("grows past the size allowed here"), N_("a higher limit for files") },
  { EPIPE,   N_("nobody reads any more"),            N_("a reader at the other end") },
};
/* clang-format on */

char *
sq_file_shown_path (const char *path)
{
  char *shown = *path != '\0' ? g_filename_display_name (path) : g_strdup (_ ("no name"));

  for (char *c = shown; *c != '\0'; c++) {
    if (g_ascii_iscntrl (*c))
      *c = '?';
  }
  return shown;
}

static void
set_error (GError **error, const char *place, int code, const Reason *reasons, gsize count)
{
  const char *wrong = g_strerror (code);
  const char *expected = _ ("a file that the system lets us use");

  for (gsize i = 0; i < count; i++) {
    if (reasons[i].code == code) {
      wrong = _ (reasons[i].wrong);
      expected = _ (reasons[i].expected);
    }
  }
  g_set_error (error, SQ_ERROR, SQ_ERROR_FILE, _ ("%s: %s, expected %s"), place, wrong, expected);
}

/* Whether to try again after a read or write that failed: a signal came between, or a pipe that was
 * handed to us does not wait by itself. */
static gboolean
may_go_on (int fd, gushort events)
{
  if (errno == EAGAIN) {
    GPollFD poll = { .fd = fd, .events = events };
    g_poll (&poll, 1, -1);
    return TRUE;
  }
  return errno == EINTR;
}

/* All that follow return 0 or an errno. */

static int
open_plain (const char *path, int flags, int *fd)
{
  do
    *fd = open (path, flags | O_CLOEXEC | O_NOCTTY);
  while (*fd < 0 && errno == EINTR);
  return *fd < 0 ? errno : 0;
}

static int
read_all (int fd, GString *into)
{
  char buffer[65536];
  struct stat status;

  if (fstat (fd, &status) != 0)
    return errno;
  if (S_ISDIR (status.st_mode))
    return EISDIR;
  if (S_ISREG (status.st_mode) && status.st_size > (goffset)SQ_FILE_BYTES_MAX)
    return EFBIG;
  while (TRUE) {
    gssize got = read (fd, buffer, sizeof buffer);
    if (got == 0)
      return 0;
    if (got < 0 && !may_go_on (fd, G_IO_IN))
      return errno;
    if (got > 0) {
      if (into->len + (gsize)got > SQ_FILE_BYTES_MAX)
        return EFBIG;
      g_string_append_len (into, buffer, got);
    }
  }
}

char *
sq_file_load (const char *path, gsize *length, GError **error)
{
  gboolean from_stdin = strcmp (path, "-") == 0;
  GString *contents = g_string_new (NULL);
  int fd = STDIN_FILENO;
  int problem = from_stdin ? 0 : open_plain (path, O_RDONLY, &fd);

  if (problem == 0)
    problem = read_all (fd, contents);
  if (!from_stdin && fd >= 0)
    close (fd);
  if (problem != 0) {
    g_autofree char *place =
      from_stdin ? g_strdup (_ ("standard input")) : sq_file_shown_path (path);
    set_error (error, place, problem, load_reasons, G_N_ELEMENTS (load_reasons));
    g_string_free (contents, TRUE);
    return NULL;
  }
  if (length != NULL)
    *length = contents->len;
  return g_string_free (contents, FALSE);
}

static int
write_all (int fd, const char *data, gsize length)
{
  while (length > 0) {
    gssize put = write (fd, data, length);
    if (put < 0 && !may_go_on (fd, G_IO_OUT))
      return errno;
    if (put > 0) {
      data += put;
      length -= (gsize)put;
    }
  }
  return 0;
}

/* To the disk; a file system that cannot say is taken at its word. */
static int
sync_all (int fd)
{
  int result;

  do
    result = fsync (fd);
  while (result != 0 && errno == EINTR);
  return result == 0 || errno == EINVAL || errno == ENOTSUP ? 0 : errno;
}

static int
write_into (const char *path, const char *data, gsize length)
{
  int fd;
  int problem = open_plain (path, O_WRONLY, &fd);

  if (problem != 0)
    return problem;
  problem = write_all (fd, data, length);
  if (close (fd) != 0 && problem == 0)
    problem = errno;
  return problem;
}

/* The new file while it is not in its place yet. */
typedef struct {
  const char *folder;
  char *name; /* NULL while it has none */
  int fd;
} Draft;

/* Gives the draft a name of its own: by making the file (if draft->fd is -1) or by linking the open
 * one. */
static int
name_draft (Draft *draft, mode_t mode)
{
  const guint tries = 100;
  g_autofree char *open_file = g_strdup_printf ("/proc/self/fd/%d", draft->fd);
  g_autoptr (GRand) random = g_rand_new (); /* processes that forked must not try the same names */

  for (guint i = 0; i < tries; i++) {
    g_autofree char *base = g_strdup_printf (SQ_FILE_STRAY_PREFIX "%08x", g_rand_int (random));
    g_autofree char *name = g_build_filename (draft->folder, base, NULL);
    int result;

    if (draft->fd < 0)
      result = draft->fd = open (name, O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, mode);
    else
      result = linkat (AT_FDCWD, open_file, AT_FDCWD, name, AT_SYMLINK_FOLLOW);
    if (result >= 0) {
      draft->name = g_steal_pointer (&name);
      return 0;
    }
    if (errno != EEXIST)
      return errno;
  }
  return EEXIST;
}

static int
open_unnamed (Draft *draft, mode_t mode)
{
#ifdef O_TMPFILE
  draft->fd = open (draft->folder, O_TMPFILE | O_WRONLY | O_CLOEXEC, mode);
  return draft->fd < 0 ? errno : 0;
#else
  return ENOTSUP;
#endif
}

/* Owner and permissions of the file that was there, as far as the system lets us. What our own
 * group may do is not what another one might. */
static void
take_after (int fd, const struct stat *old)
{
  mode_t mode = old->st_mode & 0777;

  if (fchown (fd, old->st_uid, old->st_gid) != 0 && fchown (fd, (uid_t)-1, old->st_gid) != 0)
    mode &= ~(mode_t)0070;
  if (fchmod (fd, mode) != 0)
    return; /* it stays as private as it was made */
}

/* @old: (nullable): the file that was there */
static int
fill_draft (const Draft *draft, const struct stat *old, const char *data, gsize length)
{
  int problem;

  if (old != NULL)
    take_after (draft->fd, old);
  problem = write_all (draft->fd, data, length);
  return problem != 0 ? problem : sync_all (draft->fd);
}

/* The rename too has to reach the disk. If that fails the file is whole all the same, old or new,
 * so it is no error. */
static void
sync_folder (const char *folder)
{
  int fd;

  if (open_plain (folder, O_RDONLY | O_DIRECTORY, &fd) == 0) {
    sync_all (fd);
    close (fd);
  }
}

static int
replace (
  const char *target, const struct stat *old, gboolean unnamed, const char *data, gsize length)
{
  g_autofree char *folder = g_path_get_dirname (target);
  Draft draft = { .folder = folder, .fd = -1 };
  mode_t mode = old != NULL ? 0600 : 0666; /* never open to more people than the old file was */
  int problem = unnamed ? open_unnamed (&draft, mode) : name_draft (&draft, mode);

  if (problem != 0)
    return problem;
  problem = fill_draft (&draft, old, data, length);
  if (problem == 0 && unnamed)
    problem = name_draft (&draft, mode);
  if (close (draft.fd) != 0 && problem == 0)
    problem = errno;
  if (problem == 0 && rename (draft.name, target) != 0)
    problem = errno;
  if (problem != 0 && draft.name != NULL)
    unlink (draft.name);
  if (problem == 0)
    sync_folder (folder);
  g_free (draft.name);
  return problem;
}

/* What a chain of symbolic links leads to, whether that exists or not. */
static int
follow_links (const char *path, char **target)
{
  const guint most = 40; /* as the kernel */
  g_autofree char *at = g_strdup (path);

  for (guint i = 0; i < most; i++) {
    g_autofree char *link = g_file_read_link (at, NULL);
    g_autofree char *folder = g_path_get_dirname (at);
    if (link == NULL) {
      *target = g_steal_pointer (&at);
      return 0;
    }
    g_free (at);
    at =
      g_path_is_absolute (link) ? g_steal_pointer (&link) : g_build_filename (folder, link, NULL);
  }
  return ELOOP;
}

static int
save (const char *path, const char *data, gsize length)
{
  g_autofree char *target = NULL;
  struct stat status;
  const struct stat *old = &status;
  int problem;

  if (stat (path, &status) != 0) {
    if (errno != ENOENT || *path == '\0')
      return errno;
    old = NULL;
  } else if (S_ISDIR (status.st_mode)) {
    return EISDIR;
  } else if (!S_ISREG (status.st_mode)) {
    return write_into (path, data, length);
  } else if (access (path, W_OK) != 0) {
    return errno; /* a rename would not ask */
  }
  problem = follow_links (path, &target);
  if (problem != 0)
    return problem;
  /* Not every file system knows unnamed files or lets them be linked. */
  if (replace (target, old, TRUE, data, length) == 0)
    return 0;
  return replace (target, old, FALSE, data, length);
}

gboolean
sq_file_save (const char *path, const void *data, gsize length, GError **error)
{
  g_autofree char *place = NULL;
  int problem;

  if (strcmp (path, "-") == 0 || strcmp (path, "/dev/stdout") == 0) {
    fflush (stdout); /* what was printed before comes first */
    place = g_strdup (_ ("standard output"));
    problem = write_all (STDOUT_FILENO, data, length);
  } else {
    place = sq_file_shown_path (path);
    problem = save (path, data, length);
  }
  if (problem != 0)
    set_error (error, place, problem, save_reasons, G_N_ELEMENTS (save_reasons));
  return problem == 0;
}
