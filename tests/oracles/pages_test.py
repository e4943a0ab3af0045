#!/usr/bin/env python3
"""The pages that come with the artwork, as others read them: Poppler the PDF, ezdxf the DXF (dxf_judge.py), an HTML parser and
Chromium the proof page. What they tell must be what the puzzle and the layers hold."""
import html.parser
import json
import pathlib
import re
import subprocess
import sys
import tempfile
import unittest

import ezdxf
import ezdxf.bbox

HERE = pathlib.Path(__file__).resolve().parent
sys.path.insert(0, str(HERE.parent))
from browser import Browser
from drawings import read_svg
from pictures import by_librsvg, by_poppler, differing
from program import SAMPLE, run

MM_A_POINT = 25.4 / 72
PAPERS = {"a4": (210, 297), "letter": (215.9, 279.4)}  # ISO 216; ANSI/ASME Y14.1
COLOURS = ["--colour", "bands=gold,seagreen,steelblue"]
HEADING = "Wrenbarrow Garden"
WORK = {  # with the paper
    "second": ("a4", "--blank", "8x10in", "--surface", "second", "--border", "line", "--dxf", "--guide"),
    "first": ("letter", "--blank", "8x10in", "--surface", "first", "--inlay", "all", *COLOURS, "--dxf", "--guide",
              "--foot", "Sown in spring"),
    "loads": ("letter", "--blank", "8x10in", "--surface", "second", *COLOURS, "--bed", "12x12in", "--weeding-lines", "--dxf",
              "--registration", "--speed", "30mm"),
    "large": ("a4", "--blank", "18x24in", "--surface", "first", "--guide", "--border", "double"),
    "small": ("a4", "--blank", "5x7in", "--surface", "second", "--guide"),
    "many loads": ("a4", "--blank", "8x10in", "--surface", "second", *COLOURS, "--bed", "6x6in"),
}


def asked_of_poppler(program, *arguments):
    return subprocess.run([program, *map(str, arguments)], capture_output=True, text=True, check=True).stdout


class Made:
    def __init__(self, name, folder):
        self.name, self.folder = name, folder
        self.second = WORK[name][WORK[name].index("--surface") + 1] == "second"
        self.paper = PAPERS[WORK[name][0]]
        self.layers = [read_svg(file) for file in sorted((folder / "layers").glob("*.svg"))]
        self.sheet = " ".join(asked_of_poppler("pdftotext", "-raw", folder / "job-sheet.pdf", "-").split())

    def pages(self, name):
        """The size of each page in mm."""
        count = int(re.search(r"^Pages: +([0-9]+)$", asked_of_poppler("pdfinfo", self.folder / name), re.M)[1])
        told = asked_of_poppler("pdfinfo", "-f", 1, "-l", count, self.folder / name)
        sizes = [tuple(float(side) * MM_A_POINT for side in sides) for sides in re.findall(r"size: +([0-9.]+) x ([0-9.]+) pts", told)]
        assert len(sizes) == count
        return sizes


def setUpModule():
    global scratch, puzzle, made, browser
    temporary = tempfile.TemporaryDirectory()
    unittest.addModuleCleanup(temporary.cleanup)
    scratch = pathlib.Path(temporary.name)
    result = run("make", SAMPLE, "--blank", "8x10in", "--surface", "first", "--out", scratch / "puzzle")
    assert result.returncode == 0, result.stderr.decode()
    puzzle = json.loads((scratch / "puzzle/puzzle.json").read_text())
    made = {}
    for name, (paper, *options) in WORK.items():
        result = run("cut", scratch / "puzzle/puzzle.json", "--heading", HEADING, "--paper", paper, *options, "--out", scratch / name)
        # 1 is said of artwork, drawn all the same, that film of a millimetre would not hold.
        assert result.returncode in (0, 1) and (scratch / name / "job-sheet.pdf").exists(), f"{name}: {result.stderr.decode()}"
        made[name] = Made(name, scratch / name)
    browser = Browser().__enter__()
    unittest.addModuleCleanup(browser.__exit__, None, None, None)


class Pages(unittest.TestCase):
    def is_size(self, page, wanted, what):
        for side, other in zip(page, wanted):
            self.assertAlmostEqual(side, other, delta=0.01, msg=f"{what}: {page} mm instead of {wanted}")  # pdfinfo tells six figures


class JobSheet(Pages):
    def test_has_two_pages_of_the_paper_at_the_most(self):
        for name, work in made.items():
            with self.subTest(name):
                pages = work.pages("job-sheet.pdf")
                self.assertLessEqual(len(pages), 2)
                for page in pages:
                    self.is_size(page, work.paper, name)

    def test_tells_the_whole_puzzle(self):
        for name, work in made.items():
            with self.subTest(name):
                self.assertIn(HEADING, work.sheet)
                self.assertIn(f"Seed {puzzle['recipe']['seed']} ", work.sheet)
                for word in puzzle["words"]:
                    place = word["placed"]
                    self.assertIn(f"{word['shown']} {place['row']} {place['column']} {place['direction']}", work.sheet)
                for row in puzzle["cells"]:
                    self.assertIn(" ".join(row), work.sheet, "a row of the grid is not to be read")

    def test_tells_every_film_and_its_pieces(self):
        for name, work in made.items():
            films = {}
            for layer in work.layers:
                for group in layer.groups.values():
                    films.setdefault(group.colour, []).append(group)
            table = work.sheet[work.sheet.index("What to cut from what"):work.sheet.index("Order of application")]
            for colour, groups in films.items():
                with self.subTest(f"{name}: {colour}"):
                    self.assertIn(colour, work.sheet)
                    row = re.search(rf"{colour} .*?in²\) ([0-9]+) ([0-9]+) ([0-9.]+) m \([^)]*\)(?: ([0-9.]+) (s|min))?", table)
                    self.assertIsNotNone(row, f"no row of the table tells of {colour}: {table}")
                    for group in groups:
                        self.assertIn(group.name, row[0])
                    paths = [piece.path for group in groups for piece in group.pieces if "registration" not in piece.name]
                    contours = [area for path in paths for area in path.areas]
                    counted = [sum(area > 0 for area in contours), sum(area < 0 for area in contours)]
                    self.assertEqual([int(row[1]), int(row[2])], counted, f"{name}: {row[0]}")
                    length = sum(path.length for path in paths)
                    self.assertAlmostEqual(float(row[3]), length / 1000, delta=0.0501, msg=f"{name}: {row[0]}")
                    if "--speed" in WORK[name]:
                        time = length / 30 / (60 if row[5] == "min" else 1)
                        self.assertAlmostEqual(float(row[4]), time, delta=0.51 if row[5] == "s" else 0.0501, msg=f"{name}: {row[0]}")

    def test_tells_how_large_each_layer_is(self):
        work = made["second"]  # without loads it tells the film that each layer's shapes need
        for layer in work.layers:
            for group in layer.groups.values():
                row = re.search(rf"{group.colour} .*?in²\)", work.sheet)[0]
                sizes = [tuple(map(float, size)) for size in re.findall(r"([0-9.]+) x ([0-9.]+) mm", row)]
                self.assertTrue(any(abs(w - group.box.width) < 0.0501 and abs(h - group.box.height) < 0.0501 for w, h in sizes),
                                f"{group.name} is {group.box.width:.3f} x {group.box.height:.3f} mm, and the sheet tells {sizes}")

    def test_says_do_not_mirror_again_of_the_second_surface_alone(self):
        for name, work in made.items():
            self.assertEqual("do not mirror again" in work.sheet, work.second, name)
            for layer in work.layers:
                self.assertEqual("do not mirror again" in layer.description, work.second, layer.file)


class LayerPdf(Pages):
    def test_has_true_size_and_nothing_but_shapes(self):
        for name, work in made.items():
            for svg in sorted(work.folder.rglob("*.svg")):
                pdf = svg.with_suffix(".pdf")
                drawing = read_svg(svg)
                (page,) = work.pages(pdf)
                self.is_size(page, (drawing.width, drawing.height), pdf)
                if name in ("second", "loads"):
                    self.assertEqual(len(asked_of_poppler("pdffonts", pdf).splitlines()), 2, f"{pdf} holds text")
                    self.assertEqual(len(asked_of_poppler("pdfimages", "-list", pdf).splitlines()), 2, f"{pdf} holds a bitmap")

    def test_shows_what_the_svg_shows(self):
        # Of inlaid artwork layer by layer: where shapes of two colours meet within a pixel, each renderer shows a seam of its own.
        inlaid = made["first"].folder / "layers"
        for pdf in (made["second"].folder / "artwork.pdf", *inlaid.glob("*-letters.pdf"), *inlaid.glob("*-bands-2.pdf")):
            # Averaged, since neither renderer is exact at edges, and Poppler makes them darker besides.
            share = differing(by_poppler(pdf, 384).halved().halved(), by_librsvg(pdf.with_suffix(".svg"), 192).halved())
            print(f"{pdf.name}: {100 * share:.4f} percent of its pixels differ from the SVG's", file=sys.stderr)
            self.assertLess(share, 0.0002, pdf)


class Guide(Pages):
    def text(self, work, page):
        return " ".join(asked_of_poppler("pdftotext", "-raw", "-f", page, "-l", page, work.folder / "guide.pdf", "-").split())

    def test_covers_the_blank_on_pages_of_the_paper(self):
        for name, work in made.items():
            if "--guide" not in WORK[name]:
                self.assertFalse((work.folder / "guide.pdf").exists())
                continue
            pages = work.pages("guide.pdf")
            upright = pages[0][0] < pages[0][1]
            for page in pages:
                self.is_size(page, work.paper if upright else work.paper[::-1], name)
            area = sum(w * h for w, h in pages)
            self.assertGreater(area, work.layers[0].width * work.layers[0].height, f"{name}: {len(pages)} pages cannot hold the blank")
            for number in range(1, len(pages) + 1):
                text = self.text(work, number)
                self.assertIn(HEADING, text)
                self.assertIn("100 percent", text)
                self.assertEqual("MIRRORED" in text, work.second, f"{name}: {text}")
                if len(pages) > 1:
                    self.assertIn(f"Page {number} of {len(pages)}", text)

    def test_has_a_ruler_of_true_size(self):
        for name in ("second", "large", "small"):
            picture = by_poppler(made[name].folder / "guide.pdf", 300)
            foot = picture.channel(0)[-round(14 / 25.4 * 300):]
            longest = max(len(run) for row in foot for run in re.findall(rb"[\x00-\xa0]+", row))
            self.assertAlmostEqual(longest / 300 * 25.4, 101.6, delta=0.3, msg=f"{name}: a ruler of 4 in")

    def test_shows_the_artwork_in_its_place(self):
        work = made["small"]
        self.assertEqual(len(work.pages("guide.pdf")), 1)
        dots = 254  # ten a millimetre
        guide = by_poppler(work.folder / "guide.pdf", dots)
        rows = guide.channel(0)
        width, height = (round(10 * side) for side in (work.layers[0].width, work.layers[0].height))
        # The blank lies in the middle, and its edge is the only line of that length.
        lines = [y for y, row in enumerate(rows) if any(abs(len(run) - width) < 12 for run in re.findall(rb"[\x00-\xd0]+", row))]
        self.assertTrue(lines, "the guide shows no edge of the blank")
        self.assertAlmostEqual(lines[-1] - lines[0], height, delta=8, msg="the guide's blank has another height")
        top = (lines[0] + lines[-1] + 1 - height) // 2
        (left,) = {m.start() for m in re.finditer(rb"[\x00-\xd0]+", rows[lines[0]]) if abs(m.end() - m.start() - width) < 12}
        art = by_librsvg(work.folder / "artwork.svg", dots)
        tinted = {}
        for side, picture in (("right", art), ("flipped", art.flipped())):
            inked = shown = 0
            for y in range(0, picture.height, 3):
                row = picture.rows[y]
                other = guide.rows[top + y]
                for x in range(0, picture.width, 3):
                    if min(row[3 * x:3 * x + 3]) < 200:
                        inked += 1
                        shown += min(other[3 * (left + x):3 * (left + x) + 3]) < 250
            tinted[side] = shown / inked
        print("of the artwork's ink the guide shows {right:.4f}, flipped {flipped:.4f}".format(**tinted), file=sys.stderr)
        self.assertGreater(tinted["right"], 0.99)
        self.assertLess(tinted["flipped"], 0.9, "this check sees nothing")


class Dxf(unittest.TestCase):
    def test_is_the_svg(self):
        for name in ("second", "first", "loads"):
            for folder in (made[name].folder, made[name].folder / "layers", *made[name].folder.glob("loads")):
                with self.subTest(folder):
                    judged = subprocess.run([sys.executable, HERE / "dxf_judge.py", folder], capture_output=True, text=True)
                    self.assertEqual(judged.returncode, 0, judged.stderr)

    def test_has_units_extents_and_layers(self):
        worst = 0
        for name in ("second", "first", "loads"):
            for file in sorted(made[name].folder.rglob("*.dxf")):
                document = ezdxf.readfile(file)
                drawing = read_svg(file.with_suffix(".svg"))
                self.assertEqual(document.units, ezdxf.units.MM, file)
                for group in drawing.groups.values():
                    shapes = document.modelspace().query(f"LWPOLYLINE[layer=='{group.name}']")
                    self.assertTrue(len(shapes) and all(shape.closed for shape in shapes), f"{file}: {group.name}")
                    low, high = ezdxf.bbox.extents(shapes)
                    ours = group.box
                    far = max(abs(low.x - ours.left), abs(high.x - ours.right), abs(drawing.height - high.y - ours.top),
                              abs(drawing.height - low.y - ours.bottom))
                    worst = max(worst, far)
                    self.assertLessEqual(far, 0.02, f"{file}: {group.name}")
        print(f"extents of DXF and SVG differ by {worst:.5f} mm at the most", file=sys.stderr)


class References(html.parser.HTMLParser):
    """Whatever in a page could be asked for elsewhere."""

    ATTRIBUTES = {"src", "href", "xlink:href", "srcset", "action", "data", "poster", "background", "formaction", "ping", "manifest"}

    def __init__(self):
        super().__init__()
        self.found, self.tags = [], set()

    def handle_starttag(self, tag, attributes):
        self.tags.add(tag)
        for name, value in attributes:
            if name in self.ATTRIBUTES and not (value or "").startswith(("#", "data:")):
                self.found.append(f"<{tag} {name}={value}>")
            if name == "style":
                self.handle_data(value or "")

    def handle_data(self, data):
        self.found += [m for m in re.findall(r"url\((?!['\"]?(?:#|data:))[^)]*\)", data)]
        self.found += re.findall(r"@import|\bfetch\(|XMLHttpRequest|WebSocket|EventSource|sendBeacon|\bimport\(|importScripts", data)


class ProofPage(unittest.TestCase):
    def test_refers_to_nothing_outside(self):
        for name, work in made.items():
            page = References()
            page.feed((work.folder / "proof.html").read_text())
            page.close()
            self.assertIn("svg", page.tags)
            self.assertEqual(page.found, [], name)

    def test_opens_without_a_complaint_and_tells_the_words(self):
        for name, work in made.items():
            with self.subTest(name):
                address = (work.folder / "proof.html").as_uri()
                browser.events.clear()
                browser.open(address)
                self.assertEqual(browser.faults(), [])
                self.assertEqual(set(browser.requests()), {address})
                self.assertEqual(browser.value("document.querySelector('h1').textContent"), HEADING)
                text = browser.value("document.body.textContent")
                for word in puzzle["words"]:
                    self.assertIn(word["shown"], text)


if __name__ == "__main__":
    unittest.main()
