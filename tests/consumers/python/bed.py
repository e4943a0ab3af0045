#!/usr/bin/env python3
"""A vegetable bed as a puzzle, in Python: made, audited, rated and read cell by cell; then a grid with a fault, words
for which there is no room, and a list that cannot be used.
"""
import ctypes

from lode import DIFFICULTY, Error, Handle, call, library as lode, made


def recipe_of(words, columns, rows):
    recipe = made("recipe", lode.lode_recipe_create)
    call(lode.lode_recipe_set_words_text, recipe, "\n".join(words).encode(), b"bed.txt")
    call(lode.lode_recipe_set_grid, recipe, columns, rows)
    return recipe


def make(recipe):
    """A puzzle and a refusal, one of which is NULL."""
    puzzle, refusal = Handle("puzzle"), Handle("refusal")
    call(lode.lode_make, puzzle, refusal, recipe, None)
    return puzzle, refusal


def print_puzzle(puzzle):
    for row in range(lode.lode_puzzle_rows(puzzle)):
        cells = (lode.lode_puzzle_cell(puzzle, row, column) for column in range(lode.lode_puzzle_columns(puzzle)))
        print(*("." if cell is None else cell.decode() for cell in cells))  # None: a closed cell
    for word in range(lode.lode_puzzle_word_count(puzzle)):
        row, column, direction = ctypes.c_int32(), ctypes.c_int32(), ctypes.c_int32()
        call(lode.lode_puzzle_placement, row, column, direction, puzzle, word)
        print(f"{lode.lode_puzzle_word(puzzle, word).decode()}: row {row.value + 1}, column {column.value + 1}, "
              f"{lode.lode_direction_name(direction).decode()}")


def print_audit(audit):
    print("certified" if lode.lode_audit_is_certified(audit) else "not certified")
    for word in range(lode.lode_audit_word_count(audit)):
        if lode.lode_audit_copy_count(audit, word) == 0:
            print("missing:", lode.lode_audit_word(audit, word).decode())


def print_rating(rating):
    print(f"{lode.lode_rating_level(rating).decode()}, {lode.lode_rating_fixations(rating):.0f} fixations")
    for part in range(lode.lode_rating_part_count(rating, DIFFICULTY)):
        name, unit = lode.lode_rating_part(rating, DIFFICULTY, part), lode.lode_rating_part_unit(rating, DIFFICULTY, part)
        print(f"{name.decode()}: {lode.lode_rating_part_value(rating, DIFFICULTY, part):.2f} {unit.decode()}")


print("letterlode", lode.lode_version().decode())
vegetables = ["Parsnip", "Sweet pea", "Jalapeño", "Leek"]
puzzle, _ = make(recipe_of(vegetables, 10, 8))
print_puzzle(puzzle)
print_audit(made("audit", lode.lode_audit_puzzle, puzzle))
print_rating(made("rating", lode.lode_rate_puzzle, puzzle))

# In somebody's grid the L of Kale is an X.
grid = b"LEEK\nOUOA\nSTSX\nIRUE\n"
print_audit(made("audit", lode.lode_audit_grid_text, grid, b"grid.txt", recipe_of(["Leek", "Kale"], 4, 4)))

# There is no room: that is no error, but an answer.
_, refusal = make(recipe_of(vegetables, 8, 3))
print("refused:", lode.lode_refusal_message(refusal).decode())
for index in range(lode.lode_refusal_advice_count(refusal)):
    print("advice:", lode.lode_refusal_advice(refusal, index).decode())

try:
    made("judge", lode.lode_judge_create, recipe_of(["Leek", "Kale 3+4"], 4, 4))
except Error as error:
    print(f'{error.source}, line {error.line}, "{error.word}", character {error.position}: {error}')
