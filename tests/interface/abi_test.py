#!/usr/bin/env python3
"""abi_test.py CC CXX: the check of the binary interface bites. Small interfaces are described by the script that describes ours,
then changed in one way each; the check must let pass what harms no program that was compiled before, and nothing else."""
import contextlib
import io
import pathlib
import subprocess
import sys
import tempfile

import abi

C_HEADER = """
#include <stdint.h>
#ifdef __cplusplus
extern "C" {
#endif
enum { LODE_SEED = 0, LODE_LEAF = 1 };
typedef struct lode_bed lode_bed;
typedef void (*lode_watering)(void* user, uint32_t litres);
LODE_API int32_t lode_bed_create(lode_bed** bed);
LODE_API int32_t lode_bed_water(lode_bed* bed,
                                lode_watering watering, void* user);
LODE_API void lode_bed_free(lode_bed* bed);
#ifdef __cplusplus
}
#endif
"""
CPP_HEADER = """
#pragma once
namespace lode {
enum class Herb { basil, thyme };
struct Plant {
    const char* name = "";
    int row = 0;
    bool is_tall = false;
};
class LODE_API Plot {
  public:
    virtual ~Plot();
    virtual int rows() const;
    [[nodiscard]] Plant plant(Herb herb) const;
};
[[nodiscard]] LODE_API int count(const Plot& plot);
}
"""
CPP_SOURCE = """
#include <letterlode/tiny.hpp>
namespace lode {
Plot::~Plot() = default;
int Plot::rows() const { return 1; }
Plant Plot::plant(Herb) const { return {}; }
int count(const Plot& plot) { return plot.rows(); }
}
"""

# A change, and whether it may come in a patch (0.1.1), a new minor version (0.2.0), a new major one (1.0.0).
C_CHANGES = [
    ("a function is added", "LODE_API void lode_bed_free", "LODE_API void lode_bed_mulch(lode_bed* bed);\nLODE_API void lode_bed_free",
     (True, True, True)),
    ("a code is added", "LODE_LEAF = 1", "LODE_LEAF = 1, LODE_FLOWER = 2", (True, True, True)),
    ("a parameter is called otherwise", "lode_bed** bed", "lode_bed** plot", (True, True, True)),
    ("a function is gone", "LODE_API void lode_bed_free(lode_bed* bed);", "", (False, False, True)),
    ("a function is called otherwise", "lode_bed_free", "lode_bed_clear", (False, False, True)),
    ("a parameter is added", "lode_bed_create(lode_bed** bed", "lode_bed_create(lode_bed** bed, int32_t rows", (False, False, True)),
    ("a parameter is wider", "void* user, uint32_t litres", "void* user, uint64_t litres", (False, False, True)),
    ("parameters change places", "lode_bed* bed,\n                                lode_watering watering, void* user",
     "lode_watering watering, lode_bed* bed, void* user", (False, False, True)),
    ("a result is wider", "LODE_API int32_t lode_bed_water", "LODE_API int64_t lode_bed_water", (False, False, True)),
    ("a code has another value", "LODE_LEAF = 1", "LODE_LEAF = 2", (False, False, True)),
    ("a code is gone", ", LODE_LEAF = 1", "", (False, False, True)),
    ("an enumeration is gone", "enum { LODE_SEED = 0, LODE_LEAF = 1 };", "", (False, False, True)),
]
CPP_CHANGES = [
    ("a type is added", "enum class Herb", "struct Shed { int tools = 0; };\nenum class Herb", (True, True, True)),
    ("an enumerator is added", "thyme }", "thyme, sage }", (True, True, True)),
    ("an enumerator is put before others", "{ basil", "{ anise, basil", (False, True, True)),
    ("a member is added", "int row = 0;", "int row = 0;\n    int column = 0;", (False, True, True)),
    ("a member is added where nothing else moves", "bool is_tall = false;", "bool is_tall = false;\n    bool is_old = false;",
     (False, True, True)),
    ("members change places", "int row = 0;\n    bool is_tall = false;", "bool is_tall = false;\n    int row = 0;", (False, True, True)),
    ("a member has another type", "int row = 0;", "unsigned row = 0;", (False, True, True)),
    ("virtual functions are added", "virtual int rows", "virtual int depth() const { return 0; }\n    virtual int rows",
     (False, True, True)),
    ("a parameter has another type", "count(const Plot& plot)", "count(Plot& plot)", (False, True, True)),
    ("a function returns another type", "LODE_API int count", "LODE_API long count", (False, True, True)),
]


class Tree:
    """A small interface in a scratch folder."""

    def __init__(self, folder, cc, cxx):
        self.folder, self.cc, self.cxx = pathlib.Path(folder), cc, cxx
        (self.folder / "letterlode").mkdir()

    def write(self, name, text):
        file = self.folder / "letterlode" / name
        file.write_text(f"#ifndef LODE_API\n#define LODE_API {abi.EXPORTED}\n#endif\n{text}")

    def c_part(self, header):
        self.write("tiny.h", header)
        return {"c.abi": abi.describe_c(self.cc, self.folder)}

    def cpp_parts(self, header, source):
        self.write("tiny.hpp", header)
        self.write("tiny.cpp", source)
        library = self.folder / "libtiny.so"
        subprocess.run([self.cxx, "-std=c++20", "-fPIC", "-shared", "-fvisibility=hidden", f"-I{self.folder}",
                        self.folder / "letterlode/tiny.cpp", "-o", library], check=True)
        return {"symbols.txt": abi.describe_symbols([library], self.folder),
                "layout.txt": abi.describe_layout(self.cxx, self.folder)}


def changed(text, old, new):
    assert old in text, old
    return text.replace(old, new)


def main():
    faults = []
    with tempfile.TemporaryDirectory() as scratch:
        tree = Tree(scratch, *sys.argv[1:3])
        released = {**tree.c_part(C_HEADER), **tree.cpp_parts(CPP_HEADER, CPP_SOURCE)}
        description = pathlib.Path(scratch) / "released"
        description.mkdir()
        for name, text in {**released, "version.txt": "0.1.0\n"}.items():
            (description / name).write_text(text)

        def judge(what, parts, may):
            for version, allowed in zip(("0.1.1", "0.2.0", "1.0.0"), may):
                said = io.StringIO()
                with contextlib.redirect_stdout(said):
                    passed = abi.check(description, version, {**released, **parts})
                if passed != allowed:
                    faults.append(f"{what}: {'passed' if passed else 'failed'} as {version}\n{said.getvalue()}")
                if passed and what.endswith("is added") and not said.getvalue():
                    faults.append(f"{what}: nothing is said of it")

        judge("nothing is changed", {}, (True, True, True))
        for what, old, new, may in C_CHANGES:
            judge(what, tree.c_part(changed(C_HEADER, old, new)), may)
        for what, old, new, may in CPP_CHANGES:
            source = CPP_SOURCE
            if "count" in old:  # the definition follows its declaration
                source = source.replace(old.removeprefix("LODE_API "), new.removeprefix("LODE_API "))
            judge(what, tree.cpp_parts(changed(CPP_HEADER, old, new), source), may)
    if faults:
        sys.exit("\n".join(faults))
    print(f"{len(C_CHANGES) + len(CPP_CHANGES)} changes, each judged as it should be in three versions")


if __name__ == "__main__":
    main()
