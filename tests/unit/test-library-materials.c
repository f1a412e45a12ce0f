/* test-library-materials.c: the library's cloths, gels, nets and boards pass on what they can */
#include "scene/library.h"

#include "library-expect.h"

#include <math.h>

#define SHARE_WITHIN 0.01 /* relative, of shares rounded to two or three digits */

/* Stops that each cloth costs on the axis, from a working gaffer's published table. A reading on
 * the axis misses what went elsewhere, so no less than that passes in all. */
static void
test_diffusion_losses (void)
{
  static const struct {
    const char *id;
    double stops;
  } rows[] = {
    { "light-frost", 0.25 },    { "half-frost", 0.5 },       { "eighth-white", 0.25 },
    { "quarter-white", 0.33 },  { "half-white", 0.75 },      { "full-white", 1.5 },
    { "heavy-frost", 2 },       { "quarter-spun", 0.75 },    { "half-spun", 1.5 },
    { "full-spun", 2.5 },       { "quarter-grid-cloth", 1 }, { "light-grid-cloth", 2 },
    { "full-grid-cloth", 2.5 }, { "quarter-silk", 0.67 },    { "half-silk", 1 },
    { "full-silk", 1.67 },      { "muslin-bleached", 2 },    { "muslin-unbleached", 2 },
  };
  g_autoptr (SqLibrary) library = sq_library_new ();
  const GPtrArray *materials = sq_library_materials (library);
  guint diffusions = 0;

  for (guint i = 0; i < materials->len; i++) {
    const SqMaterial *material = g_ptr_array_index (materials, i);
    diffusions += material->for_what == SQ_FOR_DIFFUSION;
  }
  g_assert_cmpuint (diffusions, ==, G_N_ELEMENTS (rows));
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    const SqMaterial *cloth = sq_library_material (library, rows[i].id);
    expect_within (cloth->direct + cloth->scatter, exp2 (-rows[i].stops), 1, cloth->id, "passes");
  }
}

/* Nets by the half stop (common practice), neutral densities by their name, and published mireds
 * (a public table of correction gels) with the share that passes (from memory). */
static void
test_measured_materials (void)
{
  static const struct {
    const char *id;
    double direct;
    double mired;
  } rows[] = {
    { "single-net", M_SQRT1_2, 0 },
    { "double-net", 0.5, 0 },
    { "triple-net", 0.5 * M_SQRT1_2, 0 },
    { "nd-03", 0.5012, 0 }, /* 10^-0.3 */
    { "nd-06", 0.2512, 0 },
    { "nd-09", 0.1259, 0 },
    { "nd-12", 0.0631, 0 },
    { "full-orange", 0.55, 159 },
    { "three-quarter-orange", 0.61, 124 },
    { "half-orange", 0.71, 109 },
    { "quarter-orange", 0.81, 64 },
    { "eighth-orange", 0.9, 26 },
    { "full-blue", 0.35, -137 },
    { "three-quarter-blue", 0.42, -112 },
    { "half-blue", 0.54, -78 },
    { "quarter-blue", 0.7, -35 },
    { "eighth-blue", 0.81, -18 },
  };
  g_autoptr (SqLibrary) library = sq_library_new ();

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    const SqMaterial *material = sq_library_material (library, rows[i].id);
    expect_near (material->direct, rows[i].direct, SHARE_WITHIN, material->id, "passes");
    expect (material->mired == rows[i].mired, material->id, "mired");
  }
}

static void
test_shares (void)
{
  g_autoptr (SqLibrary) library = sq_library_new ();
  const GPtrArray *materials = sq_library_materials (library);

  for (guint i = 0; i < materials->len; i++) {
    const SqMaterial *material = g_ptr_array_index (materials, i);
    double passes = material->direct + material->scatter;

    expect_within (passes + material->reflect, 0.01, 1, material->id, "all shares");
    if (material->for_what == SQ_FOR_GEL || material->for_what == SQ_FOR_NET)
      expect (material->direct > 0 && material->scatter == 0, material->id, "is no clear one");
    if (material->for_what == SQ_FOR_BOUNCE)
      expect (material->reflect > passes, material->id, "returns less than it lets through");
    if (material->for_what == SQ_FOR_FLAG)
      expect (passes == 0, material->id, "lets light through");
    if (!isnan (material->tint[0]))
      expect_within (material->tint[0] + material->tint[1], 0.1, 1, material->id, "x + y");
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/library/material/passes what its published loss leaves",
                   test_diffusion_losses);
  g_test_add_func ("/library/material/nets, densities and mireds", test_measured_materials);
  g_test_add_func ("/library/material/shares add up", test_shares);
  return g_test_run ();
}
