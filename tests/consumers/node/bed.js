// A vegetable bed as a puzzle, in Node.js: made, audited, rated and read cell by cell; then a grid with a fault, words for
// which there is no room, and a list that cannot be used.
"use strict";
const {library: lode, call, DIFFICULTY} = require("./lode.js");

const numbersTo = (end) => Array.from({length: Number(end)}, (_, number) => number);

function recipeOf(words, columns, rows) {
  const [recipe] = call(1, "recipe_create");
  call(0, "recipe_set_words_text", recipe, words.join("\n"), "bed.txt");
  call(0, "recipe_set_grid", recipe, columns, rows);
  return recipe;
}

function printPuzzle(puzzle) {
  for (const row of numbersTo(lode.puzzle_rows(puzzle))) {
    const cells = numbersTo(lode.puzzle_columns(puzzle)).map((column) => lode.puzzle_cell(puzzle, row, column));
    console.log(cells.map((letter) => letter ?? ".").join(" "));  // null: a closed cell
  }
  for (const word of numbersTo(lode.puzzle_word_count(puzzle))) {
    const [row, column, direction] = call(3, "puzzle_placement", puzzle, word);
    console.log(`${lode.puzzle_word(puzzle, word)}: row ${row + 1}, column ${column + 1}, ${lode.direction_name(direction)}`);
  }
}

function printAudit(audit) {
  console.log(lode.audit_is_certified(audit) ? "certified" : "not certified");
  for (const word of numbersTo(lode.audit_word_count(audit)))
    if (lode.audit_copy_count(audit, word) === 0) console.log(`missing: ${lode.audit_word(audit, word)}`);
}

function printRating(rating) {
  console.log(`${lode.rating_level(rating)}, ${lode.rating_fixations(rating).toFixed(0)} fixations`);
  for (const part of numbersTo(lode.rating_part_count(rating, DIFFICULTY))) {
    const value = lode.rating_part_value(rating, DIFFICULTY, part).toFixed(2);
    console.log(`${lode.rating_part(rating, DIFFICULTY, part)}: ${value} ${lode.rating_part_unit(rating, DIFFICULTY, part)}`);
  }
}

function makeAPuzzle(words, columns, rows) {
  const recipe = recipeOf(words, columns, rows);
  const [puzzle, refusal] = call(2, "make", recipe, null);
  lode.recipe_free(recipe);
  if (refusal) return explain(refusal);
  const [audit] = call(1, "audit_puzzle", puzzle);
  const [rating] = call(1, "rate_puzzle", puzzle);
  printPuzzle(puzzle);
  printAudit(audit);
  printRating(rating);
  lode.rating_free(rating);
  lode.audit_free(audit);
  lode.puzzle_free(puzzle);
}

// A refusal is no error, but an answer.
function explain(refusal) {
  console.log(`refused: ${lode.refusal_message(refusal)}`);
  for (const index of numbersTo(lode.refusal_advice_count(refusal)))
    console.log(`advice: ${lode.refusal_advice(refusal, index)}`);
  lode.refusal_free(refusal);
}

function auditAGrid(drawn, words) {
  const recipe = recipeOf(words, 4, 4);
  const [audit] = call(1, "audit_grid_text", drawn, "grid.txt", recipe);
  lode.recipe_free(recipe);
  printAudit(audit);
  lode.audit_free(audit);
}

console.log(`letterlode ${lode.version()}`);
const vegetables = ["Parsnip", "Sweet pea", "Jalapeño", "Leek"];
makeAPuzzle(vegetables, 10, 8);
auditAGrid("LEEK\nOUOA\nSTSX\nIRUE\n", ["Leek", "Kale"]);  // somebody's, in which the L of Kale is an X
makeAPuzzle(vegetables, 8, 3);                             // there is no room

const faulty = recipeOf(["Leek", "Kale 3+4"], 4, 4);
try {
  const [judge] = call(1, "judge_create", faulty);
  lode.judge_free(judge);
} catch (error) {
  console.log(`${error.source}, line ${error.line}, "${error.word}", character ${error.position}: ${error.message}`);
}
lode.recipe_free(faulty);
