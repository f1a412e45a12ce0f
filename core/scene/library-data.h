/* library-data.h: the texts of core/scene/library/, made into C by the build (library-data.py) */
#pragma once

extern const char sq_library_classes_json[];
extern const char sq_library_materials_json[];
extern const char sq_library_stands_json[];
