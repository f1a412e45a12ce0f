"""Turns the JSON files of core/scene/library into C strings: library-data.py OUT FILE…

GResource would do the same and bring a static registration; plain constants need nothing."""
import os
import sys

out, files = sys.argv[1], sys.argv[2:]
with open(out, "w", encoding="ascii") as c:
    c.write('/* made from core/scene/library by library-data.py */\n#include "scene/library-data.h"\n')
    for path in files:
        name = os.path.splitext(os.path.basename(path))[0]
        with open(path, "rb") as f:
            data = f.read() + b"\0"
        c.write(f"\nconst char sq_library_{name}_json[] = {{\n")
        for i in range(0, len(data), 20):
            c.write("  " + ", ".join(str(b if b < 128 else b - 256) for b in data[i : i + 20]) + ",\n")
        c.write("};\n")
