/* test-safe-file-cut-short.c: the old file or the new one, whole, wherever a save is cut short */
#ifndef _GNU_SOURCE
#define _GNU_SOURCE /* O_TMPFILE */
#endif
#include "safe-place.h"

#include <errno.h>
#include <fcntl.h>
#include <linux/filter.h>
#include <linux/seccomp.h>
#include <signal.h>
#include <stddef.h>
#include <sys/prctl.h>
#include <sys/resource.h>
#include <sys/syscall.h>

/* From here on the kernel answers the system call @number with @code; with @flags, only where its
 * third argument (the flags of openat) has them all. */
static void
refuse (guint32 number, guint32 flags, guint32 code)
{
  struct sock_filter filter[] = {
    BPF_STMT (BPF_LD | BPF_W | BPF_ABS, offsetof (struct seccomp_data, nr)),
    BPF_JUMP (BPF_JMP | BPF_JEQ | BPF_K, number, 0, 4),
    BPF_STMT (BPF_LD | BPF_W | BPF_ABS, offsetof (struct seccomp_data, args[2])),
    BPF_STMT (BPF_ALU | BPF_AND | BPF_K, flags),
    BPF_JUMP (BPF_JMP | BPF_JEQ | BPF_K, flags, 0, 1),
    BPF_STMT (BPF_RET | BPF_K, SECCOMP_RET_ERRNO | code),
    BPF_STMT (BPF_RET | BPF_K, SECCOMP_RET_ALLOW),
  };
  struct sock_fprog program = { G_N_ELEMENTS (filter), filter };

  g_assert_cmpint (prctl (PR_SET_NO_NEW_PRIVS, 1, 0, 0, 0), ==, 0);
  g_assert_cmpint (prctl (PR_SET_SECCOMP, SECCOMP_MODE_FILTER, &program), ==, 0);
}

static void
save_past_limit (const Place *place, gconstpointer unused)
{
  const struct rlimit limit = { LARGE / 2, LARGE / 2 };

  signal (SIGXFSZ, SIG_IGN); /* as the program does */
  g_assert_cmpint (setrlimit (RLIMIT_FSIZE, &limit), ==, 0);
  assert_save_fails (place->path, place->path, "grows past the size allowed here");
}

static void
test_size_limit (Place *place, gconstpointer unused)
{
  put (place->path, "old");
  in_child (save_past_limit, place, NULL);
  assert_holds (place->path, "old", 3);
  g_assert_cmpuint (files_in (place), ==, 1);
}

/* Each step on the way answered with an error. */
typedef struct {
  const char *name;
  guint32 number; /* of the system call */
  guint32 flags;
  guint32 code;
  const char *wrong; /* NULL: there is another way and the save succeeds */
} Step;

static const Step steps[] = {
  { "unnamed files", SYS_openat, O_TMPFILE, EOPNOTSUPP, NULL },
  { "linking them", SYS_linkat, 0, EPERM, NULL },
  { "owner", SYS_fchown, 0, EPERM, NULL },
  { "permissions", SYS_fchmod, 0, EPERM, NULL },
  { "any new file", SYS_openat, O_WRONLY, EROFS, "is on a read-only disk" },
  { "writing", SYS_write, 0, ENOSPC, "the disk is full" },
  { "writing, by quota", SYS_write, 0, EDQUOT, "your share of the disk is full" },
  { "to the disk", SYS_fsync, 0, EIO, "" },
#ifdef SYS_rename
  { "in its place", SYS_rename, 0, EPERM, "is write-protected" },
#else
  { "in its place", SYS_renameat, 0, EPERM, "is write-protected" },
#endif
};

static void
save_with_refusal (const Place *place, gconstpointer data)
{
  const Step *step = data;

  refuse (step->number, step->flags, step->code);
  if (step->wrong == NULL)
    assert_saves (place->path, "new");
  else
    assert_save_fails (place->path, place->path,
                       *step->wrong != '\0' ? step->wrong : g_strerror ((int)step->code));
}

static void
test_steps (Place *place, gconstpointer unused)
{
  for (gsize i = 0; i < G_N_ELEMENTS (steps); i++) {
    put (place->path, "old");
    in_child (save_with_refusal, place, &steps[i]);
    assert_holds (place->path, steps[i].wrong == NULL ? "new" : "old", 3);
    g_assert_cmpuint (files_in (place), ==, 1);
  }
}

/* Saves two contents in turn until it is killed; @first, 0 or 1, says which comes first. */
static void
save_for_ever (const Place *place, gboolean unnamed, guint first)
{
  g_autofree char *even = filled ('e');
  g_autofree char *odd = filled ('o');

  if (!unnamed)
    refuse (SYS_openat, O_TMPFILE, EOPNOTSUPP);
  for (guint i = first;; i++) {
    if (!sq_file_save (place->path, i % 2 == 0 ? even : odd, LARGE, NULL))
      _exit (1);
  }
}

/* Counts what killed saves have left; never anything but our own names beside the target. */
static guint
strays_in (const Place *place)
{
  g_autoptr (GDir) dir = g_dir_open (place->folder, 0, NULL);
  const char *name;
  guint strays = 0;

  while ((name = g_dir_read_name (dir)) != NULL) {
    if (strcmp (name, "plan.squarelaw") == 0)
      continue;
    g_assert_true (g_str_has_prefix (name, SQ_FILE_STRAY_PREFIX));
    g_assert_null (strstr (name, "plan"));
    strays++;
  }
  return strays;
}

static gboolean
knows_unnamed_files (const Place *place)
{
  int fd = open (place->folder, O_TMPFILE | O_WRONLY, 0600);
  if (fd >= 0)
    close (fd);
  return fd >= 0;
}

/* @unnamed: the way that leaves nothing; or the other one, where the moments must at times fall
 * into a save and leave its unfinished file: else the test would show nothing. */
static void
kill_often (const Place *place, gboolean unnamed)
{
  const guint kills = 200;
  const guint few = kills / 8; /* between a draft's getting a name and its losing it */
  const gint saves = 3;        /* as many as a child may live for, on this disk */
  g_autoptr (GRand) random = g_rand_new_with_seed (unnamed ? 9 : 15);
  g_autofree char *even = filled ('e');
  g_autofree char *odd = filled ('o');
  guint seen_even = 0, seen_odd = 0, strays;
  gint64 start = g_get_monotonic_time ();
  gint longest_us;

  g_assert_true (sq_file_save (place->path, even, LARGE, NULL));
  longest_us = saves * (gint)(g_get_monotonic_time () - start);
  for (guint i = 0; i < kills; i++) {
    g_autofree char *held = NULL;
    gsize length;
    int status;
    pid_t child = fork ();

    g_assert_cmpint (child, >=, 0);
    if (child == 0)
      save_for_ever (place, unnamed, i % 2);
    g_usleep ((gulong)g_rand_int_range (random, 0, longest_us));
    g_assert_cmpint (kill (child, SIGKILL), ==, 0);
    g_assert_cmpint (waitpid (child, &status, 0), ==, child);
    g_assert_true (WIFSIGNALED (status));
    g_assert_true (g_file_get_contents (place->path, &held, &length, NULL));
    g_assert_cmpuint (length, ==, LARGE);
    if (memcmp (held, even, LARGE) == 0)
      seen_even++;
    else if (memcmp (held, odd, LARGE) == 0)
      seen_odd++;
  }
  strays = strays_in (place);
  g_test_message ("%u even, %u odd, %u strays", seen_even, seen_odd, strays);
  g_assert_cmpuint (seen_even + seen_odd, ==, kills);
  g_assert_cmpuint (seen_even, >, 0);
  g_assert_cmpuint (seen_odd, >, 0);
  if (unnamed) {
    g_assert_cmpuint (strays, <=, few);
  } else {
    g_assert_cmpuint (strays, >, 0);
    g_assert_cmpuint (strays, <=, kills);
  }
}

static void
test_killed (Place *place, gconstpointer unused)
{
  kill_often (place, knows_unnamed_files (place));
}

static void
test_killed_with_names (Place *place, gconstpointer unused)
{
  kill_often (place, FALSE);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_test ("/safe file cut short/by the size limit for files", test_size_limit);
  add_test ("/safe file cut short/at every step in turn", test_steps);
  add_test ("/safe file cut short/killed at 200 moments", test_killed);
  add_test ("/safe file cut short/killed at 200 moments, with named drafts",
            test_killed_with_names);
  return g_test_run ();
}
