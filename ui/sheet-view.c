/* sheet-view.c: the pages of a plot as they print, one under the other, at any zoom */
#include "sheet-view.h"

#include <glib/gi18n-lib.h>

#define PIXELS_A_MM (96.0 / 25.4)
#define MARGIN 16 /* round each page, in pixels */
#define LEAST_ZOOM 0.1
#define MOST_ZOOM 8.0

struct _SqSheetView {
  GtkWidget parent_instance;
  SqPlot *plot;
  double zoom;      /* 0: fit */
  double measured;  /* the zoom at which the pages' height was last asked for */
  GPtrArray *nodes; /* GskRenderNode of each page at nodes_zoom; NULL where not drawn yet */
  double nodes_zoom;
};

G_DEFINE_FINAL_TYPE (SqSheetView, sq_sheet_view, GTK_TYPE_WIDGET)

enum { ZOOMED, N_SIGNALS };
static guint signals[N_SIGNALS];

static void
node_free (gpointer node)
{
  if (node != NULL)
    gsk_render_node_unref (node);
}

static void
forget_nodes (SqSheetView *view)
{
  g_ptr_array_set_size (view->nodes, 0);
  g_ptr_array_set_size (view->nodes, view->plot != NULL ? sq_plot_n_pages (view->plot) : 0);
}

/* The size of all pages, one under the other, in millimetres. */
static void
pages_size_mm (SqSheetView *view, double *width_mm, double *height_mm)
{
  *width_mm = *height_mm = 0.0;
  for (int i = 0; view->plot != NULL && i < sq_plot_n_pages (view->plot); i++) {
    double width, height;
    sq_plot_page_size_mm (view->plot, i, &width, &height);
    *width_mm = MAX (*width_mm, width);
    *height_mm += height;
  }
}

double
sq_sheet_view_get_zoom (SqSheetView *view)
{
  double width_mm, height_mm, first_mm = 0.0, unused;
  if (view->zoom > 0.0 || view->plot == NULL)
    return view->zoom > 0.0 ? view->zoom : 1.0;
  pages_size_mm (view, &width_mm, &height_mm);
  sq_plot_page_size_mm (view->plot, 0, &unused, &first_mm);
  /* The first page whole; further pages are a scroll away. */
  GtkWidget *room = gtk_widget_get_ancestor (GTK_WIDGET (view), GTK_TYPE_SCROLLED_WINDOW);
  if (room == NULL)
    room = GTK_WIDGET (view);
  double across = (gtk_widget_get_width (room) - 2.0 * MARGIN) / (width_mm * PIXELS_A_MM);
  double down = (gtk_widget_get_height (room) - 2.0 * MARGIN) / (first_mm * PIXELS_A_MM);
  return CLAMP (MIN (across, down), LEAST_ZOOM, MOST_ZOOM);
}

int
sq_sheet_view_n_pages (SqSheetView *view)
{
  return view->plot != NULL ? sq_plot_n_pages (view->plot) : 0;
}

double
sq_sheet_view_page_top (SqSheetView *view, int page)
{
  double top = MARGIN, scale = sq_sheet_view_get_zoom (view) * PIXELS_A_MM;
  for (int i = 0; i < MIN (page, sq_sheet_view_n_pages (view)); i++) {
    double width_mm, height_mm;
    sq_plot_page_size_mm (view->plot, i, &width_mm, &height_mm);
    top += height_mm * scale + MARGIN;
  }
  return top;
}

static void
sheet_view_measure (GtkWidget *widget,
                    GtkOrientation orientation,
                    int for_size,
                    int *minimum,
                    int *natural,
                    int *minimum_baseline,
                    int *natural_baseline)
{
  SqSheetView *view = SQ_SHEET_VIEW (widget);
  int n_pages = sq_sheet_view_n_pages (view);
  double width_mm, height_mm, scale = sq_sheet_view_get_zoom (view) * PIXELS_A_MM;
  pages_size_mm (view, &width_mm, &height_mm);
  view->measured = sq_sheet_view_get_zoom (view);
  double size = orientation == GTK_ORIENTATION_HORIZONTAL
                  ? width_mm * scale + 2.0 * MARGIN
                  : height_mm * scale + (n_pages + 1.0) * MARGIN;
  gboolean fits = view->zoom == 0.0 && (orientation == GTK_ORIENTATION_HORIZONTAL || n_pages <= 1);
  *minimum = fits || n_pages == 0 ? 64 : (int)ceil (size);
  *natural = MAX (*minimum, (int)ceil (size));
  *minimum_baseline = *natural_baseline = -1;
}

static gboolean
measure_again (gpointer widget)
{
  gtk_widget_queue_resize (widget);
  return G_SOURCE_REMOVE;
}

/* A zoom that fits follows the room, which is known only now: all pages are as high as it says. */
static void
sheet_view_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  const double least_change = 1e-6;
  SqSheetView *view = SQ_SHEET_VIEW (widget);
  if (fabs (sq_sheet_view_get_zoom (view) - view->measured) > least_change)
    g_idle_add_full (G_PRIORITY_HIGH_IDLE, measure_again, g_object_ref (widget), g_object_unref);
  g_signal_emit (widget, signals[ZOOMED], 0);
}

/* Each page is recorded once a zoom; moving about costs nothing but its node. */
static GskRenderNode *
page_node (SqSheetView *view, int page, double zoom)
{
  if (view->nodes_zoom != zoom) {
    forget_nodes (view);
    view->nodes_zoom = zoom;
  }
  GskRenderNode *node = g_ptr_array_index (view->nodes, page);
  if (node == NULL) {
    double width_mm, height_mm, scale = zoom * PIXELS_A_MM;
    sq_plot_page_size_mm (view->plot, page, &width_mm, &height_mm);
    graphene_rect_t bounds =
      GRAPHENE_RECT_INIT (0, 0, (float)(width_mm * scale), (float)(height_mm * scale));
    node = gsk_cairo_node_new (&bounds);
    cairo_t *cairo = gsk_cairo_node_get_draw_context (node);
    cairo_scale (cairo, scale, scale);
    sq_plot_draw (view->plot, cairo, page);
    cairo_destroy (cairo);
    g_ptr_array_index (view->nodes, page) = node;
  }
  return node;
}

static void
sheet_view_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  SqSheetView *view = SQ_SHEET_VIEW (widget);
  double zoom = sq_sheet_view_get_zoom (view), scale = zoom * PIXELS_A_MM, y = MARGIN;
  int n_pages = sq_sheet_view_n_pages (view);
  for (int i = 0; i < n_pages; i++) {
    double width_mm, height_mm;
    sq_plot_page_size_mm (view->plot, i, &width_mm, &height_mm);
    double x = floor ((gtk_widget_get_width (widget) - width_mm * scale) / 2.0);
    if (n_pages == 1)
      y = floor (MAX (MARGIN, (gtk_widget_get_height (widget) - height_mm * scale) / 2.0));
    graphene_rect_t paper =
      GRAPHENE_RECT_INIT (0, 0, (float)(width_mm * scale), (float)(height_mm * scale));
    GskRoundedRect outline;
    gsk_rounded_rect_init_from_rect (&outline, &paper, 0);
    gtk_snapshot_save (snapshot);
    gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT ((float)x, (float)floor (y)));
    gtk_snapshot_append_outset_shadow (snapshot, &outline, &(GdkRGBA){ 0, 0, 0, 0.35f }, 0, 1, 0,
                                       5);
    gtk_snapshot_append_color (snapshot, &(GdkRGBA){ 1, 1, 1, 1 }, &paper);
    gtk_snapshot_append_node (snapshot, page_node (view, i, zoom));
    gtk_snapshot_restore (snapshot);
    y += height_mm * scale + MARGIN;
  }
}

void
sq_sheet_view_set_zoom (SqSheetView *view, double zoom)
{
  view->zoom = zoom == 0.0 ? 0.0 : CLAMP (zoom, LEAST_ZOOM, MOST_ZOOM);
  gtk_widget_queue_resize (GTK_WIDGET (view));
  g_signal_emit (view, signals[ZOOMED], 0);
}

void
sq_sheet_view_take_plot (SqSheetView *view, SqPlot *plot)
{
  g_clear_pointer (&view->plot, sq_plot_free);
  view->plot = plot;
  forget_nodes (view);
  gtk_widget_queue_resize (GTK_WIDGET (view));
}

/* Zooms about the pointer: what lies under it stays under it. */
static gboolean
on_scroll (GtkEventControllerScroll *controller, double dx, double dy, SqSheetView *view)
{
  if (!(gtk_event_controller_get_current_event_state (GTK_EVENT_CONTROLLER (controller)) &
        GDK_CONTROL_MASK))
    return FALSE;
  sq_sheet_view_set_zoom (view, sq_sheet_view_get_zoom (view) * pow (1.15, -dy));
  return TRUE;
}

/* A drag moves the sheet as a hand would. */
static void
on_drag (GtkGestureDrag *gesture, double dx, double dy, SqSheetView *view)
{
  GtkWidget *room = gtk_widget_get_ancestor (GTK_WIDGET (view), GTK_TYPE_SCROLLED_WINDOW);
  if (room == NULL)
    return;
  GtkAdjustment *across = gtk_scrolled_window_get_hadjustment (GTK_SCROLLED_WINDOW (room));
  GtkAdjustment *down = gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (room));
  /* The widget moves under the pointer, so the offset is what is left to move. */
  gtk_adjustment_set_value (across, gtk_adjustment_get_value (across) - dx);
  gtk_adjustment_set_value (down, gtk_adjustment_get_value (down) - dy);
}

static void
sheet_view_dispose (GObject *object)
{
  SqSheetView *view = SQ_SHEET_VIEW (object);
  g_clear_pointer (&view->plot, sq_plot_free);
  g_clear_pointer (&view->nodes, g_ptr_array_unref);
  G_OBJECT_CLASS (sq_sheet_view_parent_class)->dispose (object);
}

static void
sq_sheet_view_class_init (SqSheetViewClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);
  G_OBJECT_CLASS (class)->dispose = sheet_view_dispose;
  widget_class->measure = sheet_view_measure;
  widget_class->size_allocate = sheet_view_size_allocate;
  widget_class->snapshot = sheet_view_snapshot;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
  /* The zoom that is shown has changed. */
  signals[ZOOMED] = g_signal_new ("zoomed", SQ_TYPE_SHEET_VIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                  NULL, G_TYPE_NONE, 0);
}

static void
sq_sheet_view_init (SqSheetView *view)
{
  view->nodes = g_ptr_array_new_with_free_func (node_free);
  gtk_widget_set_focusable (GTK_WIDGET (view), TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (view), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("The plan as it prints"), -1);
  GtkEventController *scroll =
    gtk_event_controller_scroll_new (GTK_EVENT_CONTROLLER_SCROLL_VERTICAL);
  g_signal_connect (scroll, "scroll", G_CALLBACK (on_scroll), view);
  gtk_widget_add_controller (GTK_WIDGET (view), scroll);
  GtkGesture *drag = gtk_gesture_drag_new ();
  g_signal_connect (drag, "drag-update", G_CALLBACK (on_drag), view);
  gtk_widget_add_controller (GTK_WIDGET (view), GTK_EVENT_CONTROLLER (drag));
}
