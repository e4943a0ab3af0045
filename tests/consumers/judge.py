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

taken, upright = [], 0
for word, line in zip(WORDS, lines[9:13], strict=True):
    name, row, column, direction = re.fullmatch(r"(.+): row (\d+), column (\d+), ([a-z-]+)", line).groups()
    down, across = STEPS[direction]
    letters = [letter for letter in unicodedata.normalize("NFC", word).upper() if letter != " "]
    cells = [(int(row) - 1 + down * step, int(column) - 1 + across * step) for step in range(len(letters))]
    assert name == word and all(0 <= row < 8 and 0 <= column < 10 for row, column in cells), line
    assert [grid[row][column] for row, column in cells] == letters, f"{word} does not stand where it is said to"
    taken += cells
    upright += down != 0

level, fixations = re.fullmatch(r"(\w+), (\d+) fixations", lines[14]).groups()
# README, "rate": under 10 fixations a word is a glance.
assert lines[13] == "certified" and level == "glance" and 0 < int(fixations) < 10 * len(WORDS), lines[13:15]
verdict = lines.index("not certified")
parts = dict(line.split(": ") for line in lines[15:verdict])
counted = {"letters in the grid": "80.00 cells", "words": f"{len(WORDS)}.00 words",
           "length of words": f"{len(taken) / len(WORDS):.2f} letters a word",
           "words not in a row": f"{100 * upright / len(WORDS):.2f} percent",
           "crossings": f"{len(taken) - len(set(taken))}.00 cells"}
assert {part: parts.get(part) for part in counted} == counted, parts
assert lines[verdict + 1] == "missing: Kale", lines[verdict + 1]

refused, *advice, error = lines[verdict + 2:]
# The three long words take the three rows of eight cells. Leek stands in none of them, and other lines have three cells.
assert refused.startswith("refused: ") and all(word in refused for word in WORDS), refused
assert advice and all(line.startswith("advice: ") for line in advice), advice
assert error.startswith('bed.txt, line 2, "Kale 3+4", character 7: ') and "'+'" in error, error
print(f"{len(said)} programs say the same")
