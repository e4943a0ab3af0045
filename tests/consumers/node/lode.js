// What bed.js uses of letterlode, through koffi. `library` holds the functions under their names without the prefix.
"use strict";
const koffi = require("koffi");

const file = koffi.load("libletterlode.so.0.1");  // with the version of the interface that this was written for
for (const kind of ["error", "recipe", "puzzle", "refusal", "audit", "judge", "rating", "control"]) koffi.opaque(`lode_${kind}`);

// As letterlode.h declares them; koffi is told which parameters are out.
const library = {};
const declarations = `
const char* version()
const char* direction_name(int32_t direction)
const char* error_message(const lode_error* error)
const char* error_source(const lode_error* error)
int32_t error_line(const lode_error* error)
int32_t error_position(const lode_error* error)
const char* error_word(const lode_error* error, size_t index)
void error_free(lode_error* error)
int32_t recipe_create(_Out_ lode_recipe** recipe, _Out_ lode_error** error)
int32_t recipe_set_words_text(lode_recipe* recipe, const char* text, const char* source, _Out_ lode_error** error)
int32_t recipe_set_grid(lode_recipe* recipe, int32_t columns, int32_t rows, _Out_ lode_error** error)
void recipe_free(lode_recipe* recipe)
int32_t make(_Out_ lode_puzzle** puzzle, _Out_ lode_refusal** refusal, const lode_recipe* recipe,
  const lode_control* control, _Out_ lode_error** error)
const char* refusal_message(const lode_refusal* refusal)
size_t refusal_advice_count(const lode_refusal* refusal)
const char* refusal_advice(const lode_refusal* refusal, size_t index)
void refusal_free(lode_refusal* refusal)
int32_t puzzle_rows(const lode_puzzle* puzzle)
int32_t puzzle_columns(const lode_puzzle* puzzle)
const char* puzzle_cell(const lode_puzzle* puzzle, int32_t row, int32_t column)
size_t puzzle_word_count(const lode_puzzle* puzzle)
const char* puzzle_word(const lode_puzzle* puzzle, size_t word)
int32_t puzzle_placement(_Out_ int32_t* row, _Out_ int32_t* column, _Out_ int32_t* direction,
  const lode_puzzle* puzzle, size_t word, _Out_ lode_error** error)
void puzzle_free(lode_puzzle* puzzle)
int32_t audit_puzzle(_Out_ lode_audit** audit, const lode_puzzle* puzzle, _Out_ lode_error** error)
int32_t audit_grid_text(_Out_ lode_audit** audit, const char* grid, const char* source, const lode_recipe* recipe, _Out_ lode_error** error)
int32_t judge_create(_Out_ lode_judge** judge, const lode_recipe* recipe, _Out_ lode_error** error)
void judge_free(lode_judge* judge)
int32_t audit_is_certified(const lode_audit* audit)
size_t audit_word_count(const lode_audit* audit)
const char* audit_word(const lode_audit* audit, size_t word)
size_t audit_copy_count(const lode_audit* audit, size_t word)
void audit_free(lode_audit* audit)
int32_t rate_puzzle(_Out_ lode_rating** rating, const lode_puzzle* puzzle, _Out_ lode_error** error)
double rating_fixations(const lode_rating* rating)
const char* rating_level(const lode_rating* rating)
size_t rating_part_count(const lode_rating* rating, int32_t about)
const char* rating_part(const lode_rating* rating, int32_t about, size_t part)
double rating_part_value(const lode_rating* rating, int32_t about, size_t part)
const char* rating_part_unit(const lode_rating* rating, int32_t about, size_t part)
void rating_free(lode_rating* rating)`;
for (const declaration of declarations.trim().split(/\n(?! )/)) {
  const [, result, name, parameters] = declaration.match(/^(.*?)(\w+)(\(.*)$/s);
  library[name] = file.func(`${result}lode_${name}${parameters}`);
}

// What a call that failed has to say: where, about which word, and why.
class LodeError extends Error {
  constructor(error) {
    super(library.error_message(error));
    this.source = library.error_source(error);
    this.line = library.error_line(error);
    this.position = library.error_position(error);
    this.word = library.error_word(error, 0);
    library.error_free(error);
  }
}

// Calls what takes an error last, which it throws; returns what came out of the first parameters, `results` of them.
function call(results, name, ...parameters) {
  const out = Array.from({length: results}, () => [null]);
  const error = [null];
  library[name](...out, ...parameters, error);
  if (error[0]) throw new LodeError(error[0]);
  return out.map(([result]) => result);
}

const DIFFICULTY = 1;  // LODE_DIFFICULTY

module.exports = {library, call, DIFFICULTY};
