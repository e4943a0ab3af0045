#!/usr/bin/env python3
"""The samples and the avoid lists are what they say they are, by a plain search that shares nothing with the program."""
import pathlib
import re
import unicodedata
import unittest

DATA = pathlib.Path(__file__).resolve().parents[2] / "data"
STEPS = [(down, across) for down in (-1, 0, 1) for across in (-1, 0, 1) if (down, across) != (0, 0)]


def listed(path):
    """The words of a list, as shown."""
    lines = (re.sub(r"(^|\s)#(\s.*)?$", "", line).strip() for line in (DATA / path).read_text("utf-8").splitlines())
    return [line for line in lines if line]


def letters(shown):
    return "".join(c for c in unicodedata.normalize("NFC", shown).upper() if c.isalpha())


def bare(shown):
    """Without case and marks, as avoided words are matched."""
    return "".join(c for c in unicodedata.normalize("NFD", letters(shown)) if not unicodedata.combining(c))


def copies(grid, word):
    """Every set of cells in a line that reads as the word."""
    found = set()
    for row in range(len(grid)):
        for column in range(len(grid[0])):
            for down, across in STEPS:
                cells = [(row + down * i, column + across * i) for i in range(len(word))]
                if all(0 <= r < len(grid) and 0 <= c < len(grid[0]) for r, c in cells):
                    if all(grid[r][c] == letter for (r, c), letter in zip(cells, word)):
                        found.add(frozenset(cells))
    return found


def read_grid(name):
    return [line.replace(" ", "") for line in (DATA / "samples" / name).read_text("utf-8").splitlines()]


AVOIDED = listed("avoid/en.txt")


class ListTest(unittest.TestCase):
    def each_list(self):
        for name in ("tool-shed.txt", "worksheet.txt", "herb-bed.txt"):
            with self.subTest(name):
                yield name, listed(f"samples/{name}")

    def test_every_word_has_4_to_10_letters(self):
        for _, words in self.each_list():
            for word in words:
                self.assertIn(len(letters(word)), range(4, 11), word)

    def test_no_word_stands_in_another_from_either_end(self):
        for _, words in self.each_list():
            for word in words:
                others = [letters(other) for other in words if other is not word]
                self.assertFalse([o for o in others if letters(word) in o or letters(word)[::-1] in o], word)

    def test_no_avoided_word_stands_in_a_word(self):
        for _, words in self.each_list():
            for word in words:
                self.assertFalse([a for a in AVOIDED if bare(a) in bare(word) or bare(a)[::-1] in bare(word)], word)

    def test_the_sign_shows_what_a_list_may_hold(self):
        words = listed("samples/tool-shed.txt")
        self.assertIn(len(words), range(20, 25))
        for sign in "-' ñ":
            self.assertTrue(any(sign in word for word in words), sign)


class GridTest(unittest.TestCase):
    words = listed("samples/herb-bed.txt")

    def test_the_right_grid_holds_each_word_once(self):
        grid = read_grid("herb-bed-grid.txt")
        self.assertEqual({word: len(copies(grid, letters(word))) for word in self.words}, dict.fromkeys(self.words, 1))

    def test_the_other_holds_one_word_twice(self):
        grid = read_grid("herb-bed-grid-stray.txt")
        self.assertEqual({word: len(copies(grid, letters(word))) for word in self.words},
                         dict.fromkeys(self.words, 1) | {"Sage": 2})

    def test_neither_holds_an_avoided_word(self):
        for name in ("herb-bed-grid.txt", "herb-bed-grid-stray.txt"):
            self.assertFalse([word for word in AVOIDED if copies(read_grid(name), bare(word))])

    def test_rows_are_of_one_length(self):
        for name in ("herb-bed-grid.txt", "herb-bed-grid-stray.txt"):
            self.assertEqual({len(row) for row in read_grid(name)}, {10})


class MaskTest(unittest.TestCase):
    def test_the_shed_has_room_for_its_sign(self):
        rows = (DATA / "samples/shed-mask.txt").read_text("utf-8").splitlines()
        self.assertEqual(len({len(row) for row in rows}), 1)
        self.assertLessEqual(set("".join(rows)), {".", "O"})
        sign = sum(len(letters(word)) for word in listed("samples/tool-shed.txt"))
        self.assertGreater("".join(rows).count("O"), 1.4 * sign)
        self.assertTrue(any(".." in row.strip(".") for row in rows), "it has a window")


# By language, the dictionary that judges its list, and the Debian package that brings it.
DICTIONARIES = {"en": ("american-english", "wamerican"), "de": ("ngerman", "wngerman"), "fr": ("french", "wfrench"),
                "es": ("spanish", "wspanish"), "it": ("italian", "witalian"), "nl": ("dutch", "wdutch")}
# Entries of which more words are made, all with their meaning, than a few: they stand inside those, not inside others.
WITH_MANY_DERIVED = {"en": {"incest", "porn"}, "de": set(), "fr": {"merde"}, "es": set(), "it": set(),
                     "nl": {"porno", "verkracht"}}


def dictionary(language):
    """Its words without case and marks, a line each, with a line break before and behind."""
    file, package = DICTIONARIES[language]
    path = pathlib.Path("/usr/share/dict") / file
    if not path.exists():
        raise unittest.TestCase.failureException(f"{path} is missing: install {package}")
    apart = unicodedata.normalize("NFD", path.read_text("utf-8").upper())
    return "\n" + "\n".join(sorted(set(re.sub(r"[^\w\n]|[\d_]", "", apart).split("\n")) - {""})) + "\n"


def holding(text, part):
    """The lines that hold the part."""
    lines, at = [], text.find(part)
    while at >= 0:
        end = text.index("\n", at)
        lines.append(text[text.rindex("\n", 0, at) + 1:end])
        at = text.find(part, end)
    return lines


class AvoidListTest(unittest.TestCase):
    lists = {path.stem: listed(path) for path in sorted((DATA / "avoid").glob("*.txt"))}

    def test_each_list_has_a_dictionary_that_judges_it(self):
        self.assertEqual(set(self.lists), set(DICTIONARIES))
        self.assertTrue(all(len(words) > 15 for words in self.lists.values()))

    def test_entries_are_short_plain_and_sorted(self):
        for words in self.lists.values():
            for word in words:
                self.assertRegex(word, "^[a-z]{3,10}$")
            self.assertEqual(words, sorted(set(words)))

    def test_no_entry_stands_in_another(self):
        for words in self.lists.values():
            for word in words:
                self.assertFalse([o for o in words if o != word and (word in o or word[::-1] in o)], word)

    def test_everyday_words_are_free_of_them(self):
        # Words that an unwary list would forbid, forward or backward.
        everyday = {
            "en": ("grape", "scrap", "parcel", "Saturday", "sturdy", "gossip", "cognizant", "constitution", "wristwatch", "bragging",
                   "zaps", "unmade", "thorny", "therapist", "software", "restful", "Chardonnay", "pussy willow", "cocktail", "hoe",
                   "goldenrod", "Solidago", "class", "assess", "raccoon", "basement", "torpedo", "traffic", "stitch", "snail"),
            "de": ("Tischlampe", "Rettung", "Regen", "Broschüre", "Barsch", "Marsch", "Tapisserie", "Spastiker", "Moos", "Mosel", "Ruhe",
                   "Kürbis", "Schnittlauch", "Quitten", "Finanzen", "Uhren", "Untertasse", "Schimmel", "Knacken", "Magnifikat"),
            "fr": ("cornichon", "salopette", "technique", "ordinateur", "député", "habiter", "fichier", "tapisserie", "maçonnasse",
                   "baragouine", "bordelais", "allergène", "impédance", "courgette", "oignon", "trouille", "abricot", "chaton"),
            "es": ("diputada", "cebollera", "economía", "vehículo", "ampolla", "disputas", "cómputo", "poetas", "americana", "bermejo",
                   "saxífraga", "tamarindo", "penetrar", "calabaza", "zanahoria", "envergadura", "cagarria", "pepino"),
            "it": ("sorgente", "significa", "stette", "finocchio", "torrone", "architetto", "pomodoro", "zucchina", "veicolo", "segare",
                   "accorgendosi", "cipolla", "prezzemolo", "ricchezza", "sterzo", "cavolo", "tronco", "gareggino"),
            "nl": ("drukker", "knikker", "hoera", "stuk", "regen", "stalactieten", "spaghetti", "strontium", "tekst", "hotels", "kiezen",
                   "vlieg", "pompoen", "komkommer", "flikkeren", "eikel", "kutten", "glaspasta", "hoeve", "schijf"),
        }
        for language, words in everyday.items():
            for word in words:
                self.assertFalse([a for a in self.lists[language] if bare(a) in bare(word) or bare(a)[::-1] in bare(word)], word)

    def test_hardly_any_word_of_the_language_holds_an_entry_but_those_made_of_it(self):
        for language, words in self.lists.items():
            text = dictionary(language)
            for word in words:
                with self.subTest(language=language, word=word):
                    backward = holding(text, bare(word)[::-1])
                    self.assertLessEqual(len(backward), 4, backward)
                    # What begins with it is mostly made of it: it was looked through.
                    inside = [line for line in holding(text, bare(word)) if bare(word) in line[1:]]
                    if word not in WITH_MANY_DERIVED[language]:
                        self.assertLessEqual(len(inside), 20, inside)


if __name__ == "__main__":
    unittest.main()
