#!/usr/bin/env python3
"""Worksheets as they are heard: the parts of each PDF are those of its puzzle, in the order of reading, and nothing is wrong with
the tree or its pages. Then the judge itself: each kind of damage is found."""
import json
import re
import subprocess
import sys
import unittest

import pikepdf

import tagged_pdf_judge
from tagged_pdf_judge import TaggedPdf

sys.path.insert(0, str(tagged_pdf_judge.__file__).rsplit("/", 2)[0])
from program import InFolder, ROOT, run

SAMPLES = ROOT / "data/samples"
# Invented names of plants in several words, longer than a column of large print.
COLOURS = ("Amber", "Silver", "Violet", "Copper", "Indigo")
LONG_NAMES = [f"{colour} {leaf} of the {place} bed" for colour in COLOURS for leaf in ("teasel", "bracken")
              for place in ("lower", "walled")]


class Printed(InFolder):
    def puzzle(self, words, *arguments, name="puzzle.json"):
        made = run("make", words, *arguments, "--json")
        self.assertEqual(made.returncode, 0, made.stderr)
        path = self.folder / name
        path.write_bytes(made.stdout)
        return path, json.loads(made.stdout)

    def printed(self, *arguments):
        path = self.folder / "pages.pdf"
        result = run("print", *arguments, "--list", "given", "--out", path, "--replace", "--json")
        self.assertEqual(result.returncode, 0, result.stderr.decode())
        return path, json.loads(result.stdout)

    def sound(self, path):
        pages = TaggedPdf(path)
        self.assertEqual(pages.faults, [])
        return pages

    def cells(self, table):
        return [[(cell.type, cell.text) for cell in row.parts] for row in table.parts]

    def is_sheet(self, part, puzzle, title, fields=()):
        """Fields to write on, the title, the grid row by row, the words."""
        self.assertEqual(part.type, "Sect")
        expected = ["P"] * len(fields) + ["H1", "Table", "L"]
        self.assertEqual([one.type for one in part.parts], expected)
        *lines, heading, grid, words = part.parts
        self.assertEqual([line.text for line in lines], list(fields))
        self.assertEqual(heading.text, title)
        self.assertEqual(self.cells(grid), [[("TD", cell or "") for cell in row] for row in puzzle["cells"]])
        self.assertEqual([[body.type for body in item.parts] for item in words.parts], [["LBody"]] * len(puzzle["words"]))
        self.assertEqual([item.text for item in words.parts], [word["shown"] for word in puzzle["words"]])

    def is_key(self, part, puzzle, title):
        """The title, the grid with its numbers, and a table of where each word stands."""
        self.assertEqual([one.type for one in part.parts], ["H1", "H2", "Table", "Table"])
        heading, subheading, grid, places = part.parts
        self.assertEqual([heading.text, subheading.text], [title, "Answer key"])
        numbers = [("TD", "")] + [("TH", str(column + 1)) for column in range(puzzle["columns"])]
        rows = [[("TH", str(number))] + [("TD", cell or "") for cell in row] for number, row in enumerate(puzzle["cells"], 1)]
        self.assertEqual(self.cells(grid), [numbers, *rows])
        self.has_scopes(grid)
        heads = [("TH", head) for head in ("Word", "Row", "Col.", "Direction")]
        words = [[("TH", word["shown"])] + [("TD", str(word["placed"][what])) for what in ("row", "column", "direction")]
                 for word in puzzle["words"]]
        self.assertEqual(self.cells(places), [heads, *words])
        self.has_scopes(places)

    def has_scopes(self, table):
        """14.8.5.7: those of the first row are for what is below them, the others for what is beside them."""
        for number, row in enumerate(table.parts):
            for cell in row.parts:
                if cell.type == "TH":
                    scope = TaggedPdf.attribute(cell.element, "/Table", "/Scope")
                    self.assertEqual(scope, "/Row" if number else "/Column")


class Worksheets(Printed):
    def test_are_a_title_a_grid_a_list_and_a_key(self):
        path, puzzle = self.puzzle(SAMPLES / "tool-shed.txt")
        pages = self.sound(self.printed(path, "--heading", "Tool shed", "--name-line", "--date-line")[0])
        self.assertEqual((pages.language, pages.title), ("en", "Tool shed"))
        sheet, key = pages.root.parts
        self.is_sheet(sheet, puzzle, "Tool shed", ["Name", "Date"])
        self.is_key(key, puzzle, "Tool shed")
        self.assertEqual([str(item.Title) for item, _ in pages.outline()], ["Tool shed", "Answer key"])
        # What is passed over is said elsewhere: the heads of a table above each further column.
        self.assertEqual(pages.artifacts[0], "")
        self.assertRegex(pages.artifacts[1], r"^(WordRowCol\.Direction)*$")

    def test_poppler_reads_the_same(self):
        path, _ = self.puzzle(SAMPLES / "tool-shed.txt")
        pdf, _ = self.printed(path, "--heading", "Tool shed")
        told = subprocess.run(["pdfinfo", "-struct-text", pdf], capture_output=True, text=True, check=True).stdout
        heard = "".join(re.findall(r'(?m)^ *"(.*)"$', told))
        self.assertEqual(heard, self.sound(pdf).root.text)

    def test_of_closed_cells_tell_them_as_empty_ones(self):
        path, puzzle = self.puzzle(SAMPLES / "tool-shed.txt", "--shape", "heart")
        self.assertIn(None, puzzle["cells"][0])
        for more in ((), ("--grid-lines", "full", "--key", "lines", "--colours", "own"), ("--key", "greyed")):
            sheet, key = self.sound(self.printed(path, "--heading", "Heart", *more)[0]).root.parts
            self.is_sheet(sheet, puzzle, "Heart")
            self.is_key(key, puzzle, "Heart")

    def test_in_hebrew_are_in_the_order_of_reading(self):
        words = self.write("words.txt", "שלום\nגינה\nפרח\nעץ חיים\nמים (2)\n")
        path, puzzle = self.puzzle(words, "--locale", "he")
        pages = self.sound(self.printed(path, "--heading", "גינה א, 12 ערוגות", "--name-line=שם")[0])
        self.assertEqual(pages.language, "he")
        sheet, key = pages.root.parts
        self.is_sheet(sheet, puzzle, "גינה א, 12 ערוגות", ["שם"])
        self.is_key(key, puzzle, "גינה א, 12 ערוגות")

    def test_of_several_versions_follow_each_other_and_then_their_keys(self):
        words = SAMPLES / "tool-shed.txt"
        pdf, report = self.printed(words, "--versions", 3, "--heading", "Beds")
        parts = self.sound(pdf).root.parts
        self.assertEqual(len(parts), 6)
        for at, told in enumerate(report["worksheets"]):
            _, puzzle = self.puzzle(words, "--seed", told["seed"])
            self.is_sheet(parts[at], puzzle, "Beds " + "ABC"[at])
            self.is_key(parts[3 + at], puzzle, "Beds " + "ABC"[at])

    def test_of_large_print_go_on_over_pages_as_one_list_and_one_table(self):
        texts = [(SAMPLES / f"{name}.txt").read_text("utf-8") for name in ("worksheet", "tool-shed", "herb-bed")]
        words = {word for text in texts for word in text.split("\n") if word and not word.startswith("#")}
        listed = self.write("words.txt", "\n".join(sorted(words | set(LONG_NAMES))))
        path, puzzle = self.puzzle(listed, "--grid", "36x36")
        title = "All that grows, creeps and flies between the lower gate and the walled garden"
        pdf = self.folder / "pages.pdf"
        # The letters of so large a grid do not reach large print, which is told by 1; the words do.
        result = run("print", path, "--heading", title, "--large-print", "--list", "given", "--out", pdf)
        self.assertEqual(result.returncode, 1, result.stderr)
        pages = self.sound(pdf)
        self.assertGreater(len(pages.pdf.pages), 4)
        sheet, key = pages.root.parts
        self.is_sheet(sheet, puzzle, title)
        self.is_key(key, puzzle, title)
        for part in (sheet.parts[-1], key.parts[-1]):
            elements = [one.element for one in part.all() if "/Pg" in one.element]
            self.assertGreater(len({element.Pg.objgen for element in elements}), 1)


    def test_of_words_wider_than_a_column_keep_them_whole(self):
        words = self.write("words.txt", "Gartenbewaesserungen\nKresse\nBeet am Tor\n")
        path, puzzle = self.puzzle(words, "--locale", "de")
        pdf = self.folder / "pages.pdf"
        result = run("print", path, "--heading", "Beet", "--large-print", "--margin", "50mm", "--list", "given", "--out", pdf)
        self.assertEqual(result.returncode, 1, result.stderr)
        sheet, key = self.sound(pdf).root.parts
        self.is_sheet(sheet, puzzle, "Beet")
        self.is_key(key, puzzle, "Beet")


class ABooklet(Printed):
    def test_leads_from_its_contents_to_each_sheet(self):
        names = {"worksheet": "Blossom & bees", "herb-bed": "Herb bed", "tool-shed": "Tool shed"}
        made = [self.puzzle(SAMPLES / f"{name}.txt", name=f"{name}.json") for name in names]
        headings = [part for title in names.values() for part in ("--heading", title)]
        pdf, _ = self.printed(*[path for path, _ in made], *headings, "--booklet", "Our garden")
        pages = self.sound(pdf)
        self.assertEqual(pages.title, "Our garden")
        contents, *parts = pages.root.parts
        self.assertEqual([one.type for one in contents.parts], ["H1", "TOC"])
        self.assertEqual(contents.parts[0].text, "Our garden")
        for at, ((_, puzzle), title) in enumerate(zip(made, names.values())):
            self.is_sheet(parts[at], puzzle, title)
            self.is_key(parts[len(made) + at], puzzle, title)
        lines = [*names.values(), "Answer keys"]
        self.assertEqual([item.text for item in contents.parts[1].parts], [f"{line} {page}" for page, line in enumerate(lines, 2)])
        for number, link in enumerate(contents.each("Link"), 1):
            annotation = [kid.Obj for kid in link.element.K if isinstance(kid, pikepdf.Dictionary) and "/Obj" in kid][0]
            self.assertEqual(pages.page_of(annotation.Dest), number)
            self.assertEqual(str(annotation.Contents), link.text)
            self.assertTrue(pages.on_paper(annotation.Rect))
        told = [(str(item.Title), pages.page_of(item.Dest), level) for item, level in pages.outline()]
        self.assertEqual(told, [(title, page, 0) for page, title in enumerate(names.values(), 1)] + [("Answer keys", 4, 0)]
                         + [(title, page, 1) for page, title in enumerate(names.values(), 4)])


def first(pages, type_):
    return pages.root.each(type_)[0].element


def in_content(page, old, new):
    page.Contents.write(page.Contents.read_bytes().replace(old, new))


def swap_parents(pages):
    parents = tagged_pdf_judge.in_number_tree(pages.pdf.Root.StructTreeRoot.ParentTree)[1][1]
    one, other = parents[0], parents[1]
    parents[0], parents[1] = other, one


def tell_twice(pages):
    first(pages, "LBody").K = first(pages, "H1").K


DAMAGE = {
    "content that the tree does not have": (lambda pages: first(pages, "TR").__delattr__("K"), "is not in the tree"),
    "a row that is short": (lambda pages: first(pages, "TR").K.__delitem__(0), "UA 7.5: rows of a table"),
    "a heading that skips a level": (lambda pages: first(pages, "H2").__setitem__("/S", pikepdf.Name.H3), "UA 7.4.2"),
    "decoration that is not marked": (lambda pages: in_content(pages.pdf.pages[1].obj, b"/Artifact BMC", b"/Other BMC"), "14.8.2.2"),
    "a mark that does not end": (lambda pages: in_content(pages.pdf.pages[1].obj, b"EMC", b" "), "14.6.1"),
    "a header without scope": (lambda pages: first(pages, "TH").__delitem__("/A"), "has no Scope"),
    "a figure without description": (lambda pages: first(pages, "P").__setitem__("/S", pikepdf.Name.Figure), "has no Alt"),
    "an item outside a list": (lambda pages: first(pages, "L").__setitem__("/S", pikepdf.Name.Sect), "a LI stands in a Sect"),
    "an invented type": (lambda pages: first(pages, "L").__setitem__("/S", pikepdf.Name.Herbs), "no standard type"),
    "content that is told twice": (tell_twice, "is twice in the tree"),
    "parents that are exchanged": (swap_parents, "ParentTree and tree do not agree on content"),
    "a part that names another parent": (lambda pages: first(pages, "H1").__setitem__("/P", first(pages, "H2")), "names another parent"),
    "a link that leads nowhere": (lambda pages: pages.pdf.pages[0].Annots[0].__setitem__("/Dest", pikepdf.String("x")), "leads nowhere"),
    "a link outside the tree": (lambda pages: first(pages, "Link").K.__delitem__(-1), "is not in the tree"),
    "a link that nothing tells of": (lambda pages: pages.pdf.pages[0].Annots[0].__delitem__("/Contents"), "has no description"),
    "no language": (lambda pages: pages.pdf.Root.__delitem__("/Lang"), "14.9.2"),
    "another title": (lambda pages: pages.pdf.docinfo.__setitem__("/Title", pikepdf.String("x")), "the titles are"),
    "a title that is not displayed": (lambda pages: pages.pdf.Root.__delitem__("/ViewerPreferences"), "is not displayed"),
    "no word that it is tagged": (lambda pages: pages.pdf.Root.__delitem__("/MarkInfo"), "not marked as tagged"),
    "tabs in another order": (lambda pages: pages.pdf.pages[2].obj.__setitem__("/Tabs", pikepdf.Name.R), "order of tabs on page 3"),
    "letters of no meaning": (lambda pages: next(iter(pages.pdf.pages[1].Resources.Font.as_dict().values())).__delitem__("/ToUnicode"),
                              "has no ToUnicode"),
}


class TheJudge(Printed):
    def test_finds_each_kind_of_damage(self):
        lists = [SAMPLES / f"{name}.txt" for name in ("tool-shed", "herb-bed")]
        pdf, _ = self.printed(*lists, "--booklet", "Our garden", "--name-line")
        self.sound(pdf)
        for kind, (damage, told) in DAMAGE.items():
            with self.subTest(kind):
                pages = TaggedPdf(pdf)
                damage(pages)
                damaged = self.folder / "damaged.pdf"
                pages.pdf.save(damaged)
                faults = TaggedPdf(damaged).faults
                self.assertTrue(any(told in fault for fault in faults), faults)


if __name__ == "__main__":
    unittest.main()
