#include "c/making.hpp"

using namespace lode::c;

namespace {

const lode::PlacedWord* word_of(const lode_puzzle* puzzle, std::size_t word) {
    return puzzle ? at(puzzle->puzzle.words, word) : nullptr;
}

}  // namespace

std::int32_t lode_puzzle_from_json(lode_puzzle** puzzle, const char* json, const char* source,
                                   lode_error** error) {
    clear(puzzle);
    return guarded(__func__, error, [&] {
        auto& result = need(puzzle, "puzzle");
        auto read = taken(lode::puzzle_from_json(text(json, "json"), source_name(source)));
        result = new_puzzle(std::move(read));
        return LODE_OK;
    });
}

std::int32_t lode_puzzle_copy(lode_puzzle** copy, const lode_puzzle* puzzle, lode_error** error) {
    clear(copy);
    return guarded(__func__, error, [&] {
        auto& result = need(copy, "copy");
        result = new_puzzle(need(puzzle, "puzzle").puzzle);
        return LODE_OK;
    });
}

std::int32_t lode_puzzle_rows(const lode_puzzle* puzzle) {
    return puzzle ? puzzle->puzzle.grid.grid.size().rows : 0;
}

std::int32_t lode_puzzle_columns(const lode_puzzle* puzzle) {
    return puzzle ? puzzle->puzzle.grid.grid.size().columns : 0;
}

const char* lode_puzzle_cell(const lode_puzzle* puzzle, std::int32_t row, std::int32_t column) {
    return puzzle ? cell_of(puzzle->puzzle.grid, row, column) : nullptr;
}

std::int32_t lode_puzzle_cells(const char* const** cells, const lode_puzzle* puzzle, lode_error** error) {
    return give_cells(__func__, cells, puzzle, "puzzle", error,
                      [](const lode_puzzle& its) -> const lode::LetteredGrid& { return its.puzzle.grid; });
}

std::size_t lode_puzzle_word_count(const lode_puzzle* puzzle) {
    return puzzle ? puzzle->puzzle.words.size() : 0;
}

const char* lode_puzzle_word(const lode_puzzle* puzzle, std::size_t word) {
    const auto* placed = word_of(puzzle, word);
    return placed ? placed->shown.c_str() : nullptr;
}

std::size_t lode_puzzle_word_length(const lode_puzzle* puzzle, std::size_t word) {
    const auto* placed = word_of(puzzle, word);
    return placed ? placed->letters.size() : 0;
}

const char* lode_puzzle_word_letter(const lode_puzzle* puzzle, std::size_t word, std::size_t letter) {
    const auto* placed = word_of(puzzle, word);
    return placed ? entry(placed->letters, letter) : nullptr;
}

const char* lode_puzzle_word_inside(const lode_puzzle* puzzle, std::size_t word) {
    const auto* placed = word_of(puzzle, word);
    return placed ? placed->inside.c_str() : nullptr;
}

std::int32_t lode_puzzle_placement(std::int32_t* row, std::int32_t* column, std::int32_t* direction,
                                   const lode_puzzle* puzzle, std::size_t word, lode_error** error) {
    for (auto* result : {row, column, direction}) clear(result);
    return guarded(__func__, error, [&] {
        need(row, "row");
        need(column, "column");
        need(direction, "direction");
        const auto& placed = need_at(need(puzzle, "puzzle").puzzle.words, word, "word").placed;
        *row = placed.first.row;
        *column = placed.first.column;
        *direction = static_cast<std::int32_t>(placed.direction);
        return LODE_OK;
    });
}

std::uint64_t lode_puzzle_seed(const lode_puzzle* puzzle) {
    return puzzle ? puzzle->puzzle.recipe.seed : 0;
}

std::int32_t lode_puzzle_is_certified(const lode_puzzle* puzzle) {
    return puzzle && puzzle->puzzle.audit.certified ? 1 : 0;
}

std::int32_t lode_puzzle_recipe(lode_recipe** recipe, const lode_puzzle* puzzle, lode_error** error) {
    clear(recipe);
    return guarded(__func__, error, [&] {
        auto& result = need(recipe, "recipe");
        result = new lode_recipe{need(puzzle, "puzzle").puzzle.recipe, {}};
        return LODE_OK;
    });
}

std::int32_t lode_puzzle_json(const char** json, const lode_puzzle* puzzle, lode_error** error) {
    return give_kept(__func__, json, "json", puzzle, "puzzle", &lode_puzzle::json, error,
                     [](const lode_puzzle& its) { return lode::to_json(its.puzzle); });
}

std::int32_t lode_puzzle_text(const char** text, const lode_puzzle* puzzle, lode_error** error) {
    return give_kept(__func__, text, "text", puzzle, "puzzle", &lode_puzzle::text, error,
                     [](const lode_puzzle& its) { return lode::puzzle_text(its.puzzle); });
}

std::int32_t lode_puzzle_key_text(const char** text, const lode_puzzle* puzzle, lode_error** error) {
    return give_kept(__func__, text, "text", puzzle, "puzzle", &lode_puzzle::key_text, error,
                     [](const lode_puzzle& its) { return lode::key_text(its.puzzle); });
}

void lode_puzzle_free(lode_puzzle* puzzle) {
    delete puzzle;
}
