#pragma once
// What stands behind the opaque handles.

#include <atomic>
#include <memory>
#include <vector>

#include <letterlode/letterlode.h>
#include <letterlode/puzzle.hpp>

#include "c/error.hpp"
#include "c/list.hpp"

struct lode_recipe {
    lode::Recipe recipe;
    lode::c::KeptText json;  // void once the recipe changes
};

struct lode_control {
    std::atomic<bool> cancelled{false};
    lode_progress progress = nullptr;
    void* user = nullptr;
    unsigned threads = 1;
};

struct lode_maker {
    lode::CheckedRecipe checked;
};

struct lode_puzzle {
    lode::Puzzle puzzle;
    lode::c::KeptText json;
    lode::c::KeptText text;
    lode::c::KeptText key_text;
    lode::c::KeptCells cells;
};

struct lode_puzzles {
    // A ranked list has the puzzles of the one that it was made from.
    std::vector<std::shared_ptr<const lode_puzzle>> puzzles;
    std::vector<double> fixations;           // of versions
    std::size_t tried = 0;                   // for versions
    std::size_t shared_places = 0;           // of versions
    std::vector<lode::RankedPuzzle> ranked;  // of a ranked list, by place
    lode::c::KeptText json;
};

struct lode_refusal {
    lode::Refusal refusal;
    lode::c::KeptText json;
};

struct lode_grid {
    lode::LetteredGrid grid;
    lode::c::KeptText text;
    lode::c::KeptCells cells;
};

struct lode_judge {
    lode::Recipe recipe;
    lode::CheckRules rules;
    lode::GridJudge judge;  // of both
};

struct lode_audit {
    lode::Audit audit;
    lode::c::KeptText json;
    lode::c::KeptText text;
};

struct lode_seen {
    lode::LettersSeen seen;
};

struct lode_rating {
    lode::Rating rating;
    lode::c::KeptText json;
    lode::c::KeptText text;
};

namespace lode::c {

// Throws BrokenCall for a number that is no direction.
inline Direction need_direction(std::int32_t direction) {
    if (direction < LODE_RIGHT || direction > LODE_DOWN_LEFT)
        throw BrokenCall(std::to_string(direction) + " is no direction");
    return static_cast<Direction>(direction);
}

// Hands out a text that the handle keeps, written at the first call.
template <class Handle, class Write>
std::int32_t give_kept(const char* function, const char** result, const char* result_name,
                       const Handle* handle, const char* handle_name, const KeptText Handle::*kept,
                       lode_error** error, const Write& write) {
    clear(result);
    return guarded(function, error, [&] {
        auto& text = need(result, result_name);
        const Handle& owner = need(handle, handle_name);
        text = (owner.*kept).get([&] { return write(owner); }).c_str();
        return LODE_OK;
    });
}

// What stands in a cell, or NULL where it is closed or outside the grid.
inline const char* cell_of(const LetteredGrid& lettered, std::int32_t row, std::int32_t column) {
    const auto& [alphabet, grid] = lettered;
    const Cell cell{row, column};
    // The letters of closed and empty cells lie beyond every alphabet's end.
    if (!grid.inside(cell) || grid[cell] >= alphabet.size()) return nullptr;
    return alphabet.text(grid[cell]).c_str();
}

// Hands out all cells of a handle's grid, listed at the first call.
template <class Handle, class GridOf>
std::int32_t give_cells(const char* function, const char* const** result, const Handle* handle,
                        const char* handle_name, lode_error** error, const GridOf& grid_of) {
    clear(result);
    return guarded(function, error, [&] {
        auto& cells = need(result, "cells");
        const Handle& owner = need(handle, handle_name);
        cells = owner.cells
                    .get([&] {
                        const LetteredGrid& lettered = grid_of(owner);
                        std::vector<const char*> texts;
                        for (const Letter letter : lettered.grid.letters())
                            texts.push_back(letter < lettered.alphabet.size()
                                                ? lettered.alphabet.text(letter).c_str()
                                                : nullptr);
                        return texts;
                    })
                    .data();
        return LODE_OK;
    });
}

}  // namespace lode::c
