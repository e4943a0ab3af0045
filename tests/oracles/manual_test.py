#!/usr/bin/env python3
"""The manual page and what shells complete by, which are written when the program is built: man, bash and zsh read them, and every
option, every choice and every example is tried with the program itself."""
import os
import pathlib
import re
import subprocess
import sys
import unittest

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1]))
sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent))
from program import ROOT, InFolder, run  # noqa: E402
from zsh import Zsh  # noqa: E402

MANUAL = pathlib.Path(os.environ["LODE_MANUAL"])
SAMPLES = ROOT / "data/samples"


def verbs():
    return re.findall(r"^  letterlode (\w+) ", run("--help").stdout.decode(), re.MULTILINE)


def options_of(verb):
    return re.findall(r"^  (?:-\w \[ )?(--[\w-]+)", run(verb, "--help").stdout.decode(), re.MULTILINE)


def rendered():
    """The page as a terminal of 80 columns shows it, and what man says of it."""
    environment = {**os.environ, "LC_ALL": "C.UTF-8", "MANWIDTH": "80", "MANROFFSEQ": ""}
    shown = subprocess.run(["man", "--warnings", "-E", "UTF-8", "-P", "cat", "-l", str(MANUAL)], env=environment, capture_output=True,
                           check=True)
    return shown.stdout.decode(), shown.stderr.decode()


def sections(text):
    """What stands below each heading of a page."""
    parts = re.split(r"^([A-Z][A-Z ]+)$", text, flags=re.MULTILINE)
    return dict(zip(parts[1::2], parts[2::2]))


def in_one_line(text):
    return " ".join(text.split())


class ManualTest(InFolder):
    def test_man_shows_it_without_a_warning_in_80_columns(self):
        shown, said = rendered()
        self.assertEqual(said, "")
        self.assertEqual([line for line in shown.splitlines() if len(line) > 80], [])
        # man warns at all.
        broken = self.write("broken.1", '.TH B 1\n.SH NAME\nb \\- c\n.no-such-macro\n')
        said = subprocess.run(["man", "--warnings", "-E", "UTF-8", "-Tutf8", "-Z", "-l", str(broken)], capture_output=True).stderr
        self.assertIn(b"no-such-macro", said)

    def test_whatis_finds_its_name(self):
        self.assertRegex(subprocess.run(["lexgrog", str(MANUAL)], capture_output=True, check=True).stdout.decode(),
                         r'"letterlode - .*puzzle')

    def test_each_verb_has_a_section_with_all_its_options_and_no_others(self):
        shown = sections(rendered()[0])
        self.assertGreaterEqual(len(verbs()), 5)
        for verb in verbs():
            with self.subTest(verb):
                told = re.findall(r"^ {7}(?:-\w, )?(--[\w-]+)", shown[verb.upper()], re.MULTILINE)
                self.assertEqual(told, options_of(verb))

    def test_exit_codes_and_cautions_are_those_of_the_readme(self):
        shown = sections(rendered()[0])
        readme = (ROOT / "README.md").read_text("utf-8")
        codes = re.findall(r"^\| (\d+) \| (.*) \|$", readme, re.MULTILINE)
        self.assertEqual([code for code, _ in codes], ["0", "1", "2", "3", "130"])
        for code, meaning in codes:
            self.assertIn(f"{code} {meaning}", in_one_line(shown["EXIT STATUS"]))
        cautions = readme.split("## Before you cut")[1].split("\n## ")[0]
        self.assertIn("hydrogen chloride", cautions)
        for caution in re.split(r"\n- ", cautions):
            self.assertIn(in_one_line(caution), in_one_line(shown["CAUTIONS"]))

    def test_its_examples_work(self):
        for sample in SAMPLES.iterdir():
            self.write(sample.name, sample.read_bytes())
        source = MANUAL.read_text("ascii").split(".SH EXAMPLES")[1].split(".SH ")[0]
        examples = re.findall(r"^\.EX\n(.*?)^\.EE$", source, re.MULTILINE | re.DOTALL)
        self.assertGreaterEqual(len(examples), 4)
        for example in examples:
            script = example.replace(r"\-", "-").replace(r"\(aq", "'").replace(r"\e", "\\")
            with self.subTest(script):
                done = subprocess.run(["bash", "-euo", "pipefail", "-c", 'letterlode() { "$LETTERLODE" "$@"; }\n' + script],
                                      cwd=self.folder, capture_output=True)
                self.assertEqual(done.returncode, 0, done.stderr)


# compopt sets how bash goes on after the word; it works only while bash completes, and is noted here instead.
DRIVER = r'''source "$LODE_COMPLETION"
compopt() { noted+=("$2"); }
noted=() COMP_WORDS=(letterlode "$@") COMP_CWORD=$#
_letterlode
printf '%s\n' "${COMPREPLY[@]}" --- "${noted[@]}"'''


def completion(*words, cwd=None):
    """What bash offers for the last of these words of a call, which it has parted at '=' already, and how it goes on."""
    done = subprocess.run(["bash", "-uo", "pipefail", "-c", DRIVER, "bash", *words], cwd=cwd, capture_output=True, check=True)
    if done.stderr:
        raise AssertionError(done.stderr.decode())
    lines = [line for line in done.stdout.decode().splitlines() if line]
    return lines[:lines.index("---")], lines[lines.index("---") + 1:]


def completed(*words, cwd=None):
    return completion(*words, cwd=cwd)[0]


def choices(empty_folder):
    """Each option for which bash offers words, with a verb that has it and the words."""
    seen = set()
    for verb in verbs():
        for option in options_of(verb):
            words = completed(verb, "x", option, "", cwd=empty_folder)
            if words and (option, *words) not in seen:
                seen.add((option, *words))
                yield verb, option, words


# What else must be given for an option to be taken.
PANEL = ["--blank", "8x10in", "--surface", "first"]
DRAWN = [*PANEL, "--out", "drawn", "--replace"]
BESIDE = {"--surface": ["--blank", "8x10in"], "--font": DRAWN, "--heading-font": [*DRAWN, "--heading", "Wrenbarrow"], "--band": PANEL,
          "--inlay": PANEL, "--colour": PANEL, "--border": PANEL, "--ornament": PANEL, "--paper": DRAWN,
          "--message-then": ["--message", "Well grown"], "--keep": ["--from", "puzzle.json"]}
# How a choice goes on that is only the beginning of a value.
REST = {"--crossings": {"at-least": " 2"}, "--colour": {"": "gold"}}
# Options that take other values as well, and say of those what is wrong with them.
TAKES_MORE = {"--avoid", "--font", "--heading-font", "--grid", "--colours"}


class CompletionTest(InFolder):
    def setUp(self):
        super().setUp()
        self.write("puzzle.json", run("make", SAMPLES / "herb-bed.txt", "--json").stdout)
        self.write("words.txt", (SAMPLES / "herb-bed.txt").read_bytes())
        (self.folder / "garden shed").mkdir()

    def answer(self, verb, option, value):
        """How the program takes an option's value: its exit code, and what it says."""
        beside = BESIDE.get(option, [])
        if verb == "print":
            beside = ["--out", "printed.pdf", "--replace"]
        done = run(verb, "words.txt", f"{option}={value}", *beside, cwd=self.folder)
        return done.returncode, done.stderr.decode()

    def test_it_is_entered_for_the_program(self):
        entered = subprocess.run(["bash", "-c", 'source "$LODE_COMPLETION"; complete -p letterlode'], capture_output=True, check=True).stdout
        self.assertEqual(entered.decode().strip(), "complete -F _letterlode letterlode")

    def test_verbs_are_completed_first(self):
        self.assertEqual(completed(""), [*verbs(), "--help", "--version"])
        self.assertEqual(completed("ma"), ["make"])
        self.assertEqual(completed("no-verb", "--"), [])

    def test_all_options_of_the_verb_are_completed_and_no_others(self):
        for verb in verbs():
            with self.subTest(verb):
                self.assertEqual(completed(verb, "x", "--"), options_of(verb))
        self.assertEqual(completed("make", "x", "--look"), ["--look-alikes"])
        self.assertEqual(completed("check", "x", "--look"), [])

    def test_the_program_takes_every_choice_and_names_it_where_it_refuses_another(self):
        options = set()
        for verb, option, words in choices(self.folder / "garden shed"):
            options.add(option)
            code, refusal = self.answer(verb, option, "no-such-choice" + ("=gold" if option == "--colour" else ""))
            self.assertEqual(code, 2, f"{verb} {option}")
            for word in words:
                with self.subTest(f"{verb} {option} {word}"):
                    rest = REST.get(option, {})
                    code, said = self.answer(verb, option, word + rest.get(word, rest.get("", "")))
                    self.assertEqual(code, 0, said)
                    if option not in TAKES_MORE:
                        self.assertIn(word.rstrip("="), refusal)
        self.assertGreater(len(options), 25)

    def test_known_choices_are_among_them(self):
        self.assertEqual(completed("make", "x", "--surface", ""), ["first", "second"])
        self.assertEqual(completed("make", "x", "--border", "do"), ["double", "dotted"])
        self.assertEqual(completed("print", "x", "--page", ""), ["a4", "letter"])
        self.assertEqual(completed("make", "x", "--shape", "he", cwd=self.folder), ["heart"])
        self.assertEqual(completion("make", "x", "--colour", "b"), (["bands=", "border="], ["nospace"]))

    def test_a_value_after_an_equals_sign(self):
        self.assertEqual(completed("make", "x", "--marks", "="), ["keep", "strip"])
        self.assertEqual(completed("make", "x", "--marks", "=", "st"), ["strip"])
        self.assertEqual(completed("make", "x", "--colour", "bands", "=", "go"), [])

    def test_a_list_with_commas(self):
        self.assertEqual(completion("make", "x", "--directions", "right,down-"),
                         (["right,down-right", "right,down-left"], ["nospace"]))

    def test_files_where_a_file_is_expected(self):
        everything = ["garden shed", "puzzle.json", "words.txt"]
        for words in (["make"], ["check", "x", "--words"], ["make", "x", "--recipe"], ["print", "x"], ["print", "x", "--name-line"]):
            with self.subTest(words):
                self.assertEqual(sorted(completed(*words, "", cwd=self.folder)), everything)
        self.assertEqual(completion("make", "x", "--out", "", cwd=self.folder), (["garden shed"], ["filenames"]))
        self.assertEqual(completed("make", "x", "--avoid", "", cwd=self.folder)[0], "none")
        self.assertEqual(completed("make", "x", "--shape", "wo", cwd=self.folder), ["words.txt"])

    def test_nothing_where_nobody_can_guess(self):
        for option in ("--seed", "--heading", "--pin", "--locale"):
            self.assertEqual(completed("make", "x", option, "", cwd=self.folder), [])


class ZshTest(InFolder):
    """Choices are tried with the program above: here zsh need only offer what bash does."""

    def setUp(self):
        super().setUp()
        (self.folder / "of-the-test").mkdir()
        (self.folder / "garden").mkdir()
        (self.folder / "garden/beds").mkdir()
        (self.folder / "garden/words.txt").touch()
        self.zsh = Zsh(os.environ["LODE_COMPLETION_OF_ZSH"], self.folder / "of-the-test", self.folder / "garden")
        self.addCleanup(self.zsh.close)

    def offered(self, line):
        return self.zsh.offered("letterlode " + line)

    def test_verbs_and_options(self):
        self.assertEqual(self.offered(""), [*verbs(), "--help", "--version"])
        for verb in verbs():
            self.assertEqual(sorted(self.offered(verb + " x --")), sorted(options_of(verb)))

    def test_it_offers_the_choices_that_bash_offers(self):
        for verb, option, words in choices(self.folder / "garden/beds"):
            with self.subTest(f"{verb} {option}"):
                offered = self.offered(f"{verb} x {option} ")
                self.assertEqual(offered[:len(words)], words)
                self.assertLessEqual(set(offered[len(words):]), {"beds", "words.txt"})
                self.assertEqual(self.offered(f"{verb} x {option}={words[-1][:2]}"), [word for word in words if word.startswith(words[-1][:2])])

    def test_lists_files_and_folders(self):
        self.assertEqual(self.offered("make x --directions right,down-"), ["down-right", "down-left"])
        self.assertEqual(set(self.offered("make x --out ")), {"beds"})
        for line in ("make ", "check x --words ", "print words.txt "):
            self.assertEqual(self.offered(line), ["beds", "words.txt"])

    def test_nothing_where_nobody_can_guess_and_no_second_file(self):
        for line in ("make x --seed ", "make x --heading ", "print x --name-line="):
            self.assertEqual(self.offered(line), [])
        self.assertNotIn("words.txt", self.offered("make x "))


if __name__ == "__main__":
    unittest.main()
