#!/usr/bin/env python3
"""Loads as a cutter gets them: read from their SVG, rendered by librsvg, and held against the layers and against what Poppler
reads in the job sheet. Everything that a layer holds must be found again, once, turned but never mirrored, on film of its
colour, inside the bed, and clear of everything else."""
import collections
import functools
import math
import pathlib
import re
import subprocess
import sys
import tempfile
import unittest

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1]))
from drawings import Box, contour_area, read_svg, svg_of
from pictures import by_librsvg
from program import SAMPLE, run

DOTS = 150
EDGE, MARGIN, GAP = 5, 5, 3  # mm: of the bed (asked for below), of film about its pieces, between pieces (common practice)
TENTH = 0.0501  # the sheet rounds to a tenth of a millimetre
COLOURS = ["--colour", "bands=gold,seagreen,steelblue"]
BASIC = ["--heading", "Wrenbarrow Garden", "--bed-edge", f"{EDGE}mm"]
WORK = {  # with the size of the bed in mm
    "one load": (304.8, 304.8, "--surface", "second", *COLOURS, "--bed", "12x12in"),
    "first": (304.8, 304.8, "--surface", "first", *COLOURS, "--bed", "12x12in"),
    "inlaid, with marks": (304.8, 304.8, "--surface", "second", *COLOURS, "--inlay", "all", "--registration", "--border", "double",
                           "--weeding-lines", "--bed", "12x12in"),
    "small bed": (152.4, 152.4, "--surface", "second", "--bed", "6x6in"),
    "small bed, first": (152.4, 152.4, "--surface", "first", "--weeding-lines", "--bed", "6x6in"),
    "roll": (200, None, "--surface", "second", *COLOURS, "--bed", "200mm"),
    "scraps": (304.8, 304.8, "--surface", "second", *COLOURS, "--bed", "12x12in", "--film", "gold=6x9in", "--film", "seagreen=7x7in",
               "--film", "steelblue=8x5in"),
}
SCRAPS = {"#ffd700": (6 * 25.4, 9 * 25.4), "#2e8b57": (7 * 25.4, 7 * 25.4), "#4682b4": (8 * 25.4, 5 * 25.4)}


class Made:
    def __init__(self, folder):
        self.layers = [read_svg(file) for file in sorted((folder / "layers").glob("*.svg"))]
        number = lambda file: int(re.search(r"[0-9]+", file.name)[0])
        self.loads = [read_svg(file) for file in sorted((folder / "loads").glob("*.svg"), key=number)]
        text = subprocess.run(["pdftotext", "-raw", folder / "job-sheet.pdf", "-"], capture_output=True, text=True, check=True).stdout
        self.sheet = " ".join(text.split())
        self.films = films_of(self.sheet)


def films_of(sheet):
    """(load, colour, box) of each film that the job sheet tells of: sizes and colours stand in its table, places under the loads."""
    number = r"([0-9.]+)"
    table = sheet[sheet.index("Length of cut"):sheet.index("Order of application")]
    colours = {}
    for row in re.split(r"(?=#[0-9a-f]{6})", table)[1:]:
        for names, wide, high in re.findall(rf"((?:[0-9]+[A-Z]+(?:, )?)+): {number} x {number} mm", row):
            for name in names.split(", "):
                colours[name] = (row[:7], float(wide), float(high))
    films = []
    parts = re.split(r"Load ([0-9]+): ", table)
    for load, part in zip(parts[1::2], parts[2::2]):
        places = re.findall(rf"\b([A-Z]+) {number} x {number} mm \([^)]*\), {number} mm right, {number} mm down", part)
        for letter, *sizes in places:
            wide, high, right, down = map(float, sizes)
            colour, *size = colours.pop(load + letter)
            assert size == [wide, high], f"film {letter} of load {load} has two sizes: {size} and {[wide, high]}"
            films.append((int(load), colour, Box(right, down, right + wide, down + high)))
    assert not colours, f"films of the table that are in no load: {colours}"
    return films


def setUpModule():
    global scratch, made
    temporary = tempfile.TemporaryDirectory()
    unittest.addModuleCleanup(temporary.cleanup)
    scratch = pathlib.Path(temporary.name)
    result = run("make", SAMPLE, "--blank", "8x10in", "--surface", "first", "--out", scratch / "puzzle")
    assert result.returncode == 0, result.stderr.decode()
    made = {}
    for name, (_, _, *options) in WORK.items():
        result = cut(name, *options)
        # 1 is said of artwork, drawn all the same, that film of a millimetre would not hold.
        assert result.returncode in (0, 1) and (scratch / name / "loads").exists(), f"{name}: {result.stderr.decode()}"
        made[name] = Made(scratch / name)


def cut(name, *options):
    return run("cut", scratch / "puzzle/puzzle.json", "--blank", "8x10in", *BASIC, *options, "--out", scratch / name)


def points(path):
    """Every point of each contour, controls too, as complex numbers."""
    return [[complex(*p) for segment in contour for p in segment[1:]] for contour in path.contours]


def is_mark(contour):
    """Half a diamond where a layer was parted: three straight lines, which no letter and no band is."""
    return len(contour) == 3 and all(len(segment) == 2 for segment in contour)


def turned_by(before, after):
    """By which complex factor one outline is the other; None where it is not that outline turned."""
    steps = [[b - a for a, b in zip(c, c[1:] + c[:1])] for c in before], [[b - a for a, b in zip(c, c[1:] + c[:1])] for c in after]
    if [len(c) for c in steps[0]] != [len(c) for c in steps[1]]:
        return None
    flat = [(a, b) for one, other in zip(*steps) for a, b in zip(one, other)]
    longest = max(flat, key=lambda pair: abs(pair[0]))
    factor = longest[1] / longest[0]
    return factor if all(abs(a * factor - b) < 1e-3 for a, b in flat) else None


def half_covered(width, height, groups):
    """Pixels, and the first of them in mm, that more than one of the groups of markup covers, and how many one covers."""
    body = "".join(f'<g opacity="0.5">{group}</g>' for group in groups)
    picture = by_librsvg(svg_of(width, height, body), DOTS)
    rows = picture.channel(0)
    twice = [(x, y) for y, row in enumerate(rows) if min(row) < 114 for x, value in enumerate(row) if value < 114]
    scale = picture.width / width
    return len(twice), [round(at / scale, 1) for at in (twice or [(0, 0)])[0]], sum(picture.width - row.count(255) for row in rows)


def of_each(judge):
    """A test that is made for every work, and goes on with the next where one fails."""

    @functools.wraps(judge)
    def test(self):
        for name, work in made.items():
            with self.subTest(name):
                judge(self, name, work)

    return test


class Everything(unittest.TestCase):
    @of_each
    def test_of_every_layer_is_found_again(self, name, work):
        worst = 0
        for layer in work.layers:
            (group,) = layer.groups.values()
            lying = [piece for load in work.loads if group.name in load.groups for piece in load.groups[group.name].pieces]
            # Bands that are carried one by one have no use for marks, and take none with them.
            whole = any(re.fullmatch(re.escape(group.name) + r"(, part [0-9]+ of [0-9]+)?", piece.name) for piece in lying)
            wanted = sorted(contour_area(c) for p in group.pieces for c in p.path.contours if whole or "registration" not in p.name)
            found = sorted(contour_area(c) for p in lying for c in p.path.contours if not is_mark(c))
            self.assertEqual(len(wanted), len(found), f"{name}: {group.name}: outlines in the layer, and in the loads")
            for a, b in zip(wanted, found):
                self.assertAlmostEqual(a, b, delta=0.005 + 1e-4 * abs(a), msg=f"{name}: {group.name}: an outline's area")
            worst = max(worst, abs(sum(found) / sum(wanted) - 1))
            self.assertLess(worst, 1e-4, f"{name}: {group.name}: {sum(wanted)} mm2 in the layer, {sum(found)} in the loads")
        print(f"{name}: {len(work.loads)} loads, areas differ by {worst:.1e} at the most", file=sys.stderr)

    @of_each
    def test_is_turned_by_eighths_and_never_mirrored(self, name, work):
        compared = 0
        for layer in work.layers:
            (group,) = layer.groups.values()
            outlines = {piece.name: points(piece.path) for piece in group.pieces}
            outlines[group.name] = [contour for piece in group.pieces for contour in points(piece.path)]
            for load in work.loads:
                for piece in load.groups[group.name].pieces if group.name in load.groups else []:
                    if ", part " in piece.name and piece.name not in outlines:
                        continue  # judged by its outlines above, and below as a part
                    factor = turned_by(outlines[piece.name], points(piece.path))
                    self.assertIsNotNone(factor, f"{name}: {piece.name} is another shape in {load.title} than in its layer")
                    eighths = math.degrees(math.atan2(factor.imag, factor.real)) / 45
                    self.assertAlmostEqual(eighths, round(eighths), delta=1e-4, msg=f"{name}: {piece.name} is turned by {eighths} eighths")
                    compared += 1
        self.assertGreater(compared, 0)

    @of_each
    def test_lies_inside_bed_and_film(self, name, work):
        width, height, *_ = WORK[name]
        for number, load in enumerate(work.loads, 1):
            self.assertEqual(load.width, width)
            if height:
                self.assertEqual(load.height, height)
            films = [(colour, box) for where, colour, box in work.films if where == number]
            self.assertTrue(films, f"{name}: the job sheet has no film for load {number}")
            for _, film in films:
                self.assertTrue(EDGE - TENTH <= film.left and EDGE - TENTH <= film.top and film.right <= load.width - EDGE + 2 * TENTH
                                and film.bottom <= load.height - EDGE + 2 * TENTH, f"{name}, load {number}: film {film} leaves the bed")
            for i, (_, one) in enumerate(films):
                for _, other in films[:i]:
                    self.assertFalse(one.left < other.right - 3 * TENTH and other.left < one.right - 3 * TENTH and
                                     one.top < other.bottom - 3 * TENTH and other.top < one.bottom - 3 * TENTH,
                                     f"{name}, load {number}: film lies on film: {one}, {other}")
            for group in load.groups.values():
                own = [film for colour, film in films if colour == group.colour]
                margin = 0 if group.name == "witness" else MARGIN
                for piece in group.pieces:
                    box = piece.path.box
                    self.assertTrue(any(box.left - film.left >= margin - TENTH and box.top - film.top >= margin - TENTH and
                                        film.right - box.right >= margin - 2 * TENTH and film.bottom - box.bottom >= margin - 2 * TENTH
                                        for film in own), f"{name}, load {number}: {piece.name} at {box} is not on its film: {own}")

    @of_each
    def test_keeps_clear_of_everything_else(self, name, work):
        for load in work.loads:
            pieces = [piece for group in load.groups.values() if group.name != "witness" for piece in group.pieces]
            for i, one in enumerate(pieces):
                for other in pieces[:i]:
                    a, b = one.path.box, other.path.box
                    apart = max(b.left - a.right, a.left - b.right, b.top - a.bottom, a.top - b.bottom)
                    self.assertGreaterEqual(apart, GAP - 0.001, f"{name}, {load.title}: {one.name} and {other.name}")
            # In pixels, and so by what is inked and not by boxes. Half a gap is drawn about each, and a millimetre about the witness.
            drawn = [f'<path d="{p.path.data}" stroke="black" stroke-width="{GAP - 0.4}" stroke-linejoin="round"/>' for p in pieces]
            inked = half_covered(load.width, load.height, drawn)
            self.assertEqual(inked[0], 0, f"{name}, {load.title}: pieces meet at {inked[1]} mm")
            self.assertGreater(inked[2], 1000, "this check sees nothing")
            witness = load.groups["witness"].pieces[0].path.data
            thin = "".join(f'<path d="{p.path.data}"/>' for p in pieces)
            wide = f'<path d="{witness}" stroke="black" stroke-width="2" stroke-linejoin="round"/>'
            inked = half_covered(load.width, load.height, [thin, wide])
            self.assertEqual(inked[0], 0, f"{name}, {load.title}: the witness meets a piece at {inked[1]} mm")

    @of_each
    def test_is_not_cut_by_the_lines_that_part_the_waste(self, name, work):
        for load in work.loads:
            lines = "".join(f'<path d="{line.data}" stroke="black" stroke-width="0.3"/>'
                            for group in load.groups.values() for line in group.lines)
            self.assertEqual(bool(lines), "--weeding-lines" in WORK[name], f"{name}, {load.title}: weeding lines")
            if not lines:
                continue
            for what in ("pieces", "the witness"):
                drawn = "".join(f'<path d="{piece.path.data}"/>' for group in load.groups.values()
                                if (group.name == "witness") == (what == "the witness") for piece in group.pieces)
                with self.subTest(what):
                    inked = half_covered(load.width, load.height, [lines, drawn])
                    self.assertEqual(inked[0], 0, f"{name}, {load.title}: a weeding line cuts {what} at {inked[1]} mm")


class Witness(unittest.TestCase):
    def test_stands_in_every_load_mirrored_for_the_second_surface_alone(self):
        for name, work in made.items():
            for load in work.loads:
                self.assertIn("witness", load.groups, f"{name}, {load.title}: there is no witness")
                self.assertEqual(len(load.groups["witness"].pieces), 1)
                picture = self.letter(load)
                seen, other = (picture, picture.flipped()) if "first" in name else (picture.flipped(), picture)
                self.assertTrue(self.reads(seen, "R"), f"{name}, {load.title}: the witness does not read right from the side that is seen")
                self.assertFalse(self.reads(other, "R"), f"{name}, {load.title}: the witness reads right from both sides")

    def letter(self, load):
        path = load.groups["witness"].pieces[0].path
        box = path.box
        view = (box.left - 3, box.top - 3, box.width + 6, box.height + 6)
        return by_librsvg(svg_of(view[2], view[3], f'<path d="{path.data}"/>', view), 150)

    def reads(self, picture, letter):
        """What an optical reader takes it for."""
        ppm = f"P6\n{picture.width} {picture.height}\n255\n".encode() + b"".join(picture.rows)
        said = subprocess.run(["tesseract", "-", "-", "--psm", "10", "-l", "eng"], input=ppm, capture_output=True).stdout.decode()
        return said.strip() == letter

    @of_each
    def test_is_told_by_the_sheet_as_it_is_cut(self, name, work):
        self.assertIn("witness", work.sheet)
        told = "it reads right on the bed" in work.sheet and "it lies backwards on the bed" not in work.sheet
        cut_so = self.reads(self.letter(work.loads[0]), "R")
        self.assertEqual(told, cut_so, f"{name}: the job sheet says {'that' if told else 'not that'} the witness reads right as it lies "
                         f"on the bed, and it {'does' if cut_so else 'is cut mirrored'}")


class Loads(unittest.TestCase):
    def test_are_shared_by_several_colours(self):
        colours = {group.colour for group in made["one load"].loads[0].groups.values()}
        self.assertGreaterEqual(len(colours), 3, "colours do not share a load")
        self.assertEqual(len(made["one load"].loads), 1)

    def test_part_what_the_bed_does_not_hold(self):
        for name in ("small bed", "small bed, first"):
            names = collections.Counter(piece.name for load in made[name].loads for group in load.groups.values() for piece in group.pieces
                                        if ", part " in piece.name)
            counts = {part.split(", part ")[0]: int(part.rsplit(" ", 1)[1]) for part in names}
            self.assertIn("letters", counts)
            self.assertTrue(all(count >= 2 for count in counts.values()), counts)
            self.assertEqual(names, collections.Counter(f"{layer}, part {i} of {count}" for layer, count in counts.items()
                                                        for i in range(1, count + 1)))
            halves = [sorted(map(abs, map(contour_area, filter(is_mark, piece.path.contours)))) for load in made[name].loads
                      for group in load.groups.values() for piece in group.pieces if ", part " in piece.name]
            self.assertTrue(all(halves), "a part has no marks to be laid by")
            self.assertEqual(sum(map(len, halves)) % 2, 0, "a half of a mark has no other half")

    def test_are_refused_where_a_letter_is_larger_than_the_bed(self):
        result = cut("refused", "--surface", "first", "--bed", "20x20mm")
        self.assertEqual(result.returncode, 1)
        self.assertIn("bed", result.stderr.decode())
        self.assertFalse((scratch / "refused").exists())

    def test_take_no_more_of_a_scrap_than_there_is(self):
        used = collections.Counter()
        for _, colour, film in made["scraps"].films:
            if colour in SCRAPS:
                sides, scrap = sorted((film.width, film.height)), sorted(SCRAPS[colour])
                self.assertTrue(all(a <= b + TENTH for a, b in zip(sides, scrap)), f"film of {colour} is {sides} mm, the scrap {scrap}")
                used[colour] += film.width * film.height
        self.assertEqual(set(used), set(SCRAPS))
        for colour, area in used.items():
            self.assertLessEqual(area, math.prod(SCRAPS[colour]) * 1.01, f"more film of {colour} is used than there is")


if __name__ == "__main__":
    unittest.main()
