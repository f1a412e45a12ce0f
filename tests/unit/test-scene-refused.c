/* test-scene-refused.c: scenes that cannot be, and the one line that says where and why */
#include "scene-text.h"

typedef struct {
  const char *name, *scene; /* as in read_scene() */
  SqError code;
  const char *place;
  const char *words; /* apart by | */
} Bad;

static void
check_bad (gconstpointer data)
{
  g_autoptr (SqLibrary) library = sq_library_new ();
  for (const Bad *bad = data; bad->name != NULL; bad++) {
    g_autoptr (GError) error = NULL;
    g_autoptr (SqScene) scene = read_scene (library, bad->scene, &error);
    if (scene != NULL)
      g_error ("%s: is read", bad->name);
    check_line (bad->name, error, bad->code, bad->place, bad->words);
  }
}

/* clang-format off */

/* Things that recur; each a member or two of the scene. */
#define F1      "'fixtures': [{'id': 'f1', 'class': '" LAMP "', 'at': [0, 0, 2]}]"
#define FIXTURE "'class': '" LAMP "', 'at': [0, 0, 2]"
#define M1      "'marks': [{'id': 'm1', 'at': [1, 1]}]"
#define S1      "'supplies': [{'id': 's1'}]"
#define OPENING(text) "'walls': [{'path': [[0, 0], [4, 0]], 'height': 3, 'openings': [" text "]}]"
#define PIECE(text)   "'pieces': [{" text "}]"
#define BEAM    "'beams': [{'beam_deg': 20, 'field_deg': 40, 'peak_cd': 1000}]"
#define CLASS(text)   "'classes': [{'id': 'k1', " text "}]"

static const Bad ids[] = {
  { "two of a kind", "'marks': [{'id': 'm1', 'at': [1, 1]}, {'id': 'm1', 'at': [2, 1]}]",
    SQ_ERROR_REFERENCE, "marks[1].id", "\"m1\" is taken|mark" },
  { "two kinds", M1 ", 'fixtures': [{'id': 'm1', " FIXTURE "}]",
    SQ_ERROR_REFERENCE, "fixtures[0].id", "\"m1\" is taken|mark" },
  { "an opening and a fixture", OPENING ("{'id': 'f1', 'width': 1}") ", " F1,
    SQ_ERROR_REFERENCE, "fixtures[0].id", "\"f1\" is taken|opening" },
  { "openings of two walls", "'walls': [{'path': [[0, 0], [4, 0]], 'openings': [{'id': 'o', 'width': 1}]},"
    " {'path': [[0, 2], [4, 2]], 'openings': [{'id': 'o', 'width': 1}]}]",
    SQ_ERROR_REFERENCE, "walls[1].openings[0].id", "\"o\" is taken|opening" },
  { "a class and a look", "'looks': [{'id': 'k1'}], " CLASS (BEAM),
    SQ_ERROR_REFERENCE, "classes[0].id", "\"k1\" is taken|look" },
  { "a material and a note", "'notes': [{'id': 'y', 'text': 'x', 'at': [0, 0]}], 'materials': [{'id': 'y', 'for': 'gel'}]",
    SQ_ERROR_REFERENCE, "materials[0].id", "\"y\" is taken|note" },
  { "sun", "'marks': [{'id': 'sun', 'at': [1, 1]}]", SQ_ERROR_REFERENCE, "marks[0].id", "\"sun\" is reserved" },
  { "sky", "'looks': [{'id': 'sky'}]", SQ_ERROR_REFERENCE, "looks[0].id", "\"sky\" is reserved" },
  { "room", "'pieces': [{'id': 'room', 'disc': {'at': [0, 0], 'radius': 1}}]",
    SQ_ERROR_REFERENCE, "pieces[0].id", "\"room\" is reserved" },
  { "base", "'looks': [{'id': 'base'}]", SQ_ERROR_REFERENCE, "looks[0].id", "\"base\" is reserved" },
  { "a key of the file", OPENING ("{'id': 'fixtures', 'width': 1}"),
    SQ_ERROR_REFERENCE, "walls[0].openings[0].id", "\"fixtures\" is reserved" },
  { NULL },
};

#define NOT_THERE(says) SQ_ERROR_REFERENCE, says, "\"x\" does not exist"

static const Bad dangling[] = {
  { "a lamp's aim", "'fixtures': [{'id': 'f1', 'aim': 'x', " FIXTURE "}]",
    NOT_THERE ("fixtures[0].aim"), },
  { "a camera's aim", "'cameras': [{'id': 'c1', 'at': [0, 0, 1], 'aim': 'x'}]",
    NOT_THERE ("cameras[0].aim") },
  { "a lamp's class", "'fixtures': [{'id': 'f1', 'class': 'x', 'at': [0, 0, 2]}]",
    NOT_THERE ("fixtures[0].class") "|class" },
  { "a gel's material", "'fixtures': [{'id': 'f1', 'modifiers': [{'kind': 'gel', 'material': 'x'}], " FIXTURE "}]",
    NOT_THERE ("fixtures[0].modifiers[0].material") "|material" },
  { "a box's cloth", "'fixtures': [{'id': 'f1', 'modifiers': [{'kind': 'scrim'}, {'kind': 'softbox', 'width': 1, 'height': 1, 'material': 'x'}], " FIXTURE "}]",
    NOT_THERE ("fixtures[0].modifiers[1].material") "|material" },
  { "a panel's material", "'panels': [{'id': 'g1', 'kind': 'net', 'at': [0, 0, 1], 'width': 1, 'height': 1, 'material': 'x'}]",
    NOT_THERE ("panels[0].material") "|material" },
  { "an opening's material", OPENING ("{'width': 1, 'material': 'x'}"),
    NOT_THERE ("walls[0].openings[0].material") "|material" },
  { "a lamp's stand", "'fixtures': [{'id': 'f1', 'stand': 'x', " FIXTURE "}]",
    NOT_THERE ("fixtures[0].stand") "|stand" },
  { "a panel's stand", "'panels': [{'id': 'g1', 'kind': 'flag', 'at': [0, 0, 1], 'width': 1, 'height': 1, 'stand': 'x'}]",
    NOT_THERE ("panels[0].stand") "|stand" },
  { "a lamp's supply", "'fixtures': [{'id': 'f1', 'supply': 'x', " FIXTURE "}]",
    NOT_THERE ("fixtures[0].supply") "|supply" },
  { "a supply's feed", "'supplies': [{'id': 's1', 'fed_from': 'x'}]",
    NOT_THERE ("supplies[0].fed_from") "|supply" },
  { "a motive", "'fixtures': [{'id': 'f1', 'motive': 'x', " FIXTURE "}]",
    NOT_THERE ("fixtures[0].motive") "|sun" },
  { "what a probe looks at", "'probes': [{'id': 'p1', 'at': [0, 0, 1], 'toward': 'x'}]",
    NOT_THERE ("probes[0].toward") },
  { "a mark of role_at", "'fixtures': [{'id': 'f1', 'role_at': {'x': 'key'}, " FIXTURE "}]",
    NOT_THERE ("fixtures[0].role_at.x") "|mark" },
  { "a look's camera", "'looks': [{'id': 'l1', 'camera': 'x'}]", NOT_THERE ("looks[0].camera") "|camera" },
  { "a look's fixture", "'looks': [{'id': 'l1', 'fixtures': {'x': {'on': false}}}]",
    NOT_THERE ("looks[0].fixtures.x") "|fixture" },
  { "a look's panel", "'looks': [{'id': 'l1', 'panels': {'x': {'set': false}}}]",
    NOT_THERE ("looks[0].panels.x") "|panel" },
  { "a look's opening", "'looks': [{'id': 'l1', 'openings': {'x': {}}}]",
    NOT_THERE ("looks[0].openings.x") "|opening" },
  { "a look's mark", "'looks': [{'id': 'l1', 'marks': {'x': {}}}]",
    NOT_THERE ("looks[0].marks.x") "|mark" },
  { "an aim in a look", F1 ", 'looks': [{'id': 'l1', 'fixtures': {'f1': {'aim': 'x'}}}]",
    NOT_THERE ("looks[0].fixtures.f1.aim") },
  { "a gel in a look", F1 ", 'looks': [{'id': 'l1', 'fixtures': {'f1': {'modifiers': [{'kind': 'gel', 'material': 'x'}]}}}]",
    NOT_THERE ("looks[0].fixtures.f1.modifiers[0].material") "|material" },
  { "an opening's cloth in a look", OPENING ("{'id': 'o1', 'width': 1}") ", 'looks': [{'id': 'l1', 'openings': {'o1': {'material': 'x'}}}]",
    NOT_THERE ("looks[0].openings.o1.material") "|material" },
  { "where a cable starts", F1 ", 'cables': [{'from': 'x', 'to': 'f1'}]", NOT_THERE ("cables[0].from") "|supply" },
  { "where a cable ends", S1 ", 'cables': [{'from': 's1', 'to': 'x'}]", NOT_THERE ("cables[0].to") "|fixture, supply" },
  { "a page's look", "'pages': [{'page': 'plan', 'look': 'x'}]", NOT_THERE ("pages[0].look") "|look" },
  { "a page's light", "'pages': [{'page': 'section', 'light': 'x'}]", NOT_THERE ("pages[0].light") "|fixture" },
  { NULL },
};

static const Bad wrong_kind[] = {
  { "a mark as class", M1 ", 'fixtures': [{'id': 'f1', 'class': 'm1', 'at': [0, 0, 2]}]",
    SQ_ERROR_REFERENCE, "fixtures[0].class", "\"m1\" names the wrong thing|mark|the id of: class" },
  { "a class as aim", "'fixtures': [{'id': 'f1', 'aim': 'k1', " FIXTURE "}], " CLASS (BEAM),
    SQ_ERROR_REFERENCE, "fixtures[0].aim", "\"k1\" names the wrong thing|class|anything on the plan" },
  { "a library's class as aim", "'fixtures': [{'id': 'f1', 'aim': '" LAMP "', " FIXTURE "}]",
    SQ_ERROR_REFERENCE, "fixtures[0].aim", "does not exist|anything on the plan" },
  { "a library's material as class", "'fixtures': [{'id': 'f1', 'class': '" CLOTH "', 'at': [0, 0, 2]}]",
    SQ_ERROR_REFERENCE, "fixtures[0].class", "does not exist|class" },
  { "a library's class as material", OPENING ("{'width': 1, 'material': '" LAMP "'}"),
    SQ_ERROR_REFERENCE, "walls[0].openings[0].material", "does not exist|material" },
  { "a camera in role_at", "'cameras': [{'id': 'c1', 'at': [0, 0, 1]}], 'fixtures': [{'id': 'f1', 'role_at': {'c1': 'key'}, " FIXTURE "}]",
    SQ_ERROR_REFERENCE, "fixtures[0].role_at.c1", "wrong thing|camera|mark" },
  { "a mark among a look's fixtures", M1 ", 'looks': [{'id': 'l1', 'fixtures': {'m1': {'on': false}}}]",
    SQ_ERROR_REFERENCE, "looks[0].fixtures.m1", "wrong thing|mark|fixture" },
  { "a wall among a look's openings", "'walls': [{'id': 'w1', 'path': [[0, 0], [4, 0]]}], 'looks': [{'id': 'l1', 'openings': {'w1': {}}}]",
    SQ_ERROR_REFERENCE, "looks[0].openings.w1", "wrong thing|wall|opening" },
  { "a cable to a mark", M1 ", " S1 ", 'cables': [{'from': 's1', 'to': 'm1'}]",
    SQ_ERROR_REFERENCE, "cables[0].to", "wrong thing|mark|fixture, supply" },
  { "a look as probe's view", "'looks': [{'id': 'l1'}], 'probes': [{'id': 'p1', 'at': [0, 0, 1], 'toward': 'l1'}]",
    SQ_ERROR_REFERENCE, "probes[0].toward", "wrong thing|look" },
  { "a stand as aim", "'fixtures': [{'id': 'f1', 'aim': 'light-stand', " FIXTURE "}]",
    SQ_ERROR_REFERENCE, "fixtures[0].aim", "\"light-stand\" does not exist" },
  { "a stand as class", "'fixtures': [{'id': 'f1', 'class': 'light-stand', 'at': [0, 0, 2]}]",
    SQ_ERROR_REFERENCE, "fixtures[0].class", "\"light-stand\" does not exist|class" },
  { "the sun as aim", "'fixtures': [{'id': 'f1', 'aim': 'sun', " FIXTURE "}]",
    SQ_ERROR_REFERENCE, "fixtures[0].aim", "\"sun\" does not exist" },
  { NULL },
};

static const Bad looks[] = {
  { "a lamp's class", F1 ", 'looks': [{'id': 'l1', 'fixtures': {'f1': {'class': '" LAMP "'}}}]",
    SQ_ERROR_VALUE, "looks[0].fixtures.f1.class", "cannot be changed by a look|level, |aim" },
  { "an opening's width", OPENING ("{'id': 'o1', 'width': 1}") ", 'looks': [{'id': 'l1', 'openings': {'o1': {'width': 2}}}]",
    SQ_ERROR_VALUE, "looks[0].openings.o1.width", "cannot be changed by a look|transmittance" },
  { "latitude", "'daylight': {'latitude': 0, 'longitude': 0, 'date': '2024-06-20'}, 'looks': [{'id': 'l1', 'daylight': {'latitude': 1}}]",
    SQ_ERROR_VALUE, "looks[0].daylight.latitude", "cannot be changed by a look|time" },
  { "no daylight to change", "'looks': [{'id': 'l0'}, {'id': 'l1', 'daylight': {'time': '22:00'}}]",
    SQ_ERROR_REFERENCE, "looks[1].daylight", "the scene has not" },
  { "a key that is no id", "'looks': [{'id': 'l1', 'panels': {'a b': {}}}]",
    SQ_ERROR_VALUE, "looks[0].panels.a b", "no id|A-Z" },
  { "a mark's key that is no id", "'fixtures': [{'id': 'f1', 'role_at': {'': 'key'}, " FIXTURE "}]",
    SQ_ERROR_VALUE, "fixtures[0].role_at", "no id|A-Z" },
  { "a mark's role that is none", M1 ", 'fixtures': [{'id': 'f1', 'role_at': {'m1': 'hero'}, " FIXTURE "}]",
    SQ_ERROR_VALUE, "fixtures[0].role_at.m1", "\"hero\" is unknown|key, fill" },
  { "a level over 1", F1 ", 'looks': [{'id': 'l1', 'fixtures': {'f1': {'level': 1.4}}}]",
    SQ_ERROR_VALUE, "looks[0].fixtures.f1.level", "1.4 is out of range|from 0 to 1" },
  { "a lamp moved onto its point", "'fixtures': [{'id': 'f1', 'aim': [1, 1, 1], " FIXTURE "}], 'looks': [{'id': 'l1', 'fixtures': {'f1': {'at': [1, 1, 1]}}}]",
    SQ_ERROR_GEOMETRY, "looks[0].fixtures.f1.aim", "is the lamp itself" },
  { "a lamp turned onto itself", F1 ", 'looks': [{'id': 'l1', 'fixtures': {'f1': {'aim': 'f1'}}}]",
    SQ_ERROR_GEOMETRY, "looks[0].fixtures.f1.aim", "is the lamp itself" },
  { "what a camera looks at moved into it", "'panels': [{'id': 'g1', 'kind': 'flag', 'at': [5, 5, 1], 'width': 1, 'height': 1}],"
    " 'cameras': [{'id': 'c1', 'at': [0, 0, 1], 'aim': 'g1'}], 'looks': [{'id': 'l1', 'panels': {'g1': {'at': [0, 0, 1]}}}]",
    SQ_ERROR_GEOMETRY, "looks[0].cameras.c1.aim", "is the camera itself" },
  { NULL },
};

static const Bad set[] = {
  { "a wall of one point", "'walls': [{'path': [[0, 0]]}]", SQ_ERROR_GEOMETRY, "walls[0].path", "1 point|at least 2" },
  { "a wall of no point", "'walls': [{'path': []}]", SQ_ERROR_GEOMETRY, "walls[0].path", "0 points|at least 2" },
  { "two points closed", "'walls': [{'path': [[0, 0], [4, 0]], 'closed': true}]",
    SQ_ERROR_GEOMETRY, "walls[0]", "closed with 2 points|at least 3" },
  { "an edge of no length", "'walls': [{'path': [[0, 0], [4, 0], [4, 0]]}]",
    SQ_ERROR_GEOMETRY, "walls[0].path[2]", "the point before it" },
  { "a closing edge of no length", "'walls': [{'path': [[0, 0], [4, 0], [4, 2], [0, 0]], 'closed': true}]",
    SQ_ERROR_GEOMETRY, "walls[0].path[0]", "the point before it" },
  { "wider than its wall", OPENING ("{'width': 4.5}"),
    SQ_ERROR_GEOMETRY, "walls[0].openings[0]", "4.5 m|edge of 4 m" },
  { "past the end of its edge", OPENING ("{'width': 1, 'offset': 3.25}"),
    SQ_ERROR_GEOMETRY, "walls[0].openings[0]", "4.25 m|edge of 4 m" },
  { "in an edge that is not", OPENING ("{'width': 1, 'edge': 1}"),
    SQ_ERROR_GEOMETRY, "walls[0].openings[0]", "edge 1 does not exist|0 to 0" },
  { "over the wall", OPENING ("{'width': 1, 'head': 3.5}"),
    SQ_ERROR_GEOMETRY, "walls[0].openings[0]", "head at 3.5 m|top at 3 m" },
  { "over a wall that reaches to the ceiling", "'room': {'ceiling_height': 2.4}, 'walls': [{'path': [[0, 0], [4, 0]], 'openings': [{'width': 1, 'head': 2.5}]}]",
    SQ_ERROR_GEOMETRY, "walls[0].openings[0]", "head at 2.5 m|top at 2.4 m" },
  { "upside down", OPENING ("{'width': 1, 'sill': 2, 'head': 1}"),
    SQ_ERROR_GEOMETRY, "walls[0].openings[0]", "sill at 2 m|head at 1 m" },
  { "of no height", OPENING ("{'width': 1, 'sill': 1, 'head': 1}"),
    SQ_ERROR_GEOMETRY, "walls[0].openings[0]", "sill at 1 m|head at 1 m" },
  { "one over another", OPENING ("{'width': 1}, {'width': 1, 'offset': 2}, {'width': 1, 'offset': 0.5}"),
    SQ_ERROR_GEOMETRY, "walls[0].openings[2]", "lies over openings[0]" },
  { "a piece without a shape", PIECE ("'label': 'table'"), SQ_ERROR_VALUE, "pieces[0]", "no shape|outline or a disc" },
  { "a piece with two shapes", PIECE ("'outline': [[0, 0], [1, 0], [1, 1]], 'disc': {'at': [0, 0], 'radius': 1}"),
    SQ_ERROR_VALUE, "pieces[0]", "outline and a disc" },
  { "a bow tie", PIECE ("'outline': [[0, 0], [2, 1], [2, 0], [0, 2]]"), SQ_ERROR_GEOMETRY, "pieces[0]", "crosses itself" },
  { "a line", PIECE ("'outline': [[0, 0], [1, 1], [2, 2]]"), SQ_ERROR_GEOMETRY, "pieces[0]", "no area" },
  { "two corners", PIECE ("'outline': [[0, 0], [1, 1]]"), SQ_ERROR_GEOMETRY, "pieces[0]", "no area|at least 3" },
  { "a top under its base", PIECE ("'base': 1, 'top': 0.5, 'disc': {'at': [0, 0], 'radius': 1}"),
    SQ_ERROR_GEOMETRY, "pieces[0]", "top at 0.5 m|base at 1 m" },
  { "a top at its base", PIECE ("'base': 1, 'top': 1, 'disc': {'at': [0, 0], 'radius': 1}"),
    SQ_ERROR_GEOMETRY, "pieces[0]", "top at 1 m|base at 1 m" },
  { NULL },
};

static const Bad lamps[] = {
  { "a lamp aimed at its own id", "'fixtures': [{'id': 'f1', 'aim': 'f1', " FIXTURE "}]",
    SQ_ERROR_GEOMETRY, "fixtures[0].aim", "is the lamp itself" },
  { "a lamp aimed at its own place", "'fixtures': [{'id': 'f1', 'aim': [0, 0, 2], " FIXTURE "}]",
    SQ_ERROR_GEOMETRY, "fixtures[0].aim", "is the lamp itself" },
  { "a lamp in the face it lights", "'marks': [{'id': 'm1', 'at': [0, 0], 'stature': 2, 'floor': 0.128}], 'fixtures': [{'id': 'f1', 'aim': 'm1', " FIXTURE "}]",
    SQ_ERROR_GEOMETRY, "fixtures[0].aim", "is the lamp itself" }, /* 0.936 · 2 + 0.128 = 2 */
  { "a camera", "'cameras': [{'id': 'c1', 'at': [0, 0, 1], 'aim': 'c1'}]",
    SQ_ERROR_GEOMETRY, "cameras[0].aim", "is the camera itself" },
  { "a camera by point", "'cameras': [{'id': 'c0', 'at': [0, 0, 1]}, {'id': 'c1', 'at': [0, 0, 1], 'aim': [0, 0, 1]}]",
    SQ_ERROR_GEOMETRY, "cameras[1].aim", "is the camera itself" },
  { "a probe", "'probes': [{'id': 'p1', 'at': [0, 0, 1], 'toward': 'p1'}]",
    SQ_ERROR_GEOMETRY, "probes[0].toward", "is the probe itself" },
  { "a probe in a lamp", F1 ", 'probes': [{'id': 'p1', 'at': [0, 0, 2], 'toward': 'f1'}]",
    SQ_ERROR_GEOMETRY, "probes[0].toward", "is the probe itself" },
  { "a direction of no length", "'probes': [{'id': 'p1', 'at': [0, 0, 1], 'normal': [0, 0, 0]}]",
    SQ_ERROR_GEOMETRY, "probes[0].normal", "no length|[x, y, z]" },
  { "a panel of no width", "'panels': [{'id': 'g1', 'kind': 'flag', 'at': [0, 0, 1], 'width': 0, 'height': 1}]",
    SQ_ERROR_VALUE, "panels[0].width", "0 is out of range|above 0" },
  { "a panel of no height", "'panels': [{'id': 'g1', 'kind': 'flag', 'at': [0, 0, 1], 'width': 1, 'height': -1}]",
    SQ_ERROR_VALUE, "panels[0].height", "-1 is out of range|above 0" },
  { "a net of nothing", "'panels': [{'id': 'g1', 'kind': 'net', 'at': [0, 0, 1], 'width': 1, 'height': 1}]",
    SQ_ERROR_VALUE, "panels[0].material", "missing|material" },
  { "a bounce of nothing", "'panels': [{'id': 'g1', 'kind': 'bounce', 'at': [0, 0, 1], 'width': 1, 'height': 1, 'material': null}]",
    SQ_ERROR_VALUE, "panels[0].material", "missing|material" },
  { NULL },
};

static const Bad classes[] = {
  { "no light", CLASS ("'input_w': 100"), SQ_ERROR_VALUE, "classes[0]", "0 kinds of light|beams, emits, photometry" },
  { "two lights", CLASS (BEAM ", 'emits': 'sphere', 'lumens': 800"), SQ_ERROR_VALUE, "classes[0]", "2 kinds of light" },
  { "three lights", CLASS (BEAM ", 'emits': 'sphere', 'lumens': 800, 'photometry': 'IESNA'"), SQ_ERROR_VALUE, "classes[0]", "3 kinds of light" },
  { "three beams", CLASS ("'beams': [{'beam_deg': 5, 'field_deg': 9, 'peak_cd': 9}, {'beam_deg': 10, 'field_deg': 19, 'peak_cd': 8}, {'beam_deg': 20, 'field_deg': 39, 'peak_cd': 7}]"),
    SQ_ERROR_VALUE, "classes[0]", "3 beams|spot and flood" },
  { "a field as wide as the beam", CLASS ("'beams': [{'beam_deg': 5, 'field_deg': 9, 'peak_cd': 9}, {'beam_deg': 20, 'field_deg': 20, 'peak_cd': 1}]"),
    SQ_ERROR_VALUE, "classes[0].beams[1].field_deg", "not more than beam_deg" },
  { "a field narrower upward", CLASS ("'beams': [{'beam_deg': [20, 30], 'field_deg': [40, 25], 'peak_cd': 1}]"),
    SQ_ERROR_VALUE, "classes[0].beams[0].field_deg", "not more than beam_deg" },
  { "a glow of nothing", CLASS ("'emits': 'tube'"), SQ_ERROR_VALUE, "classes[0]", "no lumens|above 0" },
  { "volts the wrong way round", CLASS (BEAM ", 'volts': [240, 100]"), SQ_ERROR_VALUE, "classes[0]", "volts|[least, most]" },
  { "colours the wrong way round", CLASS (BEAM ", 'cct_range': [5600, 3200]"), SQ_ERROR_VALUE, "classes[0]", "cct_range|[least, most]" },
  { "more light out than in", "'materials': [{'id': 'y1', 'for': 'net', 'direct': 0.5, 'scatter': 0.25, 'reflect': 0.5}]",
    SQ_ERROR_VALUE, "materials[0]", "1.25 together|at most 1" },
  { "a supply of nothing", "'supplies': [{'id': 's1', 'rating_a': 0}]", SQ_ERROR_VALUE, "supplies[0].rating_a", "0 is out of range|above 0|A" },
  { "fed from itself", "'supplies': [{'id': 's1', 'fed_from': 's1'}]", SQ_ERROR_GEOMETRY, "supplies[0].fed_from", "circle" },
  { "fed in a circle", "'supplies': [{'id': 's0', 'fed_from': null}, {'id': 's1', 'fed_from': 's3'}, {'id': 's2', 'fed_from': 's1'}, {'id': 's3', 'fed_from': 's2'}]",
    SQ_ERROR_GEOMETRY, "supplies[1].fed_from", "circle" },
  { "a cable to where it starts", S1 ", 'cables': [{'from': 's1', 'to': 's1'}]", SQ_ERROR_GEOMETRY, "cables[0].to", "where it comes from" },
  { NULL },
};
/* clang-format on */

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_data_func ("/scene refused/ids that stand twice or are reserved", ids, check_bad);
  g_test_add_data_func ("/scene refused/references to nothing", dangling, check_bad);
  g_test_add_data_func ("/scene refused/references to the wrong thing", wrong_kind, check_bad);
  g_test_add_data_func ("/scene refused/looks", looks, check_bad);
  g_test_add_data_func ("/scene refused/walls, openings and pieces", set, check_bad);
  g_test_add_data_func ("/scene refused/lamps, cameras, probes and panels", lamps, check_bad);
  g_test_add_data_func ("/scene refused/classes, materials and supplies", classes, check_bad);
  return g_test_run ();
}
