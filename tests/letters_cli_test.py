#!/usr/bin/python3
"""The rules of spelling as a person gives them: on the command line, in a recipe, to make and to check."""
import json
import unittest

from program import InFolder, run

WELSH = "llongyfarchiadau\nBan|gor\nchwarae\n"


class SpellsByRules(InFolder):
    def letters(self, *options, words=WELSH):
        result = run("make", "-", "--json", *options, stdin=words.encode())
        self.assertEqual(result.returncode, 0, result.stderr)
        return {word["shown"]: word["letters"] for word in json.loads(result.stdout)["words"]}

    def test_letters_of_several_characters_have_a_cell(self):
        letters = self.letters("--locale", "cy")
        self.assertEqual(letters["llongyfarchiadau"], "LL O NG Y F A R CH I A D A U".split())
        self.assertEqual(letters["Bangor"], list("BANGOR"))
        self.assertEqual(self.letters("--locale", "cy", "--digraphs", "split")["llongyfarchiadau"], list("LLONGYFARCHIADAU"))
        self.assertEqual(self.letters()["llongyfarchiadau"], list("LLONGYFARCHIADAU"))

    def test_each_rule_is_an_option(self):
        words = "Straße\nCafé\n"
        self.assertEqual(self.letters("--locale", "de", words=words)["Straße"], list("STRASSE"))
        self.assertEqual(self.letters("--locale", "de", "--sharp-s", "keep", words=words)["Straße"], list("STRAẞE"))
        self.assertEqual(self.letters("--letters", "lower", words=words)["Straße"], list("straße"))
        self.assertEqual(self.letters("--letters", "lower", "--sharp-s", "double", words=words)["Straße"], list("strasse"))
        self.assertEqual(self.letters("--marks", "strip", words=words)["Café"], list("CAFE"))
        self.assertEqual(self.letters("--marks", "keep", words=words)["Café"], list("CAFÉ"))
        self.assertEqual(self.letters("--finals", "fold", words="שלום\nגינה\n")["שלום"], list("שלומ"))

    def test_a_puzzle_made_again_from_its_recipe_has_the_same_bytes(self):
        rules = ("--locale", "cy", "--digraphs", "split", "--marks", "strip", "--finals", "fold", "--sharp-s", "keep")
        for options in ((), ("--locale", "cy"), rules):
            first = run("make", "-", "--json", *options, stdin=WELSH.encode()).stdout
            puzzle = self.write("puzzle.json", first)
            self.assertEqual(run("make", "--recipe", puzzle, "--json").stdout, first)
            self.assertEqual(run("check", puzzle).returncode, 0)

    def test_what_is_printed_is_certified_by_check(self):
        for locale, words in (("cy", WELSH), ("uz", "o'zbek\ngʻalaba\nchoy\n"), ("nl", "ijsvrij\nĳzer\nmini-jurk\n"),
                              ("he", "שלום\nגינה\nעץ תפוח\n"), ("ar", "حديقة\nزهرة\nشجرة\n"), ("hi", "हिन्दी\nनमस्ते\nक्षमा\n"),
                              ("hu", "asszony\nmeggy\nlándzsa\n"), ("ja", "さくら\nうめのき\n")):
            with self.subTest(locale):
                text = run("make", "-", "--locale", locale, stdin=words.encode()).stdout.decode()
                grid = self.write("grid.txt", text.split("\n\n")[0] + "\n")
                listed = self.write("words.txt", words)
                judged = run("check", grid, "--words", listed, "--locale", locale)
                self.assertEqual(judged.returncode, 0, judged.stdout.decode() + judged.stderr.decode())

    def test_only_rows_with_right_to_left_letters_have_direction_marks(self):
        marks = "\u200e\u202d"
        hebrew = run("make", "-", "--locale", "he", stdin="שלום\nגינה\n".encode()).stdout.decode()
        for row in hebrew.split("\n\n")[0].splitlines():
            self.assertTrue(row.startswith(marks) and row.endswith("\u202c"), row)
        english = run("make", "-", stdin=b"Rake\nHoe\nSpade\n").stdout.decode()
        self.assertTrue(english.isascii())

    def test_rules_that_are_none_are_refused(self):
        words = self.write("words.txt", WELSH)
        for option, value in (("--digraphs", "keep"), ("--sharp-s", "ss"), ("--marks", "fold"), ("--finals", "strip")):
            self.refused(2, "make", words, option, value, says=[option[2:], value])
        for key in ("digraphs", "sharp_s", "marks", "finals"):
            recipe = self.write("recipe.json", json.dumps({"words": ["Rake"], key: "other"}))
            self.refused(2, "make", "--recipe", recipe, says=["recipe." + key])

    def test_the_help_tells_of_the_bar(self):
        self.assertIn("Ban|gor", run("make", "--help").stdout.decode())


if __name__ == "__main__":
    unittest.main()
