/* rays-scene.c: what stands in the way of light, as triangles for the ray tracer */
#include "rays-scene.h"

/* Rays and hits are handed out member by member, each an array over the packet: these are the
 * places of two members among the others. */
enum { RAY_ID = 10, HIT_TRIANGLE = 5 };

typedef struct {
  GArray *corners;   /* float, three each */
  GArray *triangles; /* guint32, three each */
} Mesh;

static Mesh
mesh_new (void)
{
  return (Mesh){ g_array_new (FALSE, FALSE, sizeof (float)),
                 g_array_new (FALSE, FALSE, sizeof (guint32)) };
}

/* A convex face is a fan about one of its corners: a triangle for each of its edges that does not
 * touch that corner. Returns: how many triangles */
static guint
add_face (Mesh *mesh, const SqSolid *solid, guint face, guint32 base)
{
  guint n = 0;
  gboolean started = FALSE;
  guint32 first = 0;
  for (guint i = 0; i < solid->n_edges; i++) {
    const SqEdge *edge = &solid->edges[i];
    if (edge->left != face && edge->right != face)
      continue;
    if (!started)
      first = edge->from;
    started = TRUE;
    if (edge->from == first || edge->to == first)
      continue;
    const guint32 triangle[] = { base + first, base + edge->from, base + edge->to };
    g_array_append_vals (mesh->triangles, triangle, 3);
    n++;
  }
  return n;
}

static guint
add_solid (Mesh *mesh, const SqSolid *solid)
{
  guint32 base = mesh->corners->len / 3;
  for (guint i = 0; i < solid->n_corners; i++) {
    const float corner[] = { (float)solid->corners[i].x_m, (float)solid->corners[i].y_m,
                             (float)solid->corners[i].z_m };
    g_array_append_vals (mesh->corners, corner, 3);
  }
  guint n = 0;
  for (guint face = 0; face < (solid->flat ? 1 : solid->n_faces); face++)
    n += add_face (mesh, solid, face, base);
  return n;
}

/* A RTCFilterFunctionN: a net stops no ray, it takes its share. With spatial splits a triangle may
 * be offered twice, and a ray along a diagonal meets both halves of a sheet: each counts once. */
static void
take_share (const struct RTCFilterFunctionNArguments *args)
{
  RaysCast *cast = (RaysCast *)(void *)args->context;
  const GArray *passes = args->geometryUserPtr;
  for (guint i = 0; i < args->N; i++) {
    if (args->valid[i] == 0)
      continue;
    guint lane = ((const guint32 *)args->ray)[RAY_ID * args->N + i];
    guint triangle = ((const guint32 *)args->hit)[HIT_TRIANGLE * args->N + i];
    guint64 bit = G_GUINT64_CONSTANT (1) << (triangle / 2 % 64);
    if ((cast->met[lane] & bit) == 0)
      cast->passes[lane] *= g_array_index (passes, float, triangle);
    cast->met[lane] |= bit;
    args->valid[i] = 0;
  }
}

static void
attach (RaysScene *scene, RTCDevice device, Mesh *mesh, GArray *passes)
{
  guint n_corners = mesh->corners->len / 3, n_triangles = mesh->triangles->len / 3;
  if (n_triangles > 0) {
    RTCGeometry geometry = rtcNewGeometry (device, RTC_GEOMETRY_TYPE_TRIANGLE);
    rtcSetGeometryBuildQuality (geometry, RTC_BUILD_QUALITY_HIGH);
    float *corners = rtcSetNewGeometryBuffer (geometry, RTC_BUFFER_TYPE_VERTEX, 0,
                                              RTC_FORMAT_FLOAT3, 3 * sizeof (float), n_corners);
    guint32 *triangles = rtcSetNewGeometryBuffer (
      geometry, RTC_BUFFER_TYPE_INDEX, 0, RTC_FORMAT_UINT3, 3 * sizeof (guint32), n_triangles);
    memcpy (corners, mesh->corners->data, mesh->corners->len * sizeof *corners);
    memcpy (triangles, mesh->triangles->data, mesh->triangles->len * sizeof *triangles);
    if (passes != NULL) {
      rtcSetGeometryUserData (geometry, passes);
      rtcSetGeometryOccludedFilterFunction (geometry, take_share);
    }
    rtcCommitGeometry (geometry);
    rtcAttachGeometry (scene->scene, geometry);
    rtcReleaseGeometry (geometry);
  }
  scene->n_triangles += n_triangles;
  g_array_unref (mesh->corners);
  g_array_unref (mesh->triangles);
}

void
rays_scene_init (RaysScene *scene, RTCDevice device, const GArray *obstacles, const GArray *doors)
{
  *scene = (RaysScene){ .scene = rtcNewScene (device),
                        .passes = g_array_new (FALSE, FALSE, sizeof (float)) };
  rtcSetSceneBuildQuality (scene->scene, RTC_BUILD_QUALITY_HIGH);
  Mesh solid = mesh_new (), thin = mesh_new ();
  for (guint i = 0; i < obstacles->len; i++) {
    const SqObstacle *obstacle = &g_array_index (obstacles, SqObstacle, i);
    float passes = (float)obstacle->passes;
    if (passes <= 0.0f) {
      add_solid (&solid, &obstacle->solid);
      continue;
    }
    for (guint n = add_solid (&thin, &obstacle->solid); n > 0; n--)
      g_array_append_val (scene->passes, passes);
  }
  for (guint i = 0; doors != NULL && i < doors->len; i++)
    add_solid (&solid, &g_array_index (doors, SqObstacle, i).solid);
  attach (scene, device, &solid, NULL);
  attach (scene, device, &thin, scene->passes);
  rtcCommitScene (scene->scene);
}

void
rays_scene_clear (RaysScene *scene)
{
  rtcReleaseScene (scene->scene);
  g_array_unref (scene->passes);
}
