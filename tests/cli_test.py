#!/usr/bin/python3
"""The program as a person or a script calls it: what it prints, leaves and answers, with wrong input too."""
import json
import os
import pathlib
import re
import resource
import signal
import subprocess
import time
import unittest

from program import InFolder, PANEL, PROGRAM, ROOT, SAMPLE, run


class MakesAPuzzle(InFolder):
    def test_prints_grid_list_key_verdict_and_seed(self):
        result = run("make", SAMPLE, "--grid", "16x18", "--seed", "5")
        self.assertEqual(result.returncode, 0)
        text = result.stdout.decode()
        blocks = text.split("\n\n")
        rows = blocks[0].splitlines()
        self.assertEqual(len(rows), 18)
        self.assertTrue(all(len(row.split(" ")) == 16 for row in rows))
        shown = [line for line in SAMPLE.read_text().splitlines() if line.strip() and not line.startswith("#")]
        self.assertEqual(blocks[1].splitlines(), shown)
        self.assertEqual(len(blocks[2].splitlines()), len(shown))
        self.assertIn("Certified", blocks[3])
        self.assertIn("seed 5", blocks[3])

    def test_the_key_tells_where_the_words_stand(self):
        text = run("make", SAMPLE, "--directions", "all").stdout.decode()
        grid, listed, key = text.split("\n\n")[:3]
        cells = [row.split(" ") for row in grid.splitlines()]
        steps = {"right": (0, 1), "left": (0, -1), "down": (1, 0), "up": (-1, 0), "down-right": (1, 1), "up-left": (-1, -1),
                 "down-left": (1, -1), "up-right": (-1, 1)}
        for line in key.splitlines():
            shown, row, column, direction = re.fullmatch(r"(.*?) +row (\d+), column (\d+), ([a-z-]+)", line).groups()
            word = [letter for letter in shown.upper() if letter.isalpha()]
            down, right = steps[direction]
            read = [cells[int(row) - 1 + at * down][int(column) - 1 + at * right] for at in range(len(word))]
            self.assertEqual(read, word)

    def test_the_same_seed_gives_the_same_bytes_and_another_seed_another_puzzle(self):
        first = run("make", SAMPLE, "--json", "--seed", "3").stdout
        self.assertEqual(first, run("make", SAMPLE, "--json", "--seed", "3").stdout)
        self.assertNotEqual(first, run("make", SAMPLE, "--json", "--seed", "4").stdout)

    def test_reads_a_list_from_standard_input(self):
        result = run("make", "-", "--json", stdin=SAMPLE.read_bytes())
        self.assertEqual(result.returncode, 0)
        self.assertEqual(json.loads(result.stdout)["cells"], json.loads(run("make", SAMPLE, "--json").stdout)["cells"])

    def test_a_puzzle_made_is_certified_by_check_and_drawn_by_cut(self):
        puzzle = run("make", SAMPLE, "--json").stdout
        checked = run("check", "-", stdin=puzzle)
        self.assertEqual(checked.returncode, 0, checked.stderr)
        drawn = run("cut", "-", "--blank", "8x10in", "--surface", "first", stdin=puzzle)
        self.assertEqual(drawn.returncode, 0, drawn.stderr)
        self.assertIn(b'width="203.2mm"', drawn.stdout)

    def test_a_recipe_of_a_puzzle_makes_it_again(self):
        first = json.loads(run("make", SAMPLE, "--directions", "all", "--seed", "9", "--json").stdout)
        recipe = self.write("recipe.json", json.dumps(first["recipe"]))
        again = json.loads(run("make", "--recipe", recipe, "--json").stdout)
        self.assertEqual(again, first)

    def test_the_command_line_wins_over_the_options_file_and_that_over_the_recipe(self):
        recipe = self.write("recipe.json", json.dumps({"words": ["Rose", "Thyme"], "seed": 1, "grid": "6x6", "directions": ["right"]}))
        options = self.write("options.ini", "seed = 2\ngrid = 7x7\n")
        made = json.loads(run("make", "--recipe", recipe, "--options", options, "--seed", "3", "--json").stdout)["recipe"]
        self.assertEqual((made["seed"], made["grid"], made["directions"]), (3, "7x7", ["right"]))

    def test_a_number_sign_survives_the_options_file(self):
        options = self.write("options.ini",
                             "# the panel by the gate\nblank = 8x10in\nsurface = first\nheading = Bed #3 # and #4\n"
                             "colour = bands=#ff8800\ncolour = letters=#112233\n")
        result = run("make", SAMPLE, "--options", options, "--out", self.folder / "panel")
        self.assertEqual(result.returncode, 0, result.stderr)
        drawing = (self.folder / "panel/artwork.svg").read_text()
        for part in ["Bed #3 # and #4", "#ff8800", "#112233"]:
            self.assertIn(part, drawing)


    def test_quotes_in_an_options_file_are_taken_as_a_shell_takes_them(self):
        options = self.write("options.ini", "blank = 8x10in\nsurface = first\nheading = \"Bed #3\\nand #4\"\n")
        result = run("make", SAMPLE, "--options", options, "--out", self.folder / "panel")
        self.assertEqual(result.returncode, 0, result.stderr)
        title = re.search("<title>(.*?)</title>", (self.folder / "panel/artwork.svg").read_text()).group(1)
        self.assertTrue(title.startswith("Bed #3 and #4"), title)

    def test_a_puzzle_file_is_a_recipe(self):
        first = run("make", SAMPLE, "--directions", "all", "--seed", "9", "--json").stdout
        self.assertEqual(run("make", "--recipe", self.write("puzzle.json", first), "--json").stdout, first)

    def test_a_language_without_an_avoid_list_is_named(self):
        self.assertIn(b"'cy'", run("make", SAMPLE, "--locale", "cy").stderr)
        self.assertEqual(run("make", SAMPLE, "--locale", "cy", "--avoid", "none").stderr, b"")
        self.assertEqual(run("make", SAMPLE).stderr, b"")

    def test_a_piece_that_is_still_to_be_solved_has_no_bands(self):
        result = run("make", SAMPLE, *PANEL, "--band", "none", "--out", self.folder / "panel")
        self.assertEqual(result.returncode, 0, result.stderr)
        self.assertEqual(sorted(path.name for path in (self.folder / "panel/layers").glob("*.svg")), ["1-heading.svg", "2-letters.svg"])
        self.assertNotIn("band", (self.folder / "panel/artwork.svg").read_text())
        self.refused(2, "make", SAMPLE, *PANEL, "--band", "ribbon", says=["ribbon", "capsule"])


class WritesAFolder(InFolder):
    FILES = ["artwork.pdf", "artwork.svg", "job-sheet.pdf", "key.txt", "layers/1-heading.pdf", "layers/1-heading.svg",
             "layers/2-letters.pdf", "layers/2-letters.svg", "layers/3-bands.pdf", "layers/3-bands.svg", "preview.png", "proof.html",
             "puzzle.json", "puzzle.txt", "solve.html", "worksheet.pdf", "worksheet.txt"]

    def files(self, folder):
        return sorted(str(path.relative_to(folder)) for path in folder.rglob("*") if path.is_file())

    def test_holds_all_that_was_asked_for_and_says_what_each_file_is_for(self):
        result = run("make", SAMPLE, *PANEL, "--out", self.folder / "panel")
        self.assertEqual(result.returncode, 0, result.stderr)
        self.assertEqual(self.files(self.folder / "panel"), self.FILES)
        for name in self.FILES:
            line = next(line for line in result.stderr.decode().splitlines() if line.strip().startswith(name))
            self.assertGreater(len(line.split(name)[1].strip()), 10)
        self.assertEqual(self.names(), ["panel"], "something was left beside it")

    def test_refuses_a_folder_that_exists_and_replaces_it_whole_on_request(self):
        old = self.folder / "panel"
        old.mkdir()
        (old / "old.txt").write_text("old")
        self.refused(2, "make", SAMPLE, "--out", "panel", says=["panel", "exists", "--replace"])
        self.assertEqual(self.files(old), ["old.txt"])
        result = run("make", SAMPLE, "--out", old, "--replace")
        self.assertEqual(result.returncode, 0, result.stderr)
        self.assertEqual(self.files(old), ["key.txt", "puzzle.json", "puzzle.txt", "solve.html", "worksheet.pdf", "worksheet.txt"])
        self.assertEqual(self.names(), ["panel"])

    def test_never_replaces_the_folder_that_one_works_in(self):
        (self.folder / "mine.txt").write_text("mine")
        for out in [".", "..", self.folder, self.folder.parent]:
            result = run("make", SAMPLE, "--out", out, "--replace", cwd=self.folder)
            self.assertEqual(result.returncode, 2, result.stderr)
        self.assertEqual(self.names(), ["mine.txt"])

    def test_a_full_disk_leaves_nothing_and_keeps_the_old_folder(self):
        old = self.folder / "panel"
        self.assertEqual(run("make", SAMPLE, "--out", old, "--seed", "2").returncode, 0)
        before = (old / "puzzle.json").read_bytes()
        # A limit on the size of files makes the system's own write fail part way.
        limit = lambda: resource.setrlimit(resource.RLIMIT_FSIZE, (20_000, 20_000))
        for out in [old, self.folder / "new"]:
            result = run("make", SAMPLE, *PANEL, "--out", out, "--replace", preexec_fn=limit)
            self.assertEqual(result.returncode, 3, result.stderr)
            self.assertIn(b"cannot write", result.stderr)
        self.assertEqual(self.names(), ["panel"])
        self.assertEqual((old / "puzzle.json").read_bytes(), before)

    def test_a_full_standard_output_is_an_error(self):
        with open("/dev/full", "wb") as full:
            result = subprocess.run([PROGRAM, "make", SAMPLE], stdout=full, stderr=subprocess.PIPE)
        self.assertEqual(result.returncode, 3)
        self.assertIn(b"standard output", result.stderr)

    def test_a_folder_that_may_not_be_made_is_named(self):
        self.write("file", "a file, not a folder")
        result = run("make", SAMPLE, "--out", self.folder / "file/panel")
        self.assertEqual(result.returncode, 3)
        self.assertIn(b"file", result.stderr)

    def test_an_interrupt_ends_a_long_search_and_leaves_nothing(self):
        # Twelve rows take two of the words each, since none of them can begin in another: there are twenty-nine.
        letter = lambda first, by: chr(ord(first) + by % 13)
        words = self.write("words.txt", "\n".join(
            letter("a", at) + letter("a", at + 4 * (at // 13)) + letter("a", 5 * at) + letter("n", at) + letter("n", 3 * at) for at in range(29)))
        process = subprocess.Popen([PROGRAM, "make", words, "--grid", "12x12", "--directions", "right", "--avoid", "none", "--effort", str(10**15), "--out",
                                    self.folder / "panel"], stdout=subprocess.PIPE, stderr=subprocess.PIPE)
        status = pathlib.Path(f"/proc/{process.pid}/status")
        caught = 0
        while not caught & (1 << (signal.SIGINT - 1)):  # until the program watches for it
            time.sleep(0.01)
            caught = int(re.search(r"SigCgt:\s*([0-9a-f]+)", status.read_text()).group(1), 16)
        process.send_signal(signal.SIGINT)
        _, said = process.communicate()
        self.assertEqual(process.returncode, 130, said)
        self.assertIn(b"Interrupted", said)
        self.assertEqual(self.names(), ["words.txt"])

    def test_what_would_be_passed_over_in_silence_is_refused_with_a_way_out(self):
        puzzle = self.write("p.json", run("make", SAMPLE, "--json").stdout)
        os.mkfifo(self.folder / "pipe.svg")
        into = ["--out", self.folder / "cut"]
        for options, says in [(["--replace"], "--out"), (["--heading-font", "constructed"], "--heading"),
                              (["--border-line", "2mm"], "--border"), (["--hole", "a,b,c"], "'a,b,c'"),
                              ([*into, "--bed", "heart 10x10in"], "--bed")]:
            self.refused(2, "cut", puzzle, "--blank", "8x10in", "--surface", "first", *options, says=[says])
        film = run("cut", puzzle, "--blank", "8x10in", "--surface", "first", *into, "--bed", "12x12in", "--film", "red=6x9in")
        self.assertEqual(film.returncode, 2)
        self.assertIn(b"no layer has the colour #ff0000", film.stderr)
        self.assertIn(b"#243f3a (letters)", film.stderr)
        self.refused(2, "cut", puzzle, "--blank", "pipe.svg", "--surface", "first", says=["regular file"])
        self.assertEqual(self.names(), ["p.json", "pipe.svg"])

    def test_an_interrupt_ends_waiting_for_input(self):
        process = subprocess.Popen([PROGRAM, "make", "-"], stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.PIPE)
        state = ""
        while state != "S":  # until it sleeps in its read
            time.sleep(0.01)
            status = pathlib.Path(f"/proc/{process.pid}/status").read_text()
            caught = int(re.search(r"SigCgt:\s*([0-9a-f]+)", status).group(1), 16)
            state = re.search(r"State:\s*(\S)", status).group(1) if caught & (1 << (signal.SIGINT - 1)) else ""
        process.send_signal(signal.SIGINT)
        process.wait()
        self.assertEqual(process.returncode, 130)
        for pipe in (process.stdin, process.stdout, process.stderr):
            pipe.close()


class RefusesWhatItCannotUse(InFolder):
    def list_of(self, text):
        return self.write("words.txt", text)

    def test_bad_words_are_named_with_file_and_line(self):
        cases = [
            ("Rose\n\nx\n", ["words.txt:3", "'x'", "one letter"]),
            ("Rose\n-\n", ["words.txt:2", "'-'", "no letter"]),
            ("Rose\nA\u2603B\n", ["words.txt:2", "\u2603", "character 2"]),
            ("Rose\n# a comment\nrose\n", ["words.txt:3", "'rose'", "line 1"]),
            ("Pea\nPeanut\nSweet pea\n", ["words.txt:1", "'Pea' stands inside 'Peanut' and inside 'Sweet pea'"]),
            ("Anna\nAnn\n", ["words.txt:2", "'Ann' stands more than once inside 'Anna'"]),
            ("", ["words.txt", "no word"]),
            ("# nothing but a comment\n", ["words.txt", "no word"]),
            (b"Rose\nKal\xe9\n", ["words.txt:2", "UTF-8"]),
            ("Rose\nKa\x07le\n", ["words.txt:2", "control"]),
        ]
        for text, says in cases:
            with self.subTest(text=text):
                self.refused(2, "make", self.list_of(text), says=says)

    def test_a_word_that_is_longer_than_the_grid_allows_in_the_directions(self):
        words = self.list_of("Kale\nArtichoke\n")
        self.refused(2, "make", words, "--grid", "12x5", "--directions", "down", says=["words.txt:2", "Artichoke", "9 letters", "at most 5"])
        self.assertEqual(run("make", words, "--grid", "12x5", "--directions", "right").returncode, 0)

    def test_grids_without_cells_and_grids_beyond_all_bounds(self):
        words = self.list_of("Kale\n")
        for size in ["0x3", "3x0", "-1x5", "100000x100000", "99999999999999999999x2", "15", "15x", "x15", "15x15x15", "a", ""]:
            with self.subTest(size=size):
                self.refused(2, "make", words, "--grid=" + size)

    def test_options_that_are_none(self):
        words = self.list_of("Kale\n")
        for arguments, says in [
            (["--directions", "sideways"], ["sideways"]), (["--directions", ""], ["irection"]), (["--shape", "blob"], ["blob", "heart"]),
            (["--locale", "qq"], ["qq"]), (["--letters", "big"], ["big", "upper"]), (["--seed", "1.5"], ["1.5"]), (["--seed", "99999999999999999999"], ["--seed"]),
            (["--effort", "much"], ["much"]), (["--frob"], ["--frob"]), (["--see", "1"], ["--see"]), (["--grid"], ["--grid"]),
            (["--surface", "first"], ["--surface", "--blank"]), (["--blank", "8x10in"], ["surface"]), (["--blank", "8x10", "--surface", "first"], ["8x10"]),
            (["--blank", "8x10in", "--surface", "both"], ["both"]), (["--recipe", "none.json"], ["none.json"]), (["--options", "none.ini"], ["none.ini"]),
            (["--avoid", "none.txt"], ["none.txt"]), (["--font", "Kale"], ["--blank"]), (["second.txt"], ["second.txt"]),
        ]:
            with self.subTest(arguments=arguments):
                self.refused(2, "make", words, *arguments, says=says)
        self.refused(2, "make", words, "--blank", "8x10in", "--surface", "first", "--font", "No Such Family", "--out", "panel", says=["No Such Family"])
        self.assertEqual(self.names(), ["words.txt"])

    def test_a_number_out_of_its_range_is_told_the_range(self):
        for value in ("-1", "0", "x", "99999999999999999999"):
            result = run("make", SAMPLE, "--threads", value)
            self.assertEqual(result.returncode, 2)
            self.assertIn(b"Give a number from 1 to 1024.", result.stderr)

    def test_nothing_behind_an_equals_sign(self):
        result = run("make", SAMPLE, "--message=")
        self.assertEqual(result.returncode, 2)
        self.assertIn(b"'--message=' has nothing behind the '='", result.stderr)

    def test_names_of_choices_may_have_capitals(self):
        for option, value in (("--letters", "Lower"), ("--shape", "Heart")):
            with_capital = run("make", SAMPLE, "--json", option, value)
            self.assertEqual(with_capital.returncode, 0, with_capital.stderr)
            self.assertEqual(with_capital.stdout, run("make", SAMPLE, "--json", option, value.lower()).stdout)
        self.assertEqual(run("print", SAMPLE, "--page", "A4", "--out", self.folder / "sheet.pdf").returncode, 0)

    def test_pages_into_a_folder_that_is_not_there(self):
        result = run("print", SAMPLE, "--out", self.folder / "beds" / "sheet.pdf")
        self.assertEqual(result.returncode, 2)
        self.assertIn(b"/beds' is no folder.", result.stderr)
        self.assertEqual(os.listdir(self.folder), [])

    def test_files_that_cannot_be_read(self):
        self.refused(2, "make", "missing.txt", says=["missing.txt"])
        self.refused(2, "make", self.folder, says=["folder"])
        self.refused(2, "check", "missing.txt", "--words", "missing.txt", says=["missing.txt"])
        self.refused(2, "cut", "missing.json", "--blank", "8x10in", "--surface", "first", says=["missing.json"])
        self.refused(2, "cut", self.write("p.json", "{}"), "--blank", "8x10in", "--surface", "first", says=["p.json", "format"])
        self.refused(2, "cut", self.write("p.json", "words"), "--blank", "8x10in", "--surface", "first", says=["p.json", "JSON"])

    def test_a_bad_line_of_an_options_file_is_named(self):
        words = self.list_of("Kale\n")
        for text, says in [("seed = 2\n\nseeed = 3\n", ["options.ini", "line 3", "seeed"]), ("# ours\nseed 7\n", ["options.ini", "line 2"])]:
            self.refused(2, "make", words, "--options", self.write("options.ini", text), says=says)

    def test_an_uncertified_puzzle_is_not_drawn_and_its_audit_comes_as_json(self):
        puzzle = json.loads(run("make", SAMPLE, "--json").stdout)
        word = puzzle["words"][0]
        puzzle["cells"][word["placed"]["row"] - 1][word["placed"]["column"] - 1] = "Q"
        name = self.write("puzzle.json", json.dumps(puzzle))
        result = run("cut", name, "--blank", "8x10in", "--surface", "first", "--json", "--out", self.folder / "cut")
        self.assertEqual(result.returncode, 1)
        self.assertIn(word["shown"], json.loads(result.stdout)["missing"])
        self.assertEqual(self.names(), ["puzzle.json"])

    def test_no_verb_and_no_file(self):
        for arguments in [[], ["frob"], ["make"], ["check"], ["cut"]]:
            result = run(*arguments)
            self.assertEqual(result.returncode, 2)
            self.assertIn(b"letterlode", result.stderr)
            self.assertEqual(result.stdout, b"")

    def test_an_avoided_word_inside_a_listed_one_unless_it_is_allowed(self):
        words = self.list_of("Sluggard\nKale\n")
        avoid = self.write("avoid.txt", "slug\n")
        self.refused(2, "make", words, "--avoid", avoid, says=["words.txt:1", "Sluggard", "slug", "--allow"])
        result = run("make", words, "--avoid", avoid, "--allow", "Slug", "--json")
        self.assertEqual(result.returncode, 0, result.stderr)
        self.assertEqual([found["word"] for found in json.loads(result.stdout)["audit"]["allowed"]], ["slug"])

    def test_impossible_is_1_and_so_is_unfinished_and_both_come_as_json(self):
        words = self.list_of("ABC\nDEF\nGHI\nJKL\n")
        result = run("make", words, "--grid", "3x3", "--directions", "all", "--json")
        self.assertEqual(result.returncode, 1)
        self.assertEqual(json.loads(result.stdout)["reason"], "impossible")
        words = self.list_of("court\nbashes\nadmen\nballad\ncrop\ndrapes\nmirror\nsnore\naches\nbundle\nlifted\ncattle\n")
        result = run("make", words, "--grid", "6x6", "--effort", "1000", "--json")
        self.assertEqual(result.returncode, 1)
        self.assertEqual(json.loads(result.stdout)["reason"], "unfinished")


class Tells(unittest.TestCase):
    def test_help_and_version(self):
        for arguments in [["--help"], ["make", "--help"], ["check", "-h"], ["cut", "--help"]]:
            result = run(*arguments)
            self.assertEqual((result.returncode, result.stderr), (0, b""))
            self.assertIn(b"letterlode", result.stdout)
        self.assertRegex(run("--version").stdout.decode(), r"^letterlode \d+\.\d+\.\d+\n$")


if __name__ == "__main__":
    unittest.main(verbosity=2)
