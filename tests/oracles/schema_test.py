#!/usr/bin/env python3
"""Hold JSON to the schemas in data/schema.

    schema_test.py                          the schemas themselves: right documents pass, broken ones do not
    schema_test.py --kind puzzle FILE...    what the program wrote ("-" is standard input); says what is wrong, and exits 1

The judge of a document is Debian's python3-jsonschema; the schemas are of draft 2020-12. For a puzzle the things that a
schema cannot say are held to as well: the size of the cells, and that each word's letters stand where it is said to be.
"""
import argparse
import copy
import json
import pathlib
import sys
import unittest

import jsonschema

FOLDER = pathlib.Path(__file__).resolve().parents[2] / "data" / "schema"
KINDS = ("puzzle", "audit", "refusal", "rating", "recipe", "choices", "print", "cut", "order", "result")
STEPS = {"right": (0, 1), "down": (1, 0), "down-right": (1, 1), "up-right": (-1, 1),
         "left": (0, -1), "up": (-1, 0), "up-left": (-1, -1), "down-left": (1, -1)}


def read_strictly(text):
    """JSON as RFC 8259 has it: no NaN, and no name twice in an object."""
    def once(pairs):
        names = [name for name, _ in pairs]
        twice = {name for name in names if names.count(name) > 1}
        if twice:
            raise ValueError(f"an object has {sorted(twice)} twice")
        return dict(pairs)

    def no_constant(word):
        raise ValueError(f"{word} is no JSON")
    return json.loads(text, object_pairs_hook=once, parse_constant=no_constant)


SCHEMAS = {kind: read_strictly((FOLDER / f"{kind}.schema.json").read_text("utf-8")) for kind in KINDS}
# A schema names another as a file beside it.
STORE = {(FOLDER / f"{kind}.schema.json").as_uri(): schema for kind, schema in SCHEMAS.items()}


def faults(kind, document):
    """What is wrong with a document, a line each; none where it is right."""
    resolver = jsonschema.RefResolver((FOLDER / f"{kind}.schema.json").as_uri(), SCHEMAS[kind], store=STORE)
    validator = jsonschema.Draft202012Validator(SCHEMAS[kind], resolver=resolver)
    found = [f"{error.json_path}: {error.message}" for error in validator.iter_errors(document)]
    if kind == "puzzle" and not found:
        found = list(contradictions(document))
    if kind == "choices" and not found:
        found = [fault for puzzle in document["puzzles"] for fault in contradictions(puzzle)]
    return found


def contradictions(puzzle):
    rows, columns, cells = puzzle["rows"], puzzle["columns"], puzzle["cells"]
    if len(cells) != rows or any(len(row) != columns for row in cells):
        yield f"the cells are not {rows} rows of {columns}"
        return
    for word in puzzle["words"]:
        row, column = word["placed"]["row"] - 1, word["placed"]["column"] - 1
        down, across = STEPS[word["placed"]["direction"]]
        for letter in word["letters"]:
            if not (0 <= row < rows and 0 <= column < columns and cells[row][column] == letter):
                yield f"{word['shown']} does not stand where it is said to be"
                break
            row, column = row + down, column + across
    if [word["shown"] for word in puzzle["words"]] != [word["shown"] for word in puzzle["audit"]["words"]]:
        yield "the audit is about other words"


# The examples of the project's design, completed where they leave something open.
SHED = {"row": 1, "column": 1, "direction": "right", "last": {"row": 1, "column": 4}}
RIGHT = {
    "audit": {
        "format": "letterlode-audit", "version": 1, "certified": False,
        "words": [{"shown": "Shed", "expected": 1, "copies": [SHED, {**SHED, "row": 2}], "stray": [{**SHED, "row": 2}]},
                  {"shown": "Rake", "expected": 1, "copies": [], "stray": []}],
        "missing": ["Rake"],
        "avoided": [{"word": "weed", **SHED, "direction": "up-left"}],
        "allowed": [], "chance": [{"word": "hoes", **SHED}]},
    "recipe": {
        "words": ["Shed", "Saint-Malo"], "locale": "en", "letters": "upper",
        "digraphs": "split", "sharp_s": "keep", "marks": "strip", "finals": "fold", "grid": "15x15", "aspect": 0.8,
        "shape": "heart", "directions": ["right", "down-left"], "seed": 18446744073709551615, "default_avoid_list": True,
        "avoid": ["weed"], "allow": [], "effort": 50000000, "nested": "separate", "message": "WELL DONE", "leftover": 8,
        "pins": [{"word": "Shed", "row": 1, "column": 1, "direction": "right"}], "crossings": {"most": 3}, "choices": 5,
        "spacing": 1, "shares": {"right": 2, "down-left": 1}, "backward": 2, "message_then": "filler",
        "filler": "language", "letter_counts": {"A": 12, "LL": 0}, "longest_run": 2, "look_alikes": "apart",
        "earlier": {"words": [{"word": "Shed", "row": 1, "column": 1, "direction": "right"}], "filler": ["A", ""]}},
    "refusal": {
        "format": "letterlode-refusal", "version": 1, "reason": "unusable",
        "message": "beds.txt:7: 'x' is one letter, and a word needs two.", "words": ["x"],
        "advice": ["Write a longer word."], "source": "beds.txt", "line": 7, "position": 2},
    "rating": {
        "format": "letterlode-rating", "version": 1,
        "readability": [{"part": "letter height as seen", "value": 14.2, "unit": "arcmin", "threshold": 16, "bound": "least",
                         "source": "ISO 9241-3 (1992)", "note": "from 2 m"}],
        "difficulty": {"fixations": 412.5, "level": "search", "words": [{"shown": "Shed", "fixations": 12.5, "found": True}],
                       "parts": [{"part": "words", "value": 2, "unit": "words", "source": "judgement"}]}},
}
RIGHT["print"] = {
    "format": "letterlode-print", "version": 1, "pages": 4, "letter_pt": 21.6, "list_pt": 16, "large_enough": True, "notes": [],
    "worksheets": [{"title": "Beds", "version": "A", "seed": 7, "rows": 15, "columns": 15, "words": 20},
                   {"title": "", "seed": 8, "rows": 15, "columns": 15, "words": 20}]}
SQUARE = {"left_mm": 5, "top_mm": -2.5, "width_mm": 254, "height_mm": 127, "width_in": 10, "height_in": 5}
RIGHT["cut"] = {
    "format": "letterlode-cut", "version": 1, "surface": "second",
    "blank": {"shape": "heart", "width_mm": 254, "height_mm": 254, "width_in": 10, "height_in": 10}, "artwork": SQUARE,
    "font": "constructed", "cell_mm": 12.7, "cell_in": 0.5, "cap_height_mm": 8.5, "cap_height_in": 0.33465,
    "layers": [{"name": "letters", "colour": "#243f3a", "pieces": 63, "counters": 12, "area_mm2": 2100.5, "cut_mm": 4000, "seconds": 80,
                "narrowest_stroke": {"width_mm": 0.8, "piece": "B at row 3, column 4"}}],
    "cut_mm": 4000, "speed_mm_s": 50, "seconds": 80, "holds": False,
    "findings": [{"kind": "stroke", "layer": "letters", "piece": "B at row 3, column 4", "row": 3, "column": 4, "width_mm": 0.8,
                  "asked_mm": 1, "at": {"left_mm": 40, "top_mm": 60.25}, "alike": 7, "message": "the stroke of B is 0.8 mm wide"},
                 {"kind": "between-pieces", "layer": "heading", "piece": "W in the heading", "other": {"piece": "r in the heading"},
                  "width_mm": 0, "asked_mm": 1, "at": {"left_mm": 40, "top_mm": 6}, "alike": 1, "message": "W and r are too near"}],
    "ways_out": ["Make strokes wider: --embolden 0.2mm."], "changed": [], "notes": [],
    "plan": {"bed": {"width_mm": 304.8, "edge_mm": 0}, "least_loads": 1, "proved": True, "bands_are_loose": False,
             "film": [{"colour": "#243f3a", "rectangles": 1, "area_mm2": 32258}],
             "loads": [{"length_mm": 260, "witness": True, "films": [
                 {"name": "A", "colour": "#243f3a", **SQUARE,
                  "from": {"width_mm": 300, "sheet": 1, "left_mm": 0, "top_mm": 0, "turned": False}}],
                        "pieces": [{"name": "letters", "layer": "letters", "turned_degrees": 90, **SQUARE}]}], "notes": []}}
RIGHT["puzzle"] = {
    "format": "letterlode-puzzle", "version": 1, "recipe": {"words": ["Shed"]}, "rows": 2, "columns": 4,
    "cells": [["S", "H", "E", "D"], ["O", None, "LL", "Ñ"]],
    "words": [{"shown": "Shed", "letters": ["S", "H", "E", "D"], "inside": "Sheds",
               "placed": {"row": 1, "column": 1, "direction": "right"}}],
    "audit": {"format": "letterlode-audit", "version": 1, "certified": True,
              "words": [{"shown": "Shed", "expected": 1, "copies": [SHED], "stray": []}],
              "missing": [], "avoided": [], "allowed": [], "chance": []}}
RIGHT["choices"] = {"format": "letterlode-choices", "version": 1, "puzzles": [RIGHT["puzzle"]]}

RIGHT["order"] = {"words": ["Shed", "Rake"], "name": "Beds", "grid": "9x9", "seed": 7, "rate": True, "print": {"page": "letter"},
                  "blank": "8x10in", "surface": "second", "colour": ["bands=gold"], "word-list": True, "pins": []}
RIGHT["result"] = {"order": 12, "name": "Beds", **RIGHT["puzzle"], "rating": RIGHT["rating"], "folder": "000012-beds",
                   "cut": RIGHT["cut"], "notes": ["There is no list of words to avoid."]}

GONE = object()
# kind, the way to one value, and what is put there instead: each of these must be found.
WRONG = [
    ("puzzle", "format", "letterlode-audit"), ("puzzle", "version", 2), ("puzzle", "version", "1"), ("puzzle", "recipe", GONE),
    ("puzzle", "rows", 0), ("puzzle", "rows", 3), ("puzzle", "columns", 4.5), ("puzzle", "columns", 5), ("puzzle", "cells", []),
    ("puzzle", "cells/0/0", ""), ("puzzle", "cells/0/0", 7), ("puzzle", "cells/0/0", "T"), ("puzzle", "cells/1", ["O"]),
    ("puzzle", "words/0/letters", ["S"]), ("puzzle", "words/0/placed", GONE), ("puzzle", "words/0/placed/direction", "east"),
    ("puzzle", "words/0/placed/direction", "up"), ("puzzle", "words/0/placed/row", 2), ("puzzle", "words/0/inside", ""),
    ("puzzle", "recipe/words", []), ("puzzle", "audit/certified", False), ("puzzle", "audit/missing", ["Shed"]),
    ("puzzle", "audit/words/0/stray", [SHED]), ("puzzle", "audit/words/0/shown", "Rake"),
    ("puzzle", "audit/avoided", [{"word": "weed", **SHED}]),
    ("audit", "certified", "no"), ("audit", "certified", True), ("audit", "words", GONE), ("audit", "allowed", GONE),
    ("audit", "words/0/expected", GONE), ("audit", "words/0/expected", 0), ("audit", "words/0/copies/0/last", GONE),
    ("audit", "words/0/copies/0/row", 0), ("audit", "words/0/copies/0/last/column", "4"), ("audit", "missing", [""]),
    ("audit", "avoided/0/word", GONE), ("audit", "avoided/0/last", GONE), ("audit", "avoided/0/direction", "UP"), ("audit", "cut_short", 1),
    ("recipe", "words", GONE), ("recipe", "words/0", ""), ("recipe", "letters", "capital"),
    ("recipe", "digraphs", "keep"), ("recipe", "sharp_s", "ss"), ("recipe", "marks", "fold"), ("recipe", "finals", True), ("recipe", "grid", "15 x 15"),
    ("recipe", "grid", "0x15"), ("recipe", "grid", [15, 15]), ("recipe", "aspect", 0), ("recipe", "directions", []),
    ("recipe", "directions", ["up", "up"]), ("recipe", "seed", -1), ("recipe", "seed", 18446744073709551616),
    ("recipe", "seed", 1.5), ("recipe", "seed", "1"), ("recipe", "mask", ["OO", ".O"]), ("recipe", "effort", -1),
    ("recipe", "default_avoid_list", "none"), ("recipe", "nested", "outside"), ("recipe", "leftover", -1),
    ("recipe", "choices", 0), ("recipe", "pins/0/word", GONE), ("recipe", "avoid", "weed"), ("recipe", "locale", ""),
    ("recipe", "spacing", 21), ("recipe", "shares", "fair"), ("recipe", "shares", {"east": 1}), ("recipe", "shares", {"up": -1}),
    ("recipe", "backward", "2"), ("recipe", "earlier/words", GONE), ("recipe", "earlier/filler/0", None),
    ("recipe", "earlier/words/0/direction", GONE), ("recipe", "crossings/most", -1),
    ("recipe", "filler", "at random"), ("recipe", "letter_counts", ["A"]), ("recipe", "letter_counts/A", -1),
    ("recipe", "longest_run", -1), ("recipe", "look_alikes", True), ("recipe", "message_then", "words"),
    ("audit", "words/0/copies/0", {**SHED, "inside": ""}), ("choices", "puzzles", []),
    ("print", "pages", 0), ("print", "letter_pt", 7.9), ("print", "large_enough", GONE), ("print", "worksheets", []),
    ("print", "worksheets/0/seed", "7"), ("print", "worksheets/0/version", ""), ("print", "worksheets/1/title", GONE),
    ("choices", "puzzles/0/rows", GONE),
    ("order", "words", GONE), ("order", "words", []), ("order", "words", 7), ("order", "words/0", ""), ("order", "seed", -1),
    ("order", "grid", "9 x 9"), ("order", "surface", "back"), ("order", "rate", 2), ("order", "print", ["letter"]), ("order", "blank", ""),
    ("order", "colour", None), ("order", "print/page", None),
    ("result", "order", GONE), ("result", "order", 0), ("result", "format", "letterlode-audit"), ("result", "cells", []),
    ("result", "rating", {}), ("result", "folder", "../beds"), ("result", "notes", []), ("result", "name", ""), ("result", "cut", {}),
    ("cut", "surface", "back"), ("cut", "blank/width_in", GONE), ("cut", "blank/shape", GONE), ("cut", "artwork/top_mm", GONE),
    ("cut", "cell_mm", 0), ("cut", "cap_height_in", GONE), ("cut", "layers", []), ("cut", "layers/0/colour", "red"),
    ("cut", "layers/0/pieces", 0), ("cut", "layers/0/narrowest_stroke/piece", GONE), ("cut", "seconds", GONE), ("cut", "speed_mm_s", GONE),
    ("cut", "holds", True), ("cut", "findings", []), ("cut", "findings/0/kind", "thin"), ("cut", "findings/0/column", GONE),
    ("cut", "findings/0/other", {"piece": "C"}), ("cut", "findings/1/other", GONE), ("cut", "findings/0/asked_mm", GONE),
    ("cut", "findings/0/row", 0), ("cut", "findings/0/at", [40, 60]), ("cut", "ways_out", GONE), ("cut", "notes", "none"),
    ("cut", "plan/bed/width_mm", GONE), ("cut", "plan/least_loads", 0), ("cut", "plan/proved", "yes"), ("cut", "plan/film/0/rectangles", 0),
    ("cut", "plan/loads", []), ("cut", "plan/loads/0/films", []), ("cut", "plan/loads/0/films/0/name", GONE),
    ("cut", "plan/loads/0/films/0/left_mm", GONE), ("cut", "plan/loads/0/films/0/from/sheet", 0),
    ("cut", "plan/loads/0/films/0/from/turned", GONE), ("cut", "plan/loads/0/pieces/0/turned_degrees", 30),
    ("cut", "plan/loads/0/pieces/0/width_mm", GONE), ("cut", "plan/loads/0/witness", GONE),
    ("refusal", "reason", "hard"), ("refusal", "message", ""), ("refusal", "advice", GONE), ("refusal", "words", "x"),
    ("refusal", "line", 0), ("refusal", "position", 0), ("refusal", "source", 3),
    ("rating", "readability/0/unit", GONE), ("rating", "readability/0/source", ""), ("rating", "readability/0/value", "14.2"),
    ("rating", "difficulty/fixations", -1), ("rating", "difficulty/level", "hard"), ("rating", "readability/0/bound", "middle"),
    ("rating", "difficulty/words/0/found", "yes"), ("rating", "difficulty/parts", GONE), ("rating", "readability", {}),
]


def broken(kind, way, value):
    document = copy.deepcopy(RIGHT[kind])
    *path, last = (int(part) if part.isdigit() else part for part in way.split("/"))
    holder = document
    for part in path:
        holder = holder[part]
    if value is GONE:
        del holder[last]
    else:
        holder[last] = value
    return document


class SchemaTest(unittest.TestCase):
    def test_every_schema_is_a_schema(self):
        for kind in KINDS:
            with self.subTest(kind):
                jsonschema.Draft202012Validator.check_schema(SCHEMAS[kind])

    def test_right_documents_pass(self):
        for kind in KINDS:
            with self.subTest(kind):
                self.assertEqual(faults(kind, RIGHT[kind]), [])

    def test_each_optional_field_of_a_recipe_may_be_left_out(self):
        for field in RIGHT["recipe"]:
            if field != "words":
                with self.subTest(field):
                    self.assertEqual(faults("recipe", broken("recipe", field, GONE)), [])

    def test_a_mask_takes_the_place_of_a_shape(self):
        masked = broken("recipe", "shape", GONE)
        masked["mask"] = ["OO.", "OOO"]
        self.assertEqual(faults("recipe", masked), [])
        masked["mask"] = ["Ox."]
        self.assertNotEqual(faults("recipe", masked), [])

    def test_fields_may_be_added(self):
        for kind in KINDS:
            with self.subTest(kind):
                self.assertEqual(faults(kind, {**RIGHT[kind], "added later": [1, "two"]}), [])

    def test_documents_with_one_thing_broken_are_found(self):
        for kind, way, value in WRONG:
            with self.subTest(f"{kind}: {way} = {'nothing' if value is GONE else value}"):
                self.assertNotEqual(faults(kind, broken(kind, way, value)), [])

    def test_text_that_is_no_strict_json_is_found(self):
        for text in ('{"a": 1, "a": 2}', '{"a": NaN}', '{"a": 1,}', ""):
            with self.subTest(text), self.assertRaises(ValueError):
                read_strictly(text)


def judge(kind, names):
    wrong = 0
    for name in names:
        try:
            data = sys.stdin.buffer.read() if name == "-" else pathlib.Path(name).read_bytes()
            found = faults(kind, read_strictly(data.decode("utf-8")))
        except (OSError, ValueError) as error:
            found = [str(error)]
        for fault in found:
            print(f"{name}: {fault}")
        wrong += bool(found)
        if not found:
            print(f"{name}: a {kind} by its schema")
    return 1 if wrong else 0


if __name__ == "__main__":
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--kind", choices=KINDS)
    parser.add_argument("files", nargs="*", metavar="FILE")
    arguments = parser.parse_args()
    if bool(arguments.kind) != bool(arguments.files):
        parser.error("--kind and files go together")
    if arguments.kind:
        sys.exit(judge(arguments.kind, arguments.files))
    unittest.main(argv=sys.argv[:1])
