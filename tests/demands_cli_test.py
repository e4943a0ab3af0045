#!/usr/bin/python3
"""What a person may demand of a puzzle on the command line, and what is said of demands that are none."""
import json
import pathlib
import unittest

from program import InFolder, SAMPLE, cells_of, run


class MeetsDemands(InFolder):
    def made(self, *arguments):
        result = run("make", SAMPLE, *arguments, "--json", cwd=self.folder)
        self.assertEqual(result.returncode, 0, result.stderr.decode())
        return json.loads(result.stdout)

    def test_more_crossings_than_letters_in_common(self):
        # Counted by hand: Basil, Mint and Nasturtium have A, S, I, T, M and N in common, each in one cell, since I stands in
        # each once, and both other Ts in one word.
        for words, most, says in (("Fig\nPlum\nYew\n", 0, "No two of the words have a letter in common"),
                                  ("Basil\nMint\nNasturtium\n", 6, "in 6 cells at the most, and not in 7")):
            words = self.write("words.txt", words)
            self.refused(1, "make", words, "--grid", "12x12", "--crossings", f"at-least {most + 1}", says=[says])
        words = self.write("words.txt", "Fig\nGum\n")
        self.assertEqual(run("make", words, "--grid", "6x6", "--crossings", "at-least 1").returncode, 0)
        self.refused(1, "make", words, "--grid", "6x6", "--crossings", "at-least 2", says=["in 1 cell at the most, and not in 2"])

    def test_crossings_are_asked_for_in_words(self):
        cover = lambda puzzle: [cell for word in puzzle["words"] for cell in cells_of(word)]
        crossings = lambda puzzle: len({cell for cell in cover(puzzle) if cover(puzzle).count(cell) > 1})
        self.assertEqual(crossings(self.made("--crossings", "none")), 0)
        for value in (["--crossings", "at-least", "20"], ["--crossings", "at-least 20"], ["--crossings=at-least", "20"]):
            self.assertGreaterEqual(crossings(self.made(*value)), 20)
        self.assertEqual(self.made("--crossings", "any"), self.made())
        options = self.write("options.ini", "crossings = at-least 20\n")
        self.assertGreaterEqual(crossings(self.made("--options", options)), 20)
        for value in ("some", "at-least", "at-least many", "at-least -1", ""):
            self.refused(2, "make", SAMPLE, "--crossings", value, says=["crossings"])

    def test_a_pin_puts_a_word_in_its_place(self):
        puzzle = self.made("--pin", "thyme@2,3,down", "--pin", "Lamb's ear@1,1,right", "--grid", "16x16")
        placed = {word["shown"]: word["placed"] for word in puzzle["words"]}
        self.assertEqual(placed["Thyme"], {"row": 2, "column": 3, "direction": "down"})
        self.assertEqual(placed["Lamb's ear"], {"row": 1, "column": 1, "direction": "right"})
        for pin in ("Thyme", "Thyme@", "@1,1,right", "Thyme@1,1", "Thyme@0,1,right", "Thyme@1,1,east", "Thyme@1,1,right,2",
                    "Thyme@1x,1,right", "Thyme@99999999999999999999,1,right"):
            self.refused(2, "make", SAMPLE, "--pin", pin, says=["--pin", "WORD@row,column,direction"])
        self.refused(2, "make", SAMPLE, "--grid", "16x16", "--pin", "Thyme@1,14,right", says=["'Thyme'", "row 1, column 17"])
        self.refused(2, "make", SAMPLE, "--pin", "Ivy@1,1,right", says=["'Ivy'", "list"])

    def test_shares_spacing_backward_and_leftover_are_numbers_within_reason(self):
        for option, values in {"shares": ("fair", "right", "right=x", "right=2,down=", "north=1", "right=1000001"),
                               "spacing": ("-1", "wide", "21"), "backward": ("-1", "few"), "leftover": ("-1", "all"),
                               "choices": ("0", "-1", "1001"), "threads": ("0", "many"), "nested": ("outside",)}.items():
            for value in values:
                with self.subTest(option=option, value=value):
                    self.refused(2, "make", SAMPLE, "--" + option, value, says=[option])

    def test_an_earlier_puzzle_is_kept_but_for_what_changed(self):
        first = self.made("--seed", "4", "--directions", "all")
        earlier = self.write("earlier.json", json.dumps(first))
        words = SAMPLE.read_text().replace("Thyme", "Lemon thyme")
        result = run("make", self.write("words.txt", words), "--from", earlier, "--keep", "filler", "--json")
        self.assertEqual(result.returncode, 0, result.stderr.decode())
        self.assertIn(b"Every word that was there stands where it stood.", result.stderr)
        second = json.loads(result.stdout)
        self.assertEqual(first["recipe"]["grid"], second["recipe"]["grid"])
        before = {word["shown"]: word["placed"] for word in first["words"]}
        after = {word["shown"]: word["placed"] for word in second["words"]}
        self.assertEqual({word: before[word] for word in before if word in after}, {word: after[word] for word in after if word in before})
        changed = sum(a != b for old, new in zip(first["cells"], second["cells"]) for a, b in zip(old, new))
        self.assertLessEqual(changed, len("LEMONTHYME") + len("THYME"))
        # It is a recipe of its own: nothing else is needed to make it again.
        again = run("make", "--recipe", self.write("second.json", result.stdout), "--json")
        self.assertEqual(again.stdout, result.stdout)
        self.assertEqual(run("check", self.folder / "second.json").returncode, 0)

        self.refused(2, "make", SAMPLE, "--keep", "filler", says=["--from"])
        self.refused(2, "make", SAMPLE, "--from", earlier, "--keep", "words", says=["'words'", "filler"])
        self.refused(2, "make", SAMPLE, "--from", earlier, "--recipe", earlier, says=["not both"])
        self.refused(2, "make", SAMPLE, "--from", SAMPLE, says=["tool-shed.txt"])
        self.refused(2, "make", SAMPLE, "--from", earlier, "--keep", "filler", "--grid", "30x30", says=["another size"])

    def test_choices_come_in_folders_named_by_seed_and_on_any_number_of_threads(self):
        for threads in ("1", "3"):
            result = run("make", SAMPLE, "--choices", "3", "--seed", "7", "--threads", threads, "--out", "t" + threads, cwd=self.folder)
            self.assertEqual(result.returncode, 0, result.stderr.decode())
        one, three = ({path.relative_to(folder): path.read_bytes() for path in folder.rglob("*") if path.is_file()}
                      for folder in (self.folder / "t1", self.folder / "t3"))
        self.assertEqual(one, three)
        self.assertEqual({str(path.parent) for path in one}, {"seed-7", "seed-8", "seed-9"})
        alone = run("make", SAMPLE, "--seed", "8", "--json").stdout
        self.assertEqual(one[pathlib.Path("seed-8/puzzle.json")], alone)

    def test_a_message_fills_the_cells_between_the_words(self):
        puzzle = self.made("--message", "Everything grows here")
        covered = {cell for word in puzzle["words"] for cell in cells_of(word)}
        rest = [letter for row, line in enumerate(puzzle["cells"], 1) for column, letter in enumerate(line, 1)
                if (row, column) not in covered]
        self.assertEqual("".join(rest), "EVERYTHINGGROWSHERE")
        self.refused(2, "make", SAMPLE, "--message", "...", says=["no letter"])
        self.refused(2, "make", SAMPLE, "--message", "Hello", "--leftover", "4", says=["5 letters", "4 cells"])

    def test_a_demand_that_is_too_much_is_named(self):
        words = self.write("words.txt", "Mint\nSage\n")
        for options in (["--spacing", "1"], ["--message", "SAGE"]):
            result = self.refused(1, "make", words, "--grid", "4x2", "--directions", "right", *options, says=["Without " + options[0]])
            self.assertEqual(result.returncode, 1)


if __name__ == "__main__":
    unittest.main(verbosity=2)
