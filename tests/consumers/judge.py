#!/usr/bin/env python3
"""judge.py MADE SAID...: what the strangers' programs printed is the same, and true.

MADE is what the program letterlode makes of the same words. Each placement is read again in the grid, letter by letter.
"""
import pathlib
import re
import sys
import unicodedata

STEPS = {"right": (0, 1), "down": (1, 0), "down-right": (1, 1), "up-right": (-1, 1)}
WORDS = ["Parsnip", "Sweet pea", "Jalapeño", "Leek"]

made, *said = (pathlib.Path(name) for name in sys.argv[1:])
text = said[0].read_text("utf-8")
others = [path.name for path in said[1:] if path.read_text("utf-8") != text]
assert not others, f"{', '.join(others)} say something else than {said[0].name}, which says\n{text}"

lines = text.splitlines()
assert re.fullmatch(r"letterlode \d+\.\d+\.\d+", lines[0]), lines[0]
grid = [line.split(" ") for line in lines[1:9]]
assert lines[1:9] == made.read_text("utf-8").splitlines()[:8], "the program makes another puzzle"
assert all(len(row) == 10 for row in grid)

for word, line in zip(WORDS, lines[9:13], strict=True):
    name, row, column, direction = re.fullmatch(r"(.+): row (\d+), column (\d+), ([a-z-]+)", line).groups()
    down, across = STEPS[direction]
    letters = [letter for letter in unicodedata.normalize("NFC", word).upper() if letter != " "]
    cells = [(int(row) - 1 + down * step, int(column) - 1 + across * step) for step in range(len(letters))]
    assert name == word and all(0 <= row < 8 and 0 <= column < 10 for row, column in cells), line
    assert [grid[row][column] for row, column in cells] == letters, f"{word} does not stand where it is said to"

level, fixations = re.fullmatch(r"(\w+), (\d+) fixations", lines[14]).groups()
# README, "rate": under 10 fixations a word is a glance.
assert lines[13] == "certified" and level == "glance" and 0 < int(fixations) < 10 * len(WORDS), lines[13:15]
assert lines[15:17] == ["not certified", "missing: Kale"], lines[15:17]
# The three long words take the three rows of eight cells. Leek stands in none of them, and other lines have three cells.
assert lines[17].startswith("refused: ") and all(word in lines[17] for word in WORDS), lines[17]
assert lines[18].startswith("advice: "), lines[18]
assert lines[-1].startswith('bed.txt, line 2, "Kale 3+4": ') and "'+'" in lines[-1], lines[-1]
print(f"{len(said)} programs say the same")
