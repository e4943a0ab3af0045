#!/usr/bin/python3
"""letterlode check as an editor or a script calls it."""
import json
import os
import pty
import signal
import subprocess
import time
import unittest

from program import InFolder, PROGRAM, ROOT, SAMPLE, run


class ChecksAGrid(InFolder):
    def test_finds_the_sample_grid_right_and_its_altered_copy_wrong(self):
        words = ROOT / "data/samples/herb-bed.txt"
        right = run("check", ROOT / "data/samples/herb-bed-grid.txt", "--words", words)
        self.assertEqual(right.returncode, 0, right.stdout)
        wrong = run("check", ROOT / "data/samples/herb-bed-grid-stray.txt", "--words", words)
        self.assertEqual(wrong.returncode, 1)
        self.assertIn(b"STRAY", wrong.stdout)
        audit = json.loads(run("check", ROOT / "data/samples/herb-bed-grid-stray.txt", "--words", words, "--json").stdout)
        self.assertFalse(audit["certified"])
        self.assertEqual(sum(len(word["stray"]) for word in audit["words"]), 1)

    def test_catches_every_planted_fault(self):
        puzzle = json.loads(run("make", SAMPLE, "--grid", "18x18", "--json").stdout)
        filler = self.filler_cells(puzzle)

        def checked(change):
            altered = json.loads(json.dumps(puzzle))
            change(altered)
            result = run("check", "-", "--json", stdin=json.dumps(altered).encode())
            self.assertEqual(result.returncode, 1, result.stdout)
            return json.loads(result.stdout)

        word = puzzle["words"][0]
        row, column = word["placed"]["row"] - 1, word["placed"]["column"] - 1

        def change_letter(altered):
            altered["cells"][row][column] = "Q" if word["letters"][0] != "Q" else "Z"
        self.assertIn(word["shown"], checked(change_letter)["missing"])

        def move_placement(altered):
            altered["words"][0]["placed"].update(row=9, column=9, direction="down")
        audit = checked(move_placement)
        self.assertEqual([found["shown"] for found in audit["words"] if found["stray"]], [word["shown"]])

        def write(text):
            for length, (row, column) in filler:
                if length >= len(text):
                    def alter(altered):
                        altered["cells"][row][column:column + len(text)] = list(text)
                    return alter
            raise AssertionError("the puzzle has no room for the fault")
        audit = checked(write("KALE"))
        self.assertEqual([found["shown"] for found in audit["words"] if found["stray"]], ["Kale"])

        avoid = self.write("avoid.txt", "slug\n")
        altered = json.loads(json.dumps(puzzle))
        write("SLUG"[::-1])(altered)
        result = run("check", "-", "--avoid", avoid, "--json", stdin=json.dumps(altered).encode())
        self.assertEqual(result.returncode, 1)
        self.assertEqual([found["word"] for found in json.loads(result.stdout)["avoided"]], ["slug"])

    def filler_cells(self, puzzle):
        """Runs of filler along rows, longest first: (length, (row, column))."""
        steps = {"right": (0, 1), "down": (1, 0), "down-right": (1, 1), "up-right": (-1, 1)}
        taken = set()
        for word in puzzle["words"]:
            down, right = steps[word["placed"]["direction"]]
            for at in range(len(word["letters"])):
                taken.add((word["placed"]["row"] - 1 + at * down, word["placed"]["column"] - 1 + at * right))
        runs = []
        for row in range(puzzle["rows"]):
            length = 0
            for column in range(puzzle["columns"] + 1):
                if column < puzzle["columns"] and (row, column) not in taken:
                    length += 1
                else:
                    runs.append((length, (row, column - length)))
                    length = 0
        return sorted(runs, reverse=True)

    def test_takes_text_with_and_without_blanks_byte_order_mark_and_carriage_returns(self):
        words = self.write("words.txt", "kale\nleek\n")
        grids = ["KALE\nXXXX\nLEEK\n", "k a l e\nx x x x\nl e e k", "\n\nKALE\r\nXX.X\r\nLEEK\r\n\r\n", "\ufeffK A L E\nX · # X\nL E E K\n"]
        for grid in grids:
            result = run("check", "-", "--words", words, stdin=grid.encode())
            self.assertEqual(result.returncode, 0, (grid, result.stdout, result.stderr))

    def test_names_the_row_and_column_of_what_is_no_grid(self):
        words = self.write("words.txt", "kale\n")
        for grid, says in [("KALE\nKAL\n", ["row 2", "3 cells"]), ("KALE\nKA!E\n", ["row 2", "column 3", "!"]), ("KALE\n\nKALE\n", ["blank line", "after row 1"]),
                           ("", ["nothing"]), (b"KALE\nKA\xffE\n", ["UTF-8"])]:
            name = self.write("grid.txt", grid)
            self.refused(2, "check", name, "--words", words, says=["grid.txt", *says])


class TellsWhatItFoundInAGrid(InFolder):
    HERBS = ROOT / "data/samples/herb-bed.txt"
    STRAY = ROOT / "data/samples/herb-bed-grid-stray.txt"

    def on_a_terminal(self, *arguments, environment):
        """What the program prints to a terminal."""
        own, its = pty.openpty()
        process = subprocess.Popen([PROGRAM, *map(str, arguments)], stdin=subprocess.DEVNULL, stdout=its, stderr=its,
                                   env={**os.environ, "TERM": "xterm", "NO_COLOR": "", **environment})
        os.close(its)
        printed = b""
        while True:
            try:
                part = os.read(own, 65536)
            except OSError:  # the other end is closed
                part = b""
            if not part:
                break
            printed += part
        os.close(own)
        return process.wait(), printed

    def test_marks_findings_in_brackets_and_on_a_terminal_in_colours_unless_it_is_told_not_to(self):
        piped = run("check", self.STRAY, "--words", self.HERBS)
        self.assertIn(b"\n 3  B  A  S  I  L  O [E] L  T  I\n", piped.stdout)
        self.assertNotIn(b"\x1b", piped.stdout)
        code, shown = self.on_a_terminal("check", self.STRAY, "--words", self.HERBS, environment={})
        self.assertEqual(code, 1)
        self.assertIn(b"\x1b[1;7;31m E \x1b[0m", shown)
        for plain in [{"NO_COLOR": "1"}, {"TERM": "dumb"}]:
            code, shown = self.on_a_terminal("check", self.STRAY, "--words", self.HERBS, environment=plain)
            self.assertNotIn(b"\x1b", shown)
            self.assertIn(b"[E]", shown)

    def test_words_by_chance_are_told_and_are_no_finding(self):
        words = self.write("words.txt", "kale\n")
        grid = self.write("grid.txt", "KALE\nOAKS\n")
        dictionary = self.write("dictionary.txt", "oak\noaks\nkale\nale\nsoak\n")
        result = run("check", grid, "--words", words, "--dictionary", dictionary)
        self.assertEqual(result.returncode, 0, result.stderr)
        self.assertIn(b"by chance", result.stdout)
        audit = json.loads(run("check", grid, "--words", words, "--dictionary", dictionary, "--chance-letters", "3", "--json").stdout)
        self.assertTrue(audit["certified"])
        self.assertEqual([(found["word"], found["row"], found["column"], found["direction"]) for found in audit["chance"]],
                         [("oaks", 2, 1, "right"), ("oak", 2, 1, "right")])
        self.refused(2, "check", grid, "--words", words, "--chance-letters", "3", says=["--dictionary"])
        self.refused(2, "check", grid, "--words", words, "--dictionary", self.write("none.txt", "\n"), says=["none.txt", "no word"])
        self.refused(2, "check", grid, "--words", words, "--dictionary", self.folder / "missing.txt", says=["missing.txt"])

    def test_reads_the_list_under_the_grid_from_a_file_and_from_standard_input(self):
        page = "k;a;l;e\nx;x;x;x\nl;e;e;k\n\nKale;Leek\n"
        for arguments, stdin in [((self.write("page.csv", page),), b""), (("-",), page.encode())]:
            result = run("check", *arguments, "--words", "-", stdin=stdin)
            self.assertEqual(result.returncode, 0, result.stderr)
            self.assertIn(b"each of the 2 words", result.stdout)
        self.refused(2, "check", self.write("bare.txt", "KALE\nLEEK\n"), "--words", "-", says=["bare.txt:2", "no list of words"])
        made = run("make", self.HERBS, "--json").stdout
        self.refused(2, "check", self.write("made.json", made), "--words", "-", says=["brings its own words"])

    def test_what_make_writes_as_text_is_certified_by_its_own_list(self):
        for number, shape in enumerate(["rectangle", "heart", "star"]):
            folder = self.folder / f"made{number}"
            self.assertEqual(run("make", self.HERBS, "--shape", shape, "--out", folder).returncode, 0)
            result = run("check", folder / "puzzle.txt", "--words", "-")
            self.assertEqual(result.returncode, 0, result.stdout + result.stderr)

    def test_a_cell_of_a_puzzle_holds_one_letter(self):
        puzzle = json.loads(run("make", self.HERBS, "--json").stdout)
        for held in ["CAT", "ZZ", "SS"]:
            puzzle["cells"][0][0] = held
            result = self.refused(2, "check", self.write("puzzle.json", json.dumps(puzzle)), says=["cells[1][1]", "no single letter"])
            self.assertEqual(result.stdout, b"")

    def test_a_puzzle_that_is_given_for_a_list_is_called_one(self):
        made = self.write("made.json", run("make", self.HERBS, "--json").stdout)
        self.refused(2, "make", made, says=["made.json", "JSON", "--recipe"])

    def test_threads_change_nothing(self):
        self.assertEqual(run("check", self.STRAY, "--words", self.HERBS, "--threads", "3").stdout,
                         run("check", self.STRAY, "--words", self.HERBS).stdout)
        self.refused(2, "check", self.STRAY, "--words", self.HERBS, "--threads", "0", says=["--threads"])

    def test_an_interrupt_ends_a_long_search(self):
        grid = self.write("grid.txt", ("A" * 4000 + "\n") * 4000)
        words = self.write("words.txt", "kale\n")
        dictionary = self.write("dictionary.txt", "".join("A" * length + "\n" for length in range(4, 400)))
        process = subprocess.Popen([PROGRAM, "check", grid, "--words", words, "--dictionary", dictionary, "--json"],
                                   stdin=subprocess.DEVNULL, stdout=subprocess.PIPE, stderr=subprocess.PIPE)
        time.sleep(2)
        process.send_signal(signal.SIGINT)
        printed, said = process.communicate()
        self.assertEqual(process.returncode, 130)
        self.assertIn(b"interrupted", said)
        self.assertEqual(json.loads(printed)["reason"], "unfinished")


if __name__ == "__main__":
    unittest.main()
