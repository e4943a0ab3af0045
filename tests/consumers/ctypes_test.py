#!/usr/bin/env python3
"""ctypes_test.py HEADER LIBRARY ART_HEADER ART_LIBRARY: the C API from another language, which knows no more of it than the
headers say.

Reads the declarations out of letterlode.h and letterlode_art.h, calls every function with nothing but NULL and 0, and then
goes the whole way: a puzzle, its audit, a refusal, its artwork and worksheet. Each declaration must say who owns its result, on which threads it may run, and since when.
"""
import ctypes
import json
import pathlib
import re
import sys

TYPES = {
    "void": None,
    "int32_t": ctypes.c_int32,
    "int64_t": ctypes.c_int64,
    "size_t": ctypes.c_size_t,
    "uint64_t": ctypes.c_uint64,
    "double": ctypes.c_double,
    "lode_progress": ctypes.c_void_p,
    "const char*": ctypes.c_char_p,
}
BROKEN_CALL = 3


def declared(header: str):
    """Name, result, parameters (type, name) and the comment before each function."""
    function = re.compile(r"/\*((?:[^*]|\*(?!/))*)\*/\s*(?:typedef[^;]*;)?\s*LODE_API\s+([^;(]+?)(lode_\w+)\(([^)]*)\);")
    for comment, result, name, parameters in function.findall(header):
        pairs = []
        for parameter in parameters.split(","):
            parameter = " ".join(parameter.split())
            if parameter != "void":
                pairs.append(re.fullmatch(r"(.*[ *])(\w+)", parameter).groups())
        yield name, result.strip(), [(kind.strip(), called) for kind, called in pairs], comment


def ctype(kind: str):
    return TYPES[kind] if kind in TYPES else ctypes.c_void_p


class Libraries:
    """Both as one: a function by its name, wherever it lies."""


lode = Libraries()
constants = {}
for header_file, library_file in (sys.argv[1:3], sys.argv[3:5]):
    header = pathlib.Path(header_file).read_text("utf-8")
    constants.update((name, int(value)) for name, value in re.findall(r"\b(LODE_[A-Z_]+) = (\d+)", header))
    library = ctypes.CDLL(library_file)
    functions = list(declared(header))
    assert len(functions) == header.count("\nLODE_API "), "a declaration has no comment before it, or was not understood"
    for name, result, parameters, comment in functions:
        assert re.search(r"\[[^|\]]+\|[^|\]]+\|\s*0\.1\]\s*$", comment), f"{name} lacks [owner | threads | since]"
        call = getattr(library, name)
        setattr(lode, name, call)
        call.restype = ctype(result)
        call.argtypes = [ctype(kind) for kind, _ in parameters]
        outcome = call(*[None if ctype(kind) in (ctypes.c_void_p, ctypes.c_char_p) else 0 for kind, _ in parameters])
        if parameters and parameters[-1] == ("lode_error**", "error"):
            assert outcome == BROKEN_CALL, f"{name} took NULL and gave {outcome}"
        elif parameters and parameters[0][0].startswith("const lode_"):
            assert not outcome, f"{name} of NULL gave {outcome}"
    print(f"{len(functions)} functions of {pathlib.Path(header_file).name} took NULL and 0")


def made(name, *rest):
    """What a call hands out through its first parameter; its error raised."""
    handle, error = ctypes.c_void_p(), ctypes.c_void_p()
    status = getattr(lode, name)(ctypes.byref(handle), *rest, ctypes.byref(error))
    if status != constants["LODE_OK"]:
        message = lode.lode_error_message(error).decode()
        lode.lode_error_free(error)
        raise ValueError(message)
    return handle


def text_of(name, handle):
    text = ctypes.c_char_p()
    assert getattr(lode, name)(ctypes.byref(text), handle, None) == constants["LODE_OK"]
    return text.value.decode()


def tried(recipe):
    puzzle, refusal = ctypes.c_void_p(), ctypes.c_void_p()
    status = lode.lode_make(ctypes.byref(puzzle), ctypes.byref(refusal), recipe, None, None)
    return status, puzzle, refusal


recipe = made("lode_recipe_create")
for word in ("Kürbis", "Spinat", "Lauch"):
    assert lode.lode_recipe_add_word(recipe, word.encode(), None) == constants["LODE_OK"]
assert lode.lode_recipe_set_locale(recipe, b"de", None) == constants["LODE_OK"]
status, puzzle, refusal = tried(recipe)
assert status == constants["LODE_OK"] and puzzle and not refusal
document = json.loads(text_of("lode_puzzle_json", puzzle))
rows, columns = lode.lode_puzzle_rows(puzzle), lode.lode_puzzle_columns(puzzle)
cells = [[lode.lode_puzzle_cell(puzzle, row, column).decode() for column in range(columns)] for row in range(rows)]
assert cells == document["cells"]
assert [lode.lode_puzzle_word(puzzle, word).decode() for word in range(3)] == ["Kürbis", "Spinat", "Lauch"]
audit = made("lode_audit_puzzle", puzzle)
assert lode.lode_audit_is_certified(audit) == 1
assert json.loads(text_of("lode_audit_json", audit)) == document["audit"]

assert lode.lode_recipe_set_grid(recipe, 3, 3, None) == constants["LODE_OK"]
status, nothing, refusal = tried(recipe)
assert status == constants["LODE_REFUSED"] and refusal and not nothing
assert lode.lode_refusal_reason(refusal) == constants["LODE_REASON_UNUSABLE"]
assert "Kürbis" in lode.lode_refusal_message(refusal).decode()
try:
    made("lode_recipe_from_json", b'{"words": "none"}', b"recipe.json")
    raise AssertionError("a recipe without a list of words was taken")
except ValueError as error:
    assert "recipe.json" in str(error)

options = made("lode_artwork_options_create")
assert lode.lode_artwork_options_set_blank(options, b"8x10in", None) == constants["LODE_OK"]
assert lode.lode_artwork_options_set_surface(options, b"second", None) == constants["LODE_OK"]
assert lode.lode_artwork_options_set_margin(options, float("nan"), None) == constants["LODE_UNUSABLE"]
artwork = made("lode_draw", puzzle, options)
assert lode.lode_artwork_width_mm(artwork) == 203.2
layers = [lode.lode_artwork_layer_name(artwork, layer) for layer in range(lode.lode_artwork_layer_count(artwork))]
assert layers == [b"letters", b"bands"], layers
svg = made("lode_artwork_drawing", artwork, b"svg")
assert ctypes.string_at(lode.lode_bytes_data(svg), lode.lode_bytes_size(svg)).decode().startswith("<?xml")
worksheets = made("lode_worksheets_create")
assert lode.lode_worksheets_add(worksheets, puzzle, "Gemüse".encode(), None, None) == constants["LODE_OK"]
pages = made("lode_print", worksheets, None)
pdf = lode.lode_pages_pdf(pages)
assert ctypes.string_at(lode.lode_bytes_data(pdf), lode.lode_bytes_size(pdf)).startswith(b"%PDF-")
assert json.loads(text_of("lode_pages_json", pages))["pages"] == lode.lode_pages_count(pages) == 2
for kind, handle in (("pages", pages), ("worksheets", worksheets), ("bytes", svg), ("artwork", artwork),
                     ("artwork_options", options)):
    getattr(lode, f"lode_{kind}_free")(handle)

for kind, handle in (("audit", audit), ("puzzle", puzzle), ("refusal", refusal), ("recipe", recipe)):
    getattr(lode, f"lode_{kind}_free")(handle)
print("a puzzle made, read, audited, drawn and printed; a refusal understood")
