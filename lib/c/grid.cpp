// Grids that were made elsewhere.

#include <letterlode/grid.hpp>

#include "c/handles.hpp"

using namespace lode::c;

namespace {

// What a recipe says of letters, ready to read a grid.
lode::Segmenter segmenter_of(const lode_recipe* recipe) {
    return taken(lode::Segmenter::open(need(recipe, "recipe").recipe.text));
}

lode_grid* new_grid(lode::LetteredGrid grid) {
    return new lode_grid{std::move(grid), {}, {}};
}

}  // namespace

std::int32_t lode_grid_from_text(lode_grid** grid, const char* given, const char* source,
                                 const lode_recipe* recipe, lode_error** error) {
    clear(grid);
    return guarded(__func__, error, [&] {
        auto& result = need(grid, "grid");
        const auto drawn = text(given, "text");
        result = new_grid(taken(lode::read_grid(drawn, source_name(source), segmenter_of(recipe))));
        return LODE_OK;
    });
}

std::int32_t lode_grid_from_page(lode_grid** grid, lode_recipe* recipe, const char* given, const char* source,
                                 lode_error** error) {
    clear(grid);
    return guarded(__func__, error, [&] {
        auto& result = need(grid, "grid");
        const auto page = text(given, "text");
        const auto segmenter = segmenter_of(recipe);
        auto [lettered, words] = taken(lode::read_grid_with_list(page, source_name(source), segmenter));
        result = new_grid(std::move(lettered));
        recipe->recipe.words = std::move(words);
        recipe->json.forget();
        return LODE_OK;
    });
}

std::int32_t lode_grid_from_cells(lode_grid** grid, const char* const* cells, std::int32_t rows,
                                  std::int32_t columns, const lode_recipe* recipe, lode_error** error) {
    clear(grid);
    return guarded(__func__, error, [&] {
        auto& result = need(grid, "grid");
        need(cells, "cells");
        const auto segmenter = segmenter_of(recipe);
        const lode::Size size = taken(lode::checked_size(columns, rows));
        std::vector<std::optional<std::string_view>> written(size.cells());
        for (std::size_t at = 0; at < written.size(); ++at)
            if (cells[at]) written[at] = cells[at];
        result = new_grid(taken(lode::read_cells(written, size, segmenter)));
        return LODE_OK;
    });
}

std::int32_t lode_grid_from_puzzle(lode_grid** grid, const lode_puzzle* puzzle, lode_error** error) {
    clear(grid);
    return guarded(__func__, error, [&] {
        auto& result = need(grid, "grid");
        result = new_grid(need(puzzle, "puzzle").puzzle.grid);
        return LODE_OK;
    });
}

std::int32_t lode_grid_rows(const lode_grid* grid) {
    return grid ? grid->grid.grid.size().rows : 0;
}

std::int32_t lode_grid_columns(const lode_grid* grid) {
    return grid ? grid->grid.grid.size().columns : 0;
}

const char* lode_grid_cell(const lode_grid* grid, std::int32_t row, std::int32_t column) {
    return grid ? cell_of(grid->grid, row, column) : nullptr;
}

std::int32_t lode_grid_cells(const char* const** cells, const lode_grid* grid, lode_error** error) {
    return give_cells(__func__, cells, grid, "grid", error,
                      [](const lode_grid& its) -> const lode::LetteredGrid& { return its.grid; });
}

std::int32_t lode_grid_text(const char** text, const lode_grid* grid, lode_error** error) {
    return give_kept(__func__, text, "text", grid, "grid", &lode_grid::text, error,
                     [](const lode_grid& its) { return lode::grid_text(its.grid.grid, its.grid.alphabet); });
}

void lode_grid_free(lode_grid* grid) {
    delete grid;
}
