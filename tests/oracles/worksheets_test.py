#!/usr/bin/env python3
"""Printed pages as others read them: Poppler finds the very grid and the very list, embedded fonts, the sizes of paper; qpdf finds no
fault; rasterised pages hold a letter in every cell and nothing in the margins. Nothing here links the project."""
import json
import os
import pathlib
import re
import subprocess
import sys
import unittest

HERE = pathlib.Path(__file__).resolve().parent
sys.path.insert(0, str(HERE.parent))
from pictures import by_poppler
from program import InFolder, ROOT, cells_of, run

WORDS = ROOT / "data/samples/worksheet.txt"
PAPERS = {"a4": (595.276, 841.89), "letter": (612, 792)}  # points; ISO 216, ANSI/ASME Y14.1
MARKS = dict.fromkeys(map(ord, "\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069"))


def asked(program, *arguments):
    return subprocess.run([program, *map(str, arguments)], capture_output=True, text=True, check=True).stdout.translate(MARKS)


def page_text(pdf, page):
    return asked("pdftotext", "-layout", "-f", page, "-l", page, pdf, "-")


def words_of(pdf, page):
    """What Poppler takes for words, as (left, top, right, bottom, text) in points."""
    xml = asked("pdftotext", "-bbox", "-f", page, "-l", page, pdf, "-")
    return [(*map(float, box), text) for *box, text in re.findall(
        r'<word xMin="([0-9.]+)" yMin="([0-9.]+)" xMax="([0-9.]+)" yMax="([0-9.]+)">([^<]*)</word>', xml)]


def rows_of(puzzle):
    return [[cell for cell in row if cell] for row in puzzle["cells"]]


class Prints(InFolder):
    def puzzle(self, *arguments, words=WORDS):
        made = run("make", words, *arguments, "--json")
        self.assertEqual(made.returncode, 0, made.stderr)
        path = self.folder / "puzzle.json"
        path.write_bytes(made.stdout)
        return path, json.loads(made.stdout)

    def printed(self, *arguments, code=0, name="pages.pdf"):
        result = run("print", *arguments, "--out", self.folder / name, "--replace", cwd=self.folder)
        self.assertEqual(result.returncode, code, result.stderr.decode())
        return self.folder / name

    def sound(self, pdf):
        self.assertIn("No syntax or stream encoding errors", asked("qpdf", "--check", pdf))
        fonts = asked("pdffonts", pdf).splitlines()[2:]
        self.assertTrue(fonts)
        for line in fonts:
            self.assertRegex(line, r" yes yes yes ", "a font is not embedded, not a subset, or has no Unicode: " + line)


class AWorksheet(Prints):
    def test_holds_the_very_grid_and_list_and_its_key_the_places(self):
        path, puzzle = self.puzzle("--directions", "all")
        pdf = self.printed(path, "--heading", "Herb bed")
        self.sound(pdf)
        sheet = page_text(pdf, 1).split()
        letters = [letter for row in rows_of(puzzle) for letter in row]
        self.assertEqual(sheet[:2], ["Herb", "bed"])
        self.assertEqual(sheet[2:2 + len(letters)], letters)
        rest = " ".join(sheet[2 + len(letters):])
        shown = [word["shown"] for word in puzzle["words"]]
        for word in shown:
            self.assertIn(word, rest)
        self.assertEqual(len(rest.split()), sum(len(word.split()) for word in shown))
        key = page_text(pdf, 2)
        for word in puzzle["words"]:
            place = word["placed"]
            self.assertRegex(key, re.escape(word["shown"]) + rf" +{place['row']} +{place['column']} +{place['direction']}\b")
        for number, row in enumerate(rows_of(puzzle), 1):
            self.assertRegex(key, rf"(?m)^ *{number} +" + " *".join(map(re.escape, row)) + " *$")

    def test_lists_words_in_the_order_that_is_asked_for(self):
        path, puzzle = self.puzzle()
        shown = [word["shown"] for word in puzzle["words"]]
        orders = {"given": shown, "alphabetical": sorted(shown), "length": sorted(shown, key=len)}
        for order, words in orders.items():
            pdf = self.printed(path, "--list", order, "--key", "none")
            raw = asked("pdftotext", "-raw", pdf, "-").split()
            self.assertEqual([word for word in raw if word in shown], words, order)

    def test_is_as_large_as_its_paper_either_way_round(self):
        path, _ = self.puzzle()
        for paper, (width, height) in PAPERS.items():
            for landscape in (False, True):
                pdf = self.printed(path, "--page", paper, *(["--landscape"] if landscape else []))
                told = re.search(r"Page size: +([0-9.]+) x ([0-9.]+) pts", asked("pdfinfo", pdf))
                size = (height, width) if landscape else (width, height)
                self.assertAlmostEqual(float(told[1]), size[0], delta=0.01)
                self.assertAlmostEqual(float(told[2]), size[1], delta=0.01)

    def test_is_grey_unless_colours_are_asked_for_and_leaves_the_margins_white(self):
        path, _ = self.puzzle()
        for colours in (False, True):
            pdf = self.printed(path, "--grid-lines", "full", "--heading", "Herb bed", *(["--colours", "own"] if colours else []))
            for page in (1, 2):
                picture = by_poppler(pdf, 72, page)
                pixels = [row[at:at + 3] for row in picture.rows for at in range(0, len(row), 3)]
                self.assertEqual(any(max(pixel) - min(pixel) > 40 for pixel in pixels), colours and page == 2, f"page {page}")
                edge = 35  # points; the margin is of 36
                for number, row in enumerate(picture.rows):
                    outer = row if number < edge or number >= picture.height - edge else row[:3 * edge] + row[-3 * edge:]
                    self.assertEqual(set(outer), {255}, "a mark stands in the margin")

    def test_marks_of_the_key_show_where_words_stand(self):
        path, puzzle = self.puzzle()
        cells = {cell for word in puzzle["words"] for cell in cells_of(word)}
        for kind in ("rings", "lines", "greyed"):
            picture = by_poppler(self.printed(path, "--key", kind, name=f"{kind}.pdf"), 100, 2)
            inside, outside = [], []
            for place, (x, y, cell) in self.cell_boxes(self.folder / f"{kind}.pdf", puzzle).items():
                half = cell * 0.48
                patch = b"".join(row[3 * int(x - half):3 * int(x + half)] for row in picture.rows[int(y - half):int(y + half)])
                (inside if place in cells else outside).append(255 - sum(patch) / len(patch))
            self.assertGreater(sum(inside) / len(inside), 1.15 * sum(outside) / len(outside), kind)

    def cell_boxes(self, pdf, puzzle):
        """The middle of each cell of the key and its side, in pixels of 100 an inch, from the numbers at its edges."""
        numbers = [(x0 + x1, y0 + y1) for x0, y0, x1, y1, text in words_of(pdf, 2) if text.isdigit()]
        top = min(y for _, y in numbers)
        columns = sorted(x / 2 for x, y in numbers if y - top < 1)
        self.assertEqual(len(columns), puzzle["columns"])
        cell = (columns[-1] - columns[0]) / (puzzle["columns"] - 1)
        scale = 100 / 72
        return {(row, column): (columns[column - 1] * scale, (top / 2 + row * cell) * scale, cell * scale)
                for row in range(1, puzzle["rows"] + 1) for column in range(1, puzzle["columns"] + 1)}

    def test_large_print_is_of_18_points_as_poppler_measures_them(self):
        path, puzzle = self.puzzle("--grid", "15x15")
        pdf = self.printed(path, "--large-print", "--key", "none")
        xml = asked("pdftotext", "-bbox-layout", pdf, "-")
        heights = [float(y1) - float(y0) for y0, y1 in re.findall(r'<word [^>]*yMin="([0-9.]+)"[^>]*yMax="([0-9.]+)"', xml)]
        # Poppler's boxes reach from the font's ascender to its descender: 1.164 em of DejaVu Sans.
        self.assertGreaterEqual(min(heights) / 1.164, 17.99)

    def test_the_same_call_gives_the_same_bytes(self):
        path, _ = self.puzzle()
        one = self.printed(path, name="one.pdf").read_bytes()
        self.assertEqual(one, self.printed(path, name="two.pdf").read_bytes())
        dated = dict(os.environ, SOURCE_DATE_EPOCH="1700000000")
        self.assertEqual(run("print", path, "--out", self.folder / "dated.pdf", env=dated).returncode, 0)
        self.assertIn("2023", asked("pdfinfo", self.folder / "dated.pdf"))

    def test_other_scripts_stand_in_reading_order(self):
        words = self.write("words.txt", "שלום\nגינה\nפרח\nעץ חיים\n")
        path, puzzle = self.puzzle("--locale", "he", words=words)
        pdf = self.printed(path)
        self.sound(pdf)
        # Poppler sets blanks between letters that stand far apart; each line of text is in reading order.
        lines = [re.sub(r"\s", "", line) for line in page_text(pdf, 1).splitlines()]
        for word in puzzle["words"]:
            self.assertTrue(any(word["shown"].replace(" ", "") in line for line in lines), word["shown"])
        # The grid by where Poppler sees its letters: column 1 is leftmost in every script.
        letters = [(y, x, text) for x, y, _, _, text in words_of(pdf, 1) if len(text) == 1]
        heights = sorted({y for y, _, _ in letters})[:puzzle["rows"]]
        rows = [[text for y, x, text in sorted(letters) if y == height] for height in heights]
        self.assertEqual(rows, rows_of(puzzle))

    def test_welsh_digraphs_stay_whole(self):
        words = self.write("words.txt", "llongyfarchiadau\nchwarae\ndraig\nrhosyn\n")
        path, puzzle = self.puzzle("--locale", "cy", words=words)
        sheet = page_text(self.printed(path), 1).split()
        letters = [letter for row in rows_of(puzzle) for letter in row]
        self.assertEqual(sheet[:len(letters)], letters)


    def test_text_has_no_control_characters(self):
        path, _ = self.puzzle()
        result = run("print", path, "--text", "--heading", "a\x01b\x1b[31m", "--name-line=\x1b[31mX")
        self.assertEqual(result.returncode, 0)
        self.assertFalse(set(result.stdout) & set(range(32)) - {10, 12})

    def test_lines_of_a_key_leave_letters_readable_in_any_colour(self):
        path, _ = self.puzzle()
        picture = by_poppler(self.printed(path, "--key", "lines", "--colours", "black,navy"), 72, 2)
        # Bars as dark as asked for would have far more ink than the letters and rings of another key.
        dark = sum(value < 90 for row in picture.rows for value in row[::3])
        plain = by_poppler(self.printed(path, "--key", "rings"), 72, 2)
        self.assertLess(dark, 1.1 * sum(value < 90 for row in plain.rows for value in row[::3]))
        result = run("print", path, "--colours", "white", "--out", self.folder / "w.pdf")
        self.assertIn(b"hard to see", result.stderr)

    def test_without_a_heading_has_a_title_and_one_heading_for_the_key(self):
        path, _ = self.puzzle()
        pdf = self.printed(path)
        self.assertRegex(asked("pdfinfo", pdf), r"Title: +Worksheet\b")
        tree = asked("pdfinfo", "-struct-text", pdf)
        self.assertEqual(len(re.findall(r"\bH1\b", tree)), 1)
        self.assertRegex(tree, r'H1[^\n]*\n\s*"Answer key"')


class AClassSet(Prints):
    def test_of_thirty_pages_has_sheets_first_and_keys_after_each_marked(self):
        pdf = self.printed(WORDS, "--versions", 15, "--heading", "Beds")
        self.sound(pdf)
        self.assertIn("Pages:           30", asked("pdfinfo", pdf))
        pages = asked("pdftotext", "-layout", pdf, "-").split("\f")[:30]
        for number, page in enumerate(pages):
            mark = "ABCDEFGHIJKLMNO"[number % 15]
            self.assertRegex(page, rf"(?m)^ *Beds +{mark}$", f"page {number + 1}")
            self.assertEqual("Answer key" in page, number >= 15)
        # What each sheet shows is audited by the checker, as a grid that it has never seen.
        seen = set()
        listed = self.write("list.txt", WORDS.read_text("utf-8"))
        for number, page in enumerate(pages[:15]):
            rows = re.findall(r"(?m)^ *((?:\S ){0}\S(?: +\S){9,})$", page)
            grid = self.write("grid.txt", "\n".join(" ".join(row.split()) for row in rows) + "\n")
            checked = run("check", grid, "--words", listed)
            self.assertEqual(checked.returncode, 0, f"page {number + 1}: " + checked.stdout.decode())
            seen.add(grid.read_bytes())
        self.assertEqual(len(seen), 15)

    def test_versions_are_within_ten_percent_as_rate_tells_them(self):
        result = run("print", WORDS, "--versions", 6, "--out", self.folder / "class.pdf", "--json")
        report = json.loads(result.stdout)
        self.assertEqual([sheet["version"] for sheet in report["worksheets"]], list("ABCDEF"))
        fixations = []
        for sheet in report["worksheets"]:
            again = self.write("again.json", run("make", WORDS, "--seed", sheet["seed"], "--json").stdout)
            fixations.append(json.loads(run("rate", again, "--json").stdout)["difficulty"]["fixations"])
        self.assertLessEqual(max(fixations), 1.1 * min(fixations))

    def test_a_booklet_names_pages_that_are_there(self):
        herbs = ROOT / "data/samples/herb-bed.txt"
        tools = ROOT / "data/samples/tool-shed.txt"
        pdf = self.printed(WORDS, herbs, tools, "--heading", "Beds", "--heading", "Herbs & more", "--booklet", "Our garden")
        self.sound(pdf)
        pages = asked("pdftotext", "-layout", pdf, "-").split("\f")
        contents = dict(re.findall(r"(?m)^(\S.*?)[ .]+([0-9]+)$", pages[0]))
        self.assertEqual(list(contents), ["Beds", "Herbs & more", "Tool shed", "Answer keys"])
        for title, number in contents.items():
            page = pages[int(number) - 1]
            self.assertIn("Answer key" if title == "Answer keys" else title, page)
            self.assertRegex(page, rf"\n *{number}\s*$")
        report = json.loads(asked("qpdf", "--json", "--json-key=outlines", pdf))
        self.assertEqual([entry["title"] for entry in report["outlines"]], ["Beds", "Herbs & more", "Tool shed", "Answer keys"])
        self.assertEqual(len(report["outlines"][3]["kids"]), 3)


class AListThatLooksLikeAGrid(Prints):
    def test_is_told_apart_by_a_note(self):
        grid = ROOT / "data/samples/herb-bed-grid.txt"
        result = run("print", grid, "--out", self.folder / "x.pdf")
        self.assertIn(b"--words FILE", result.stderr)
        result = run("print", WORDS, "--out", self.folder / "y.pdf")
        self.assertNotIn(b"--words FILE", result.stderr)


class AHundredWords(Prints):
    def test_stand_on_one_page_or_a_second_one_is_announced(self):
        # Invented words of seven letters, all different.
        words = ["".join("BDGLMNPRSTVZ"[(i * step) % 12] + "AEIOU"[(i + step) % 5] for step in (1, 5, 7)) + "N" for i in range(100)]
        words = sorted(set(words))[:100]
        listed = self.write("words.txt", "\n".join(words) + "\n")
        for extra in ([], ["--page", "letter"], ["--landscape"], ["--large-print"]):
            result = run("print", listed, "--grid", "25x25", "--avoid", "none", "--out", self.folder / "pages.pdf", "--replace", "--key", "none", *extra)
            self.assertIn(result.returncode, (0, 1), result.stderr)
            pages = int(re.search(r"Pages: +([0-9]+)", asked("pdfinfo", self.folder / "pages.pdf"))[1])
            self.assertEqual(pages > 1, b"of its own" in result.stderr, result.stderr)
            found = asked("pdftotext", "-raw", self.folder / "pages.pdf", "-").split()
            for word in words:
                self.assertIn(word, found)


class RefusesWhatCannotBePrinted(Prints):
    def test_and_leaves_no_file(self):
        path, _ = self.puzzle()
        out = ["--out", self.folder / "pages.pdf"]
        cases = {
            ("--page", "a5", *out): "a4 or letter", ("--list", "random", *out): "alphabetical", ("--key", "boxes", *out): "rings",
            ("--grid-lines", "bold", *out): "light", ("--margin", "2mm", *out): "mm", ("--colours", "blurple", *out): "blurple",
            ("--font", "No such family", *out): "No such family", ("--versions", "27", *out): "26", ("--versions", "0", *out): "versions",
            ("--out", self.folder / "pages.doc"): ".pdf", ("--text", *out): ".txt", ("--grid", "9x9", *out): "finished",
            ("--heading", "a", "--heading", "b", *out): "headings", ("--versions", "1", *out): "2 to 26",
            ("--heading", "x" * 3000, *out): "too long", ("--key", "greyed", "--colours", "own", *out): "rings", ("--json",): "--out",
            ("--booklet", "x", "--out", self.folder / "x.html"): "paper", ("--page", "a4", "--text"): "paper",
        }
        before = self.names()
        for arguments, says in cases.items():
            with self.subTest(arguments=arguments):
                self.refused(2, "print", path, *arguments, says=[says])
                self.assertEqual(self.names(), before)
        self.refused(2, "print", self.folder / "none.json", *out, says=["none.json"])
        self.assertEqual(self.names(), before)

    def test_a_grid_with_a_stray_word_is_not_printed(self):
        samples = ROOT / "data/samples"
        result = run("print", samples / "herb-bed-grid-stray.txt", "--words", samples / "herb-bed.txt", "--out", self.folder / "x.pdf")
        self.assertEqual(result.returncode, 1)
        self.assertIn(b"not certified", result.stderr)
        self.assertEqual(self.names(), [])
        result = run("print", samples / "herb-bed-grid.txt", "--words", samples / "herb-bed.txt", "--out", self.folder / "x.pdf")
        self.assertEqual(result.returncode, 0, result.stderr)
        key = page_text(self.folder / "x.pdf", 2)
        self.assertRegex(key, r"Basil +3 +1 +right")


if __name__ == "__main__":
    unittest.main()
