#!/usr/bin/env python3
"""Artwork as others see it: an XML parser, two renderers, a browser's own measures, and exact arithmetic on the curves.

Panels of several kinds are made once. Of each, librsvg and Chromium must make the same picture with a letter in every cell,
Chromium must measure what the curves measure, and what is mirrored or cut out must be exactly that."""
import json
import pathlib
import re
import subprocess
import sys
import tempfile
import unittest

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1]))
from browser import Browser
from drawings import around, read_svg, svg_of
from pictures import by_both, by_librsvg, differing, show
from program import SAMPLE, run

MM_AN_INCH = 25.4
DOTS = 144  # an inch: whole pixels for whole inches
MOST_DIFFERING = 0.0002  # of all pixels: what two renderers make of edges
COLOURS = ["--colour", "bands=gold,seagreen,steelblue"]
RICH = [*COLOURS, "--border", "double", "--registration", "--heading", "Wrenbarrow Garden", "--foot", "Sown in spring"]
PANELS = {  # each with its size in mm
    "sign": (203.2, 254, "--blank", "8x10in", "--surface", "second", "--heading", "Wrenbarrow Garden"),
    # With their marks 8 x 10 in: pages of whole pixels, so that one falls on the other flipped.
    "rich first": (183.2, 234, "--blank", "183.2x234mm", "--surface", "first", *RICH),
    "rich second": (183.2, 234, "--blank", "183.2x234mm", "--surface", "second", *RICH),
    "brush on an oval": (203.2, 254, "--blank", "oval 8x10in", "--surface", "first", "--band", "brush", "--border", "line"),
    "rings, inlaid": (203.2, 254, "--blank", "rounded 8x10in", "--surface", "first", "--band", "ring", "--inlay", "bands", *COLOURS,
                      "--border", "dotted"),
    "all inlaid": (203.2, 254, "--blank", "8x10in", "--surface", "second", "--inlay", "all", *COLOURS, "--border", "rounded",
                   "--heading", "Wrenbarrow Garden"),
}
SHAPES = {  # blanks that are no rectangles, each with a grid that fills them
    "heart": ("--shape", "heart", "--blank", "heart 8x8in"), "star": ("--shape", "star", "--blank", "star 12x12in"),
}


class Panel:
    def __init__(self, folder):
        self.folder = folder
        self.artwork = read_svg(folder / "artwork.svg")
        self.layers = [read_svg(file) for file in sorted((folder / "layers").glob("*.svg"))]
        self.text = (folder / "artwork.svg").read_text()

    def pixels(self):
        return [round(side / MM_AN_INCH * 96) for side in (self.artwork.width, self.artwork.height)]


def setUpModule():
    global scratch, puzzle, panels, browser
    temporary = tempfile.TemporaryDirectory()
    unittest.addModuleCleanup(temporary.cleanup)
    scratch = pathlib.Path(temporary.name)
    made = run("make", SAMPLE, "--blank", "8x10in", "--surface", "first", "--out", scratch / "puzzle")
    assert made.returncode == 0, made.stderr.decode()
    puzzle = json.loads((scratch / "puzzle/puzzle.json").read_text())
    panels = {name: cut(name, *options) for name, (_, _, *options) in PANELS.items()}
    browser = Browser().__enter__()
    unittest.addModuleCleanup(browser.__exit__, None, None, None)


def cut(name, *options):
    result = run("cut", scratch / "puzzle/puzzle.json", *options, "--out", scratch / name)
    # 1 is said of artwork, drawn all the same, that film of a millimetre would not hold.
    assert result.returncode in (0, 1) and (scratch / name / "artwork.svg").exists(), f"{name}: {result.stderr.decode()}"
    return Panel(scratch / name)


def inked_mm2(*drawings):
    """How much is inked where all pieces are filled as one path, so that what lies on the other counts once."""
    first = drawings[0]
    data = "".join(piece.path.data for drawing in drawings for group in drawing.groups.values() for piece in group.pieces)
    picture = by_librsvg(svg_of(first.width, first.height, f'<path d="{data}"/>'), 2 * DOTS)
    dark = sum(255 * picture.width - sum(row) for row in picture.channel(0)) / 255
    return dark * (first.width / picture.width) * (first.height / picture.height)


class Files(unittest.TestCase):
    def test_are_xml(self):
        files = [str(file) for panel in panels.values() for file in panel.folder.rglob("*.svg")]
        self.assertGreater(len(files), 3 * len(panels))
        said = subprocess.run(["xmllint", "--noout", "--nonet", *files], capture_output=True, text=True)
        self.assertEqual((said.returncode, said.stderr), (0, ""))

    def test_have_true_size(self):
        for name, (width, height, *options) in PANELS.items():
            out = 20 if "--registration" in options else 0  # marks stand beside the blank
            for drawing in (panels[name].artwork, *panels[name].layers):
                with self.subTest(drawing.file):
                    self.assertEqual((drawing.width, drawing.height), (width + out, height + out))

    def test_a_layer_is_what_the_artwork_shows_of_it(self):
        for name, panel in panels.items():
            self.assertEqual(len(panel.layers), len(panel.artwork.groups))
            for layer in panel.layers:
                (group,) = layer.groups.values()
                shown = panel.artwork.groups[group.name]
                with self.subTest(f"{name}: {group.name}"):
                    self.assertEqual(group.colour, shown.colour)
                    self.assertEqual([(p.name, p.path.data) for p in group.pieces], [(p.name, p.path.data) for p in shown.pieces])

    def test_every_contour_is_closed(self):
        for name, panel in panels.items():
            for group in panel.artwork.groups.values():
                for piece in group.pieces:
                    self.assertTrue(all(piece.path.closed) and piece.path.area > 0, f"{name}: {group.name}: {piece.name}")


class Measures(unittest.TestCase):
    MEASURE = """(() => { const svg = document.querySelector("svg"), page = svg.getBoundingClientRect();
        const box = (e) => { const b = e.getBBox(); return [b.x, b.y, b.x + b.width, b.y + b.height]; };
        return { size: [page.width, page.height], groups: Object.fromEntries([...svg.querySelectorAll("g")].map((g) =>
            [g.id, [box(g), ...[...g.querySelectorAll("path")].map(box)]])) }; })()"""

    def test_of_a_browser_are_those_of_the_curves(self):
        worst = 0
        for name, panel in panels.items():
            show(browser, re.sub(r"^<\?xml[^>]*>\s*", "", panel.text))
            found = browser.value(self.MEASURE)
            for side, wanted in zip(found["size"], (panel.artwork.width, panel.artwork.height)):
                self.assertAlmostEqual(side / 96 * MM_AN_INCH, wanted, delta=0.01, msg=name)  # of a CSS pixel 1/64 is kept
            self.assertEqual(set(found["groups"]), set(panel.artwork.groups), name)
            for group in panel.artwork.groups.values():
                whole, *boxes = found["groups"][group.name]
                self.assertEqual(len(boxes), len(group.pieces))
                of_pieces = [(piece.name, box, piece.path.box) for piece, box in zip(group.pieces, boxes)]
                for what, theirs, ours in [(group.name, whole, group.box), *of_pieces]:
                    far = ours.distance(type(ours)(*theirs))
                    worst = max(worst, far)
                    self.assertLessEqual(far, 0.002, f"{name}: {what}: the browser has {theirs}, the curves {ours}")
        print(f"boxes of the browser and of the curves differ by {worst:.6f} mm at the most", file=sys.stderr)


class Pictures(unittest.TestCase):
    def grid(self, panel):
        """By the letters' own places: the corner of the first cell and the pitch, fitted to their middles (least squares)."""
        mirrored = "already mirrored" in panel.artwork.description
        letters = {}
        for piece in panel.artwork.groups["letters"].pieces:
            found = re.fullmatch(r"(.+) at row ([0-9]+), column ([0-9]+)", piece.name)
            if found:
                letters[int(found[2]), int(found[3])] = (found[1], piece.path.box)
        fitted = []
        for axis in (0, 1):
            numbers = [place[1 - axis] * (-1 if mirrored and axis == 0 else 1) for place in letters]
            middles = [(b.left + b.right) / 2 if axis == 0 else (b.top + b.bottom) / 2 for _, b in letters.values()]
            n, m = sum(numbers) / len(numbers), sum(middles) / len(middles)
            pitch = sum((a - n) * (b - m) for a, b in zip(numbers, middles)) / sum((a - n) ** 2 for a in numbers)
            fitted.append((m - pitch * n, pitch))
        return letters, fitted, mirrored

    def judge_cells(self, name, panel, picture, by):
        letters, ((x0, dx), (y0, dy)), mirrored = self.grid(panel)
        wanted = {(r + 1, c + 1): letter for r, row in enumerate(puzzle["cells"]) for c, letter in enumerate(row) if letter}
        self.assertEqual({place: letter for place, (letter, _) in letters.items()}, wanted, name)
        self.assertAlmostEqual(dx, dy, delta=0.02 * dx, msg=f"{name}: cells are no squares")
        colour = bytes.fromhex(panel.artwork.groups["letters"].colour[1:])
        scale = picture.width / panel.artwork.width
        for row, column in wanted:
            x, y = x0 + dx * (-column if mirrored else column), y0 + dy * row
            left, right = round((x - dx / 2) * scale), round((x + dx / 2) * scale)
            inked = 0
            for line in picture.rows[round((y - dy / 2) * scale):round((y + dy / 2) * scale)]:
                inked += line.count(colour, 3 * left, 3 * right)
            # The least letter is an I: a stroke of about a millimetre.
            self.assertGreater(inked / scale ** 2, 1.5, f"{name}: {by} shows no letter at row {row}, column {column}")

    def test_of_two_renderers_are_one_and_hold_every_letter(self):
        for name, panel in panels.items():
            with self.subTest(name):
                ours, theirs = by_both(browser, panel.folder / "artwork.svg", *panel.pixels(), DOTS)
                share = differing(ours, theirs)
                print(f"{name}: {100 * share:.4f} percent of pixels differ between librsvg and Chromium", file=sys.stderr)
                self.assertLess(share, MOST_DIFFERING, name)
                for by, picture in (("librsvg", ours), ("Chromium", theirs)):
                    self.judge_cells(name, panel, picture, by)

    def test_second_surface_is_the_first_one_flipped(self):
        one, other = (by_librsvg(panels[name].folder / "artwork.svg", DOTS) for name in ("rich first", "rich second"))
        self.assertGreater(differing(one, other), 0.05, "the second surface is not mirrored at all")
        share = differing(one, other.flipped())
        print(f"{100 * share:.4f} percent of pixels differ between the first surface and the second one flipped", file=sys.stderr)
        self.assertLess(share, MOST_DIFFERING)


class Inlay(unittest.TestCase):
    def overlaps(self, drawing):
        """Pixels that more than one layer covers: each covers with half its strength, so that half is the most of one."""
        layers = ["".join(piece.path.data for piece in group.pieces) for group in drawing.groups.values()]
        body = "".join(f'<path d="{data}" opacity="0.5"/>' for data in layers)
        picture = by_librsvg(svg_of(drawing.width, drawing.height, body), 2 * DOTS)
        return sum(sum(value < 127 - 13 for value in row) for row in picture.channel(0))  # a tenth of a pixel is the renderer's

    def test_no_two_layers_share_a_pixel(self):
        self.assertEqual(self.overlaps(panels["all inlaid"].artwork), 0)
        self.assertGreater(self.overlaps(panels["sign"].artwork), 10_000, "this check sees nothing")

    def covered(self, drawing):
        """The area in mm2 that bands cover together, by a renderer: the mean of its greys."""
        body = "".join(f'<path d="{piece.path.data}"/>' for group in drawing.groups.values() if group.name.startswith("bands")
                       for piece in group.pieces)
        rows = by_librsvg(svg_of(drawing.width, drawing.height, body), 4 * DOTS).channel(0)
        return sum(255 * len(row) - sum(row) for row in rows) / 255 * (25.4 / (4 * DOTS)) ** 2

    def test_bands_cut_out_of_each_other_cover_what_they_cover_as_they_overlap(self):
        size = ["--blank", "8x10in", "--surface", "first", *COLOURS]
        for kind in ("capsule", "ring", "brush"):
            with self.subTest(kind):
                over = cut(f"{kind}, one on another", *size, "--band", kind).artwork
                inlaid = cut(f"{kind}, inlaid", *size, "--band", kind, "--inlay", "bands").artwork
                covered = self.covered(over)
                area = sum(group.area for group in inlaid.groups.values() if group.name.startswith("bands"))
                print(f"{kind}: overlapping {covered:.1f} mm2, inlaid {area:.1f} mm2", file=sys.stderr)
                self.assertAlmostEqual(area, covered, delta=2e-4 * covered)
                self.assertGreater(sum(group.area for group in over.groups.values() if group.name.startswith("bands")), 1.001 * covered)

    def test_letters_cut_out_of_bands_leave_nothing_and_take_nothing(self):
        size = ["--blank", "8x10in", "--surface", "first"]
        plain = cut("laid over", *size).artwork
        inlaid = cut("cut out", *size, "--inlay", "all").artwork
        self.assertEqual([p.path.data for p in plain.groups["letters"].pieces], [p.path.data for p in inlaid.groups["letters"].pieces])
        union = inked_mm2(plain)
        layers = sum(group.area for group in inlaid.groups.values())
        print(f"all layers cover {union:.2f} mm2, and inlaid ones hold {layers:.2f} mm2", file=sys.stderr)
        self.assertAlmostEqual(union, layers, delta=5e-4 * union)
        self.assertGreater(sum(group.area for group in plain.groups.values()) - union, 500, "no letter lies on a band")


class Shapes(unittest.TestCase):
    def test_other_blanks_hold_their_artwork(self):
        for name, options in SHAPES.items():
            with self.subTest(name):
                made = run("make", SAMPLE, *options, "--surface", "second", "--border", "line", "--out", scratch / name)
                self.assertIn(made.returncode, (0, 1), made.stderr.decode())
                panel = Panel(scratch / name)
                box = around(group.box for group in panel.artwork.groups.values())
                self.assertTrue(0 <= box.left and 0 <= box.top and box.right <= panel.artwork.width and box.bottom <= panel.artwork.height,
                                f"{name}: {box} leaves the blank")
                share = differing(*by_both(browser, panel.folder / "artwork.svg", *panel.pixels(), DOTS))
                print(f"{name}: {100 * share:.4f} percent of pixels differ between librsvg and Chromium", file=sys.stderr)
                self.assertLess(share, 0.001)


if __name__ == "__main__":
    unittest.main()
