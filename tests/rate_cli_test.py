#!/usr/bin/python3
"""letterlode rate, and make with an aim, as a teacher or a script calls them."""
import json
import unittest

from program import InFolder, ROOT, SAMPLE, run


class RatesAPuzzle(InFolder):
    def rating(self, *arguments, stdin=b""):
        result = run("rate", *arguments, "--json", stdin=stdin)
        self.assertEqual(result.returncode, 0, result.stderr)
        return json.loads(result.stdout)

    def part(self, parts, name):
        return next(part for part in parts if part["part"] == name)

    def test_tells_every_part_with_its_value_unit_and_ground(self):
        puzzle = self.write("puzzle.json", run("make", SAMPLE, "--json").stdout)
        text = run("rate", puzzle)
        self.assertEqual(text.returncode, 0, text.stderr)
        rating = self.rating(puzzle)
        for part in rating["readability"] + rating["difficulty"]["parts"]:
            self.assertIn(part["part"].encode(), text.stdout)
            self.assertIn(part["source"].encode(), text.stdout)
        self.assertIn(b"Level: " + rating["difficulty"]["level"].encode(), text.stdout)
        self.assertAlmostEqual(sum(word["fixations"] for word in rating["difficulty"]["words"]), rating["difficulty"]["fixations"], delta=0.1)

    def test_with_a_blank_and_a_distance_letters_have_a_size_and_colours(self):
        puzzle = self.write("puzzle.json", run("make", SAMPLE, "--json").stdout)
        bare = {part["part"] for part in self.rating(puzzle)["readability"]}
        self.assertNotIn("letter height as seen", bare)
        near = self.rating(puzzle, "--blank", "8x10in", "--viewing", "50cm")["readability"]
        far = self.rating(puzzle, "--blank", "203.2x254mm", "--viewing", "2m")["readability"]
        self.assertAlmostEqual(self.part(near, "letter height as seen")["value"], 4 * self.part(far, "letter height as seen")["value"], delta=0.01)
        self.assertEqual(self.part(near, "letter height as seen")["threshold"], 16)
        faint = self.rating(puzzle, "--blank", "8x10in", "--colour", "letters=#f0bf72")["readability"]
        self.assertEqual(self.part(faint, "contrast of letters on the bands")["value"], 1)

    def test_rates_a_drawn_grid_as_it_rates_the_puzzle(self):
        self.assertEqual(run("make", SAMPLE, "--out", self.folder / "made").returncode, 0)
        drawn = self.rating(self.folder / "made/puzzle.txt", "--words", "-")
        puzzle = self.rating(self.folder / "made/puzzle.json")
        self.assertEqual(drawn["difficulty"], puzzle["difficulty"])

    def test_says_what_is_met_and_which_word_is_not_there(self):
        puzzle = self.write("puzzle.json", run("make", SAMPLE, "--json").stdout)
        far = run("rate", puzzle, "--blank", "8x10in", "--viewing", "4m").stdout
        self.assertRegex(far, rb"letter height as seen +[0-9.]+ arcmin, at least 16 is asked for: NOT MET")
        near = run("rate", puzzle, "--blank", "8x10in", "--viewing", "50cm").stdout
        self.assertRegex(near, rb"letter height as seen +[0-9.]+ arcmin, at least 16 is asked for: met")
        grid, words = self.write("grid.txt", "KALE\nXYZW\n"), self.write("words.txt", "kale\nleek\n")
        self.assertIn(b"NOT IN THE GRID", run("rate", grid, "--words", words).stdout)
        self.assertEqual([word["found"] for word in self.rating(grid, "--words", words)["difficulty"]["words"]], [True, False])

    def test_what_cannot_be_rated_is_refused(self):
        puzzle = self.write("puzzle.json", run("make", SAMPLE, "--json").stdout)
        self.refused(2, "rate", puzzle, "--viewing", "1m", says=["--blank"])
        self.refused(2, "rate", puzzle, "--blank", "8x10in", "--viewing", "1 mile", says=["1 mile"])
        self.refused(2, "rate", puzzle, "--font", "No Such Family", says=["No Such Family"])
        self.refused(2, "rate", self.write("grid.txt", "KALE\nKAL\n"), "--words", SAMPLE, says=["row 2"])


class AimsAtADifficulty(InFolder):
    def fixations(self, *arguments):
        made = run("make", SAMPLE, "--json", *arguments)
        self.assertEqual(made.returncode, 0, made.stderr)
        rating = run("rate", "-", "--json", stdin=made.stdout)
        return json.loads(rating.stdout)["difficulty"]["fixations"], json.loads(made.stdout)["recipe"]

    def test_easier_is_easier_than_harder_and_a_number_is_met(self):
        easier, _ = self.fixations("--aim", "easier")
        harder, _ = self.fixations("--aim", "harder")
        usual, _ = self.fixations()
        self.assertLess(easier, usual)
        self.assertLess(usual, harder)
        middle, _ = self.fixations("--aim", str(round((easier + harder) / 2)))
        self.assertLess(abs(middle - (easier + harder) / 2), (harder - easier) / 4)

    def test_an_aim_that_is_out_of_reach_says_by_how_much(self):
        self.assertIn(b"misses it by", run("make", SAMPLE, "--aim", "12").stderr)
        self.assertNotIn(b"misses it", run("make", SAMPLE, "--aim", "easier").stderr)

    def test_the_recipe_of_what_was_aimed_at_makes_it_again(self):
        made = run("make", SAMPLE, "--json", "--aim", "harder").stdout
        recipe = self.write("recipe.json", json.dumps(json.loads(made)["recipe"]))
        self.assertEqual(run("make", "--recipe", recipe, "--json").stdout, made)

    def test_what_the_maker_chose_stays(self):
        _, recipe = self.fixations("--aim", "easier", "--directions", "all", "--filler", "only-words")
        self.assertEqual(len(recipe["directions"]), 8)
        self.assertEqual(recipe["filler"], "only-words")

    def test_choices_are_ranked_and_the_first_says_why(self):
        result = run("make", SAMPLE, "--choices", "5", "--aim", "easier", "--json")
        self.assertIn(b"comes first", result.stderr)
        rated = []
        for puzzle in json.loads(result.stdout)["puzzles"]:
            rating = run("rate", "-", "--json", stdin=json.dumps(puzzle).encode())
            rated.append(json.loads(rating.stdout)["difficulty"]["fixations"])
        self.assertEqual(rated, sorted(rated))

    def test_an_aim_that_is_none_and_words_that_cannot_stand(self):
        for aim in ["easy", "0", "-3", "1e3", "nan", ""]:
            self.refused(2, "make", SAMPLE, "--aim", aim, says=["aim"])
        self.refused(2, "make", SAMPLE, "--aim", "easier", "--grid", "5x5", says=["Marigold"])


if __name__ == "__main__":
    unittest.main()
