#!/usr/bin/env python3
"""An optical reader reads the letters of a 15 x 15 grid in the default alphabet, as they are cut.

Each letter's outlines are taken out of the layer of letters, unmirrored, and set side by side as a line of text, row by row
and column by column, since a reader is made for lines of text and not for letters a cell apart."""
import collections
import difflib
import json
import pathlib
import re
import subprocess
import sys
import tempfile
import unittest

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1]))
from drawings import read_svg, svg_of
from program import SAMPLE, run

LEAST_READ = 0.995
LEAST_LETTERS = 450
SPACE, RIM = 0.22, 6  # of the height of capitals, between letters and about the line
CAPITAL_PX = 40


def line_of(letters, height):
    """Letters side by side on one base line, as SVG: outlines are taken as they are, and only moved."""
    body, x = "", RIM
    top = min(piece.path.box.top - middle for piece, middle in letters)
    for piece, middle in letters:
        box = piece.path.box
        body += f'<path transform="translate({x - box.left} {RIM - top - middle})" d="{piece.path.data}"/>'
        x += box.width + SPACE * height
    high = max(piece.path.box.bottom - middle for piece, middle in letters) - top + 2 * RIM
    return svg_of(x + RIM, high, body)


def read(svg, height):
    dots = str(CAPITAL_PX / height * 25.4)
    png = subprocess.run(["rsvg-convert", "--dpi-x", dots, "--dpi-y", dots, "--background-color", "white"], input=svg.encode(),
                         stdout=subprocess.PIPE, check=True).stdout
    said = subprocess.run(["tesseract", "-", "-", "--psm", "7", "--dpi", "300", "-l", "eng", "-c",
                           "tessedit_char_whitelist=ABCDEFGHIJKLMNOPQRSTUVWXYZ", "-c", "load_system_dawg=0", "-c", "load_freq_dawg=0"],
                          input=png, capture_output=True, check=True).stdout
    return "".join(said.decode().split())


def mistakes(right, said):
    """(what stands there, what was read) for each place where they differ."""
    return [(right[a:b], said[c:d]) for what, a, b, c, d in difflib.SequenceMatcher(None, right, said, autojunk=False).get_opcodes()
            if what != "equal"]


class Reading(unittest.TestCase):
    def test_gets_the_letters_right(self):
        asked = 0
        confused = collections.Counter()
        for seed in (1, 2):
            with tempfile.TemporaryDirectory() as folder:
                out = pathlib.Path(folder, "grid")
                made = run("make", "-", "--grid", "15x15", "--seed", seed, "--blank", "12x12in", "--surface", "first", "--out", out,
                           stdin=SAMPLE.read_bytes().replace("Jalapeño".encode(), b"Quince"))
                self.assertEqual(made.returncode, 0, made.stderr.decode())
                puzzle = json.loads((out / "puzzle.json").read_text())
                (file,) = (out / "layers").glob("*-letters.svg")
                grid = {}
                for piece in read_svg(file).groups["letters"].pieces:
                    letter, row, column = re.fullmatch(r"([A-Z]) at row ([0-9]+), column ([0-9]+)", piece.name).groups()
                    grid[int(row), int(column)] = letter, piece
            self.assertEqual({(r + 1, c + 1): letter for r, row in enumerate(puzzle["cells"]) for c, letter in enumerate(row)},
                             {place: letter for place, (letter, _) in grid.items()})
            base = {row: max(p.path.box.bottom for (r, _), (l, p) in grid.items() if r == row and l in "EHIKLMN") for row in range(1, 16)}
            height = max(p.path.box.height for l, p in grid.values() if l in "EHI")
            rows = [[(r, c) for c in range(1, 16)] for r in range(1, 16)]
            columns = [[(r, c) for r in range(1, 16)] for c in range(1, 16)]
            for line in rows + columns:
                right = "".join(grid[place][0] for place in line)
                said = read(line_of([(grid[place][1], base[place[0]]) for place in line], height), height)
                asked += len(right)
                confused.update(mistakes(right, said))
        # A letter that was read where none stands is a mistake too.
        wrong = sum(max(len(a), len(b)) * n for (a, b), n in confused.items())
        share = 1 - wrong / asked
        told = ", ".join(f"{a or 'nothing'} as {b or 'nothing'} ({n})" for (a, b), n in confused.most_common())
        print(f"{asked} letters, {wrong} mistakes: {100 * share:.2f} percent are read right. {told}", file=sys.stderr)
        self.assertGreaterEqual(asked, LEAST_LETTERS)
        self.assertGreaterEqual(share, LEAST_READ, "taken for others: " + told)


if __name__ == "__main__":
    unittest.main()
