#!/usr/bin/python3
"""How a person says on the command line what the cells between the words are filled with."""
import json
import unittest

from program import InFolder, ROOT, SAMPLE, cells_of, run

WITH_COUNTERS = set("ABDOPQR")


class Fills(InFolder):
    def made(self, *arguments, words=SAMPLE):
        result = run("make", words, *arguments, "--json", cwd=self.folder)
        self.assertEqual(result.returncode, 0, result.stderr.decode())
        return json.loads(result.stdout)

    def filler(self, puzzle):
        covered = {cell for word in puzzle["words"] for cell in cells_of(word)}
        return "".join(letter for row, line in enumerate(puzzle["cells"], 1) for column, letter in enumerate(line, 1)
                       if (row, column) not in covered)

    def test_each_way_does_what_its_name_says(self):
        by_words, by_language, only_words, easy = (
            self.filler(self.made("--filler", way, "--grid", "40x40", "--locale", "en"))
            for way in ("words", "language", "only-words", "easy-weeding"))
        self.assertEqual(by_words, self.filler(self.made("--grid", "40x40", "--locale", "en")))
        own = {letter for word in self.made()["words"] for letter in word["letters"]}
        self.assertLessEqual(set(only_words), own)
        self.assertFalse(set(by_words) <= own)
        self.assertEqual(max(set(by_language), key=by_language.count), "E")
        counters = lambda letters: sum(letter in WITH_COUNTERS for letter in letters)
        self.assertLess(5 * counters(easy), counters(by_language))
        self.assertGreater(len(set(easy)), 20)

    def test_a_text_is_counted_and_stays_in_the_recipe(self):
        text = self.write("text.txt", "zzz zzz yyy")
        words = self.write("words.txt", "Beet\nMint\n")
        puzzle = self.made("--filler-text", text, "--grid", "20x20", "--locale", "de", words=words)
        self.assertEqual(puzzle["recipe"]["filler"], "language")
        self.assertEqual(puzzle["recipe"]["letter_counts"], {"Y": 3, "Z": 6})
        self.assertGreater(self.filler(puzzle).count("Z"), 100)
        again = run("make", "--recipe", self.write("puzzle.json", json.dumps(puzzle)), "--json")
        self.assertEqual(json.loads(again.stdout), puzzle)
        self.refused(2, "make", SAMPLE, "--filler-text", self.write("none.txt", "..."), says=["filler-text", "no letter"])
        self.refused(2, "make", SAMPLE, "--filler-text", text, "--filler", "words", says=["filler-text", "words"])
        self.refused(2, "make", SAMPLE, "--filler-text", "missing.txt", says=["missing.txt"])

    def test_it_says_where_nobody_counted_a_language(self):
        words = self.write("words.txt", "Beet\nMint\n")
        note = lambda *more: run("make", words, "--avoid", "none", *more).stderr.decode()
        self.assertIn("--filler-text", note("--filler", "language", "--locale", "cy"))
        for quiet in (["--locale", "cy"], ["--filler", "language", "--locale", "en"], ["--filler", "only-words", "--locale", "cy"]):
            self.assertEqual(note(*quiet), "")

    def test_runs_and_look_alikes_are_kept_in_bounds(self):
        for seed in ("1", "2", "3"):
            puzzle = self.made("--longest-run", "1", "--look-alikes", "apart", "--seed", seed)
            covered = {cell for word in puzzle["words"] for cell in cells_of(word)}
            cells = {(row, column): letter for row, line in enumerate(puzzle["cells"], 1) for column, letter in enumerate(line, 1)}
            for (row, column), letter in cells.items():
                if (row, column) in covered:
                    continue
                for near in ((row + down, column + across) for down in (-1, 0, 1) for across in (-1, 0, 1) if (down, across) != (0, 0)):
                    other = cells.get(near)
                    self.assertNotEqual(letter, other)
                    for group in ("CDGOQ", "HKMNW"):
                        self.assertFalse(letter in group and other is not None and other in group, (row, column))

    def test_bad_values_are_named(self):
        for option, values in {"filler": ("at-random", ""), "longest-run": ("-1", "few"), "look-alikes": ("far", ""),
                               "message-then": ("words", "")}.items():
            for value in values:
                with self.subTest(option=option, value=value):
                    self.refused(2, "make", SAMPLE, "--" + option, value, says=[option])

    def test_filler_follows_a_message_and_an_exact_one_says_what_is_wrong(self):
        puzzle = self.made("--message", "Well grown", "--message-then", "filler", "--grid", "20x20")
        self.assertTrue(self.filler(puzzle).startswith("WELLGROWN"))
        self.assertEqual(self.made("--recipe", self.write("puzzle.json", json.dumps(puzzle))), puzzle)
        self.refused(1, "make", SAMPLE, "--message", "Well grown", "--grid", "20x20",
                     says=["cells too many", "these sizes would fit", "--message-then filler"])
        words = self.write("words.txt", "Mint\n")
        self.refused(1, "make", words, "--message", "Everything grows", "--message-then", "filler", "--grid", "4x4",
                     says=["cells too few"])

    def test_a_cell_that_can_hold_no_letter_is_named(self):
        words = self.write("words.txt", "AB\n")
        self.refused(1, "make", words, "--grid", "3x1", "--pin", "AB@1,1,right", "--filler", "only-words",
                     "--avoid", self.write("avoid.txt", "BB\n"),
                     says=["Row 1, column 3", "A would spell 'AB' once more", "B would spell the avoided word 'BB'",
                           "With --filler words they can be filled"])

    def test_lists_of_words_to_avoid_go_by_the_language(self):
        entry = [line for line in (ROOT / "data/avoid/de.txt").read_text("utf-8").splitlines() if not line.startswith("#")][0]
        words = self.write("words.txt", "Beet\n" + entry + "\n")
        self.refused(2, "make", words, "--locale", "de-AT", says=["avoided word"])
        self.assertEqual(run("make", words, "--locale", "en").returncode, 0)


if __name__ == "__main__":
    unittest.main(verbosity=2)
