/* file-chooser.c: asking for a file
 *
 * GTK 4.10 deprecates the native chooser for GtkFileDialog, which 4.8 does not have: this file is
 * the only one that uses it, and knows no version of GTK but the oldest we build with. */
#include "file-chooser.h"

#include <glib/gi18n-lib.h>

G_GNUC_BEGIN_IGNORE_DEPRECATIONS

typedef struct {
  void (*chosen) (GFile *file, gpointer data);
  gpointer data;
} Question;

static void
on_response (GtkNativeDialog *dialog, int response, gpointer data)
{
  g_autofree Question *question = data;
  if (response == GTK_RESPONSE_ACCEPT) {
    g_autoptr (GFile) file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
    question->chosen (file, question->data);
  }
  g_object_unref (dialog);
}

void
sq_choose_scene (GtkWindow *parent, void (*chosen) (GFile *file, gpointer data), gpointer data)
{
  GtkFileChooserNative *dialog = gtk_file_chooser_native_new (
    _ ("Open a scene"), parent, GTK_FILE_CHOOSER_ACTION_OPEN, _ ("_Open"), _ ("_Cancel"));
  g_autoptr (GtkFileFilter) scenes = gtk_file_filter_new (), all = gtk_file_filter_new ();
  gtk_file_filter_set_name (scenes, _ ("Scenes"));
  gtk_file_filter_add_suffix (scenes, "squarelaw");
  gtk_file_filter_set_name (all, _ ("All files"));
  gtk_file_filter_add_pattern (all, "*");
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (dialog), scenes);
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (dialog), all);
  Question *question = g_new (Question, 1);
  *question = (Question){ chosen, data };
  g_signal_connect (dialog, "response", G_CALLBACK (on_response), question);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (dialog), TRUE);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (dialog));
}

G_GNUC_END_IGNORE_DEPRECATIONS
