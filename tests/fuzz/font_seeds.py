#!/usr/bin/env python3
"""font_seeds.py FOLDER: writes the fonts from which font_fuzz starts: small ones of our own, one for each kind of outline and
table that a font file may have. Needs fontTools (package python3-fonttools); the fonts lie in corpus/font, so that tests do not."""
import pathlib
import sys

from fontTools.feaLib.builder import addOpenTypeFeaturesFromString
from fontTools.fontBuilder import FontBuilder
from fontTools.pens.t2CharStringPen import T2CharStringPen
from fontTools.pens.ttGlyphPen import TTGlyphPen
from fontTools.ttLib.tables.TupleVariation import TupleVariation

CHARACTERS = {ord("H"): "H", ord("A"): "A", ord("f"): "f", ord("i"): "i", 0x301: "acute", ord("\u00c1"): "Aacute",
              0x627: "alef", 0x644: "lam"}
GLYPHS = [".notdef", "H", "A", "f", "i", "acute", "Aacute", "alef", "lam", "lam.init", "f_i"]
FEATURES = """
languagesystem DFLT dflt; languagesystem latn dflt; languagesystem arab dflt;
markClass acute <anchor 150 500> @above;
feature liga { sub f i by f_i; } liga;
feature init { script arab; sub lam by lam.init; } init;
feature kern { pos A H -40; } kern;
feature mark { pos base A <anchor 300 700> mark @above; } mark;
"""


def limb(pen, left, bottom, right, top):
    pen.moveTo((left, bottom))
    for point in ((left, top), (right, top), (right, bottom)):
        pen.lineTo(point)
    pen.closePath()


def draw(pen, glyph, cubic):
    if glyph == "H":  # strokes that overlap
        limb(pen, 50, 0, 150, 700), limb(pen, 350, 0, 450, 700), limb(pen, 50, 300, 450, 400)
    elif glyph == "acute":
        limb(pen, 100, 500, 200, 600)
    elif glyph in ("lam", "lam.init", "alef"):
        limb(pen, 0, 0, 100, 700), limb(pen, 0, 0, 500 if glyph == "lam" else 300, 80)
    else:
        pen.moveTo((50, 0))
        if cubic:
            pen.curveTo((50, 400), (200, 700), (300, 700)), pen.curveTo((420, 700), (550, 400), (550, 0))
        else:
            pen.qCurveTo((50, 700), (300, 700)), pen.qCurveTo((550, 700), (550, 0))
        pen.closePath()
        pen.moveTo((200, 100)), pen.lineTo((400, 100)), pen.lineTo((300, 300)), pen.closePath()  # a counter


def built(cubic, features, varies=False):
    builder = FontBuilder(1000, isTTF=not cubic)
    builder.setupGlyphOrder(GLYPHS)
    builder.setupCharacterMap(CHARACTERS)
    if cubic:
        strings = {}
        for glyph in GLYPHS:
            pen = T2CharStringPen(600, None)
            draw(pen, glyph, True)
            strings[glyph] = pen.getCharString()
        builder.setupCFF("Wrenbarrow-Seed", {"FullName": "Wrenbarrow Seed"}, strings, {})
    else:
        glyphs = {}
        for glyph in GLYPHS:
            pen = TTGlyphPen(glyphs)
            if glyph == "Aacute":
                pen.addComponent("A", (1, 0, 0, 1, 0, 0)), pen.addComponent("acute", (0.5, 0.1, -0.1, 0.5, 150, 200))
            else:
                draw(pen, glyph, False)
            glyphs[glyph] = pen.glyph()
        builder.setupGlyf(glyphs)
    builder.setupHorizontalMetrics({glyph: (0 if glyph == "acute" else 600, 0) for glyph in GLYPHS})
    builder.setupHorizontalHeader(ascent=800, descent=-200)
    builder.setupNameTable({"familyName": "Wrenbarrow Seed", "styleName": "Regular"})
    builder.setupOS2(sCapHeight=700, version=4)
    builder.setupPost(keepGlyphNames=False)
    if varies:
        builder.setupFvar([("wght", 100, 400, 900, "Weight")], [{"location": {"wght": 900}, "stylename": "Bold"}])
        builder.setupGvar({"A": [TupleVariation({"wght": (0, 1, 1)}, [(20, 0)] * 12)]})
    if features:
        addOpenTypeFeaturesFromString(builder.font, FEATURES)
    builder.font.recalcTimestamp = False
    builder.font["head"].created = builder.font["head"].modified = 0
    return builder


if __name__ == "__main__":
    folder = pathlib.Path(sys.argv[1])
    for name, seed in {"quadratic": built(False, False), "shaped": built(False, True), "cubic": built(True, True),
                       "variable": built(False, False, varies=True)}.items():
        seed.save(folder / name)
