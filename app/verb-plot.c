/* verb-plot.c: the plan at true scale as PDF, SVG or PNG */
#include "arguments.h"
#include "base/error.h"
#include "draw/section.h"
#include "paper/plot.h"
#include "paper/scale.h"
#include "verbs.h"

#include <glib/gi18n.h>
#include <string.h>

typedef struct {
  char *sheet, *scale, *overlay, *pages, *light;
  gboolean portrait, landscape, mono;
  double dpi;
} PlotOptions;

static void
plot_options_clear (PlotOptions *options)
{
  g_free (options->sheet);
  g_free (options->scale);
  g_free (options->overlay);
  g_free (options->pages);
  g_free (options->light);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (PlotOptions, plot_options_clear)

static gboolean
format_of (const char *path, SqPlotFormat *format)
{
  static const char *const endings[] = { ".pdf", ".svg", ".png" };
  for (guint i = 0; i < G_N_ELEMENTS (endings); i++) {
    gsize length = strlen (path), ending = strlen (endings[i]);
    if (length > ending && g_ascii_strcasecmp (path + length - ending, endings[i]) == 0) {
      *format = (SqPlotFormat)i;
      return TRUE;
    }
  }
  *format = SQ_PLOT_PDF;
  return g_str_equal (path, "-"); /* a stream has no name to tell by */
}

static gboolean
overlay_of (const char *text, int *overlay)
{
  static const char *const words[] = { "lux", "stops", "colour", "none" };
  for (guint i = 0; i < G_N_ELEMENTS (words); i++) {
    if (g_str_equal (text, words[i])) {
      *overlay = (int)i;
      return TRUE;
    }
  }
  return FALSE;
}

/* What can be told wrong before the scene is read. Returns: -1, or the exit code; it was said */
static int
check_usage (const PlotOptions *options)
{
  g_autoptr (GError) error = NULL;
  double unused;
  int overlay;
  if (options->sheet != NULL && sq_sheet_find (options->sheet, &error) == NULL)
    return sq_say_usage ("--%s", error->message);
  if (options->scale != NULL && !sq_scale_parse (options->scale, &unused, &error))
    return sq_say_usage ("--%s", error->message);
  if (options->overlay != NULL && !overlay_of (options->overlay, &overlay))
    return sq_say_usage (_ ("--overlay: \"%s\" is unknown, expected lux, stops or none"),
                         options->overlay);
  if (!(options->dpi >= 20.0 && options->dpi <= 1200.0))
    return sq_say_usage (_ ("--dpi: %g is out of range, expected 20 to 1200"), options->dpi);
  if (options->portrait && options->landscape)
    return sq_say_usage (_ ("--portrait, --landscape: expected one of them"));
  SqPlotRequest request = SQ_PLOT_REQUEST;
  if (options->pages != NULL && !sq_plot_request_pages (&request, options->pages, &error))
    return sq_say_usage ("--%s", error->message);
  return -1;
}

static gboolean
has_section (const SqPlotRequest *request)
{
  for (guint i = 0; i < request->n_pages; i++)
    if (request->pages[i].kind == SQ_PAGE_SECTION)
      return TRUE;
  return FALSE;
}

/* A light is named for a section: both must be there. */
static gboolean
check_light (const char *id, const SqScene *scene, const SqPlotRequest *request, GError **error)
{
  if (id == NULL)
    return TRUE;
  if (!has_section (request)) {
    g_set_error (error, SQ_ERROR, SQ_ERROR_USAGE,
                 _ ("--light: no page is a section, expected --pages section"));
    return FALSE;
  }
  return sq_section_light (scene, id, error) != NULL;
}

/* What is said of the paper on the command line replaces all that pages say of it. */
static gboolean
take_paper (const PlotOptions *options, SqPlotRequest *request, GError **error)
{
  SqSheetTurn turn = options->portrait    ? SQ_TURN_PORTRAIT
                     : options->landscape ? SQ_TURN_LANDSCAPE
                                          : SQ_TURN_AS_FITS;
  gboolean paper = options->sheet != NULL || options->scale != NULL;
  request->sheet = options->sheet;
  request->turn = turn;
  if (options->scale != NULL && !sq_scale_parse (options->scale, &request->denominator, error))
    return FALSE;
  for (guint i = 0; i < request->n_pages; i++) {
    SqPageWish *page = &request->pages[i];
    if (paper) {
      page->sheet = NULL;
      page->denominator = 0.0;
    }
    if (paper || turn != SQ_TURN_AS_FITS)
      page->turn = SQ_TURN_AS_FITS;
  }
  return TRUE;
}

/* What the scene's own pages say, and over it what the command line says. */
static gboolean
request_of (const PlotOptions *options,
            const SqScene *scene,
            SqPlotRequest *request,
            GError **error)
{
  if (!sq_plot_request_of (scene, request, error) || !take_paper (options, request, error))
    return FALSE;
  if (options->pages != NULL && !sq_plot_request_pages (request, options->pages, error))
    return FALSE;
  if (!check_light (options->light, scene, request, error))
    return FALSE;
  if (options->overlay != NULL)
    overlay_of (options->overlay, &request->overlay);
  for (guint i = 0; i < request->n_pages; i++) {
    if (options->overlay != NULL)
      request->pages[i].overlay = -1;
    if (options->light != NULL)
      request->pages[i].light = NULL;
  }
  request->light = options->light;
  request->mono = options->mono;
  request->dpi = options->dpi;
  return TRUE;
}

int
sq_verb_plot (int argc, char **argv, const char *summary)
{
  g_auto (PlotOptions) options = { .dpi = SQ_PLOT_USUAL_DPI };
  const GOptionEntry own[] = {
    { "sheet", 0, 0, G_OPTION_ARG_STRING, &options.sheet, N_ ("The sheet; the smallest that does"),
      N_ ("A4…A0|letter|tabloid|arch-a…e") },
    { "scale", 0, 0, G_OPTION_ARG_STRING, &options.scale, N_ ("The scale; the best that fits"),
      N_ ("1:50|1/4\"=1'") },
    { "overlay", 0, 0, G_OPTION_ARG_STRING, &options.overlay, N_ ("What lies under the plan"),
      N_ ("lux|stops|none") },
    { "portrait", 0, 0, G_OPTION_ARG_NONE, &options.portrait, N_ ("Sheets stand upright"), NULL },
    { "landscape", 0, 0, G_OPTION_ARG_NONE, &options.landscape, N_ ("Sheets lie on their side"),
      NULL },
    { "pages", 0, 0, G_OPTION_ARG_STRING, &options.pages, N_ ("Which pages, in which order"),
      N_ ("plan,section") },
    { "light", 0, 0, G_OPTION_ARG_STRING, &options.light,
      N_ ("The lamp that a section goes through"), N_ ("ID") },
    { "mono", 0, 0, G_OPTION_ARG_NONE, &options.mono, N_ ("One ink"), NULL },
    { "dpi", 0, 0, G_OPTION_ARG_DOUBLE, &options.dpi, N_ ("Pixels an inch, for PNG"), N_ ("N") },
    { NULL },
  };
  g_auto (SqArguments) arguments = { 0 };
  SqPlotFormat format;
  SqPlotRequest request;
  int code = sq_arguments_parse (&arguments, argc, argv, own, summary);
  if (code >= 0)
    return code;
  if (arguments.output == NULL)
    return sq_say_usage (
      _ ("plot: no file is named, expected -o with a name in .pdf, .svg or .png"));
  if (!format_of (arguments.output, &format))
    return sq_say_usage (_ ("-o %s: expected a name that ends in .pdf, .svg or .png"),
                         arguments.output);
  if (arguments.json || arguments.csv)
    return sq_say_usage (_ ("plot: a drawing is neither JSON nor CSV"));
  code = check_usage (&options);
  if (code >= 0)
    return code;
  g_autoptr (SqScene) scene = sq_arguments_load (&arguments);
  if (scene == NULL)
    return SQ_EXIT_INPUT;
  g_autoptr (GError) error = NULL;
  g_autoptr (SqPlot) plot = NULL;
  if (request_of (&options, scene, &request, &error))
    plot = sq_plot_new (scene, &request, arguments.threads, NULL, &error);
  if (plot == NULL || !sq_plot_export (plot, arguments.output, format, &error))
    return sq_say_error (arguments.scene_path, error);
  g_autoptr (GPtrArray) left_out = sq_plot_left_out (scene);
  sq_say_warnings (&arguments, left_out);
  sq_say_warnings (&arguments, sq_plot_remarks (plot));
  return SQ_EXIT_DONE;
}
