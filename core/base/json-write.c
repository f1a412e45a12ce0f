/* json-write.c: a JSON tree laid out for eyes and for line-by-line comparison */
#include "base/json-write.h"

#include <float.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

/* digits times ten to the exponent */
typedef struct {
  guint64 digits;
  int exponent;
} Decimal;

static double
decimal_value (Decimal decimal)
{
  char text[48];
  g_snprintf (text, sizeof text, "%" G_GUINT64_FORMAT "e%d", decimal.digits, decimal.exponent);
  return g_ascii_strtod (text, NULL);
}

/* The decimal of @precision digits, 1 to 17, that is nearest to @value. */
static Decimal
nearest_decimal (double value, int precision)
{
  Decimal decimal = { 0, 0 };
  char format[16], text[G_ASCII_DTOSTR_BUF_SIZE];
  const char *c;

  g_snprintf (format, sizeof format, "%%.%de", precision - 1);
  g_ascii_formatd (text, sizeof text, format, value);
  for (c = text; *c != 'e'; c++) {
    if (g_ascii_isdigit (*c))
      decimal.digits = decimal.digits * 10 + (guint64)g_ascii_digit_value (*c);
  }
  decimal.exponent = atoi (c + 1) - (precision - 1);
  return decimal;
}

/* The shortest decimal that reads back as @value, positive and finite. Fifteen digits tell all
 * normal doubles of so few digits apart, so nothing shorter need be tried; subnormal ones have
 * fewer digits to give. Below a power of two the doubles lie twice as close as above it: there the
 * nearest decimal may read back as the neighbour below while the next one up is right. */
static Decimal
shortest_decimal (double value)
{
  int exponent;
  gboolean power_of_two = frexp (value, &exponent) == 0.5;
  Decimal decimal;

  for (int precision = value < DBL_MIN ? 1 : 15;; precision++) {
    decimal = nearest_decimal (value, precision);
    if (precision == DBL_DECIMAL_DIG || decimal_value (decimal) == value)
      break;
    if (power_of_two) {
      decimal.digits++;
      if (decimal_value (decimal) == value)
        break;
    }
  }
  while (decimal.digits % 10 == 0) {
    decimal.digits /= 10;
    decimal.exponent++;
  }
  return decimal;
}

void
sq_json_append_number (GString *out, double value)
{
  const double plain_below = 0x1p63;
  const int most_zeros = 5; /* after "0." */
  Decimal decimal;
  char digits[24];
  int count, point; /* where the decimal point stands, from the first digit */

  if (!isfinite (value) || value == 0.0) {
    g_string_append (out, isfinite (value) ? "0" : "null");
    return;
  }
  decimal = shortest_decimal (fabs (value));
  count = g_snprintf (digits, sizeof digits, "%" G_GUINT64_FORMAT, decimal.digits);
  point = count + decimal.exponent;
  if (value < 0.0)
    g_string_append_c (out, '-');
  if (point < -most_zeros || fabs (value) >= plain_below)
    g_string_append_printf (out, "%c%s%se%+d", digits[0], count > 1 ? "." : "", digits + 1,
                            point - 1);
  else if (point <= 0)
    g_string_append_printf (out, "0.%.*s%s", -point, "00000", digits);
  else if (point < count)
    g_string_append_printf (out, "%.*s.%s", point, digits, digits + point);
  else
    g_string_append_printf (out, "%s%.*s", digits, point - count, "0000000000000000000");
}

static void
append_string (GString *out, const char *text)
{
  static const char specials[] = "\"\\\b\f\n\r\t";
  static const char letters[] = "\"\\bfnrt";

  g_string_append_c (out, '"');
  for (const char *c = text; *c != '\0'; c++) {
    const char *special = strchr (specials, *c);
    if (special != NULL)
      g_string_append_printf (out, "\\%c", letters[special - specials]);
    else if ((guchar)*c < 0x20)
      g_string_append_printf (out, "\\u%04x", (guint)*c);
    else
      g_string_append_c (out, *c);
  }
  g_string_append_c (out, '"');
}

/* @node: neither array nor object */
static void
append_leaf (GString *out, JsonNode *node)
{
  GType type = json_node_get_value_type (node);

  if (type == G_TYPE_BOOLEAN)
    g_string_append (out, json_node_get_boolean (node) ? "true" : "false");
  else if (type == G_TYPE_INT64)
    g_string_append_printf (out, "%" G_GINT64_FORMAT, json_node_get_int (node));
  else if (type == G_TYPE_DOUBLE)
    sq_json_append_number (out, json_node_get_double (node));
  else if (type == G_TYPE_STRING && json_node_get_string (node) != NULL)
    append_string (out, json_node_get_string (node));
  else
    g_string_append (out, "null");
}

/* Members of an array or object, one after another. */
typedef struct {
  JsonArray *array; /* NULL in an object */
  JsonObjectIter members;
  guint count, next;
} Walk;

static gboolean
walk_start (Walk *walk, JsonNode *node)
{
  *walk = (Walk){ .array = NULL };
  if (JSON_NODE_HOLDS_ARRAY (node)) {
    walk->array = json_node_get_array (node);
    walk->count = json_array_get_length (walk->array);
    return TRUE;
  }
  if (JSON_NODE_HOLDS_OBJECT (node)) {
    json_object_iter_init_ordered (&walk->members, json_node_get_object (node));
    walk->count = json_object_get_size (json_node_get_object (node));
    return TRUE;
  }
  return FALSE;
}

/* @key: (out): NULL in an array */
static gboolean
walk_next (Walk *walk, const char **key, JsonNode **node)
{
  *key = NULL;
  if (walk->next == walk->count)
    return FALSE;
  if (walk->array != NULL)
    *node = json_array_get_element (walk->array, walk->next);
  else
    json_object_iter_next_ordered (&walk->members, key, node);
  walk->next++;
  return TRUE;
}

typedef struct {
  GString *out;
  gsize line;     /* where the last line of out starts */
  GArray *widths; /* gsize: of each array and object on one line, in the order they open */
  guint opened;   /* how many of them are written */
  GString *leaf;  /* to measure with */
} Writer;

static gsize
characters (const GString *text, gsize from)
{
  return (gsize)g_utf8_strlen (text->str + from, (gssize)(text->len - from));
}

static gsize
measure_key (Writer *writer, const char *key)
{
  g_string_truncate (writer->leaf, 0);
  append_string (writer->leaf, key);
  return characters (writer->leaf, 0) + strlen (": ");
}

/* Width of @node on one line. Every node is measured once, before anything is written: asking
 * again at each level would cost the depth of the tree. */
static gsize
measure (Writer *writer, JsonNode *node)
{
  gsize index = writer->widths->len;
  gsize width;
  Walk walk;
  const char *key;
  JsonNode *member;

  if (!walk_start (&walk, node)) {
    g_string_truncate (writer->leaf, 0);
    append_leaf (writer->leaf, node);
    return characters (writer->leaf, 0);
  }
  g_array_set_size (writer->widths, (guint)index + 1);
  width = strlen ("[]");
  if (walk.count > 0)
    width += (walk.count - 1) * strlen (", ") + (walk.array != NULL ? 0 : strlen ("  "));
  while (walk_next (&walk, &key, &member)) {
    if (key != NULL)
      width += measure_key (writer, key);
    width += measure (writer, member);
  }
  g_array_index (writer->widths, gsize, index) = width;
  return width;
}

static void
start_line (Writer *writer, guint indent)
{
  g_string_append_c (writer->out, '\n');
  writer->line = writer->out->len;
  g_string_append_printf (writer->out, "%*s", (int)indent, "");
}

/* @in_line: whether what it stands in is written on one line */
static void
write_node (Writer *writer, JsonNode *node, guint indent, gboolean in_line)
{
  GString *out = writer->out;
  gboolean top = indent == 0;
  gsize width;
  Walk walk;
  const char *key;
  JsonNode *member;

  if (!walk_start (&walk, node)) {
    append_leaf (out, node);
    return;
  }
  width = g_array_index (writer->widths, gsize, writer->opened++);
  if (walk.count == 0) {
    g_string_append (out, walk.array != NULL ? "[]" : "{}");
    return;
  }
  if (!in_line && !(top && walk.array == NULL))
    in_line = characters (out, writer->line) + width + strlen (",") <= SQ_JSON_COLUMNS;

  g_string_append_c (out, walk.array != NULL ? '[' : '{');
  while (walk_next (&walk, &key, &member)) {
    if (walk.next > 1)
      g_string_append_c (out, ',');
    if (!in_line)
      start_line (writer, indent + 2);
    else if (walk.next > 1 || key != NULL)
      g_string_append_c (out, ' ');
    if (key != NULL) {
      append_string (out, key);
      g_string_append (out, ": ");
    }
    write_node (writer, member, indent + 2, in_line);
  }
  if (!in_line)
    start_line (writer, indent);
  else if (walk.array == NULL)
    g_string_append_c (out, ' ');
  g_string_append_c (out, walk.array != NULL ? ']' : '}');
}

char *
sq_json_write (JsonNode *node)
{
  Writer writer = { .out = g_string_new (NULL), .leaf = g_string_new (NULL) };

  writer.widths = g_array_new (FALSE, TRUE, sizeof (gsize));
  measure (&writer, node);
  write_node (&writer, node, 0, FALSE);
  g_string_append_c (writer.out, '\n');
  g_array_unref (writer.widths);
  g_string_free (writer.leaf, TRUE);
  return g_string_free (writer.out, FALSE);
}
