#pragma once
// Puzzles made by hand, so that artwork is tested without the engine that places words, and their artwork.

#include <catch2/catch.hpp>
#include <letterlode/art.hpp>
#include <letterlode/puzzle.hpp>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

namespace panels {

struct Placed {
    std::string word;
    int row;  // from 0
    int column;
    lode::Direction direction;
};

// One string a cell; "." is closed.
inline lode::Puzzle of_cells(const std::vector<std::vector<std::string>>& rows,
                             const std::vector<Placed>& words = {}) {
    lode::Puzzle puzzle;
    lode::LetteredGrid& grid = puzzle.grid;
    grid.grid = lode::Grid({static_cast<int>(rows.size()), static_cast<int>(rows.front().size())});
    const auto letter_at = [&](int row, int column) {
        return rows[static_cast<std::size_t>(row)][static_cast<std::size_t>(column)];
    };
    for (int row = 0; row < grid.grid.size().rows; ++row)
        for (int column = 0; column < grid.grid.size().columns; ++column) {
            const std::string letter = letter_at(row, column);
            grid.grid[{row, column}] = letter == "." ? lode::closed_cell : grid.alphabet.add(letter);
        }
    for (const Placed& placed : words) {
        lode::PlacedWord word{placed.word, {}, {{placed.row, placed.column}, placed.direction}};
        for (std::size_t i = 0; i < placed.word.size(); ++i) word.letters.push_back(placed.word.substr(i, 1));
        puzzle.words.push_back(std::move(word));
    }
    return puzzle;
}

// One ASCII character a cell.
inline lode::Puzzle of_rows(const std::vector<std::string>& rows, const std::vector<Placed>& words = {}) {
    std::vector<std::vector<std::string>> cells;
    for (const std::string& row : rows) {
        cells.emplace_back();
        for (const char c : row) cells.back().emplace_back(1, c);
    }
    return of_cells(cells, words);
}

// A piece of the invented garden: words that cross, share a line, lie next to each other and stand alone.
inline lode::Puzzle garden() {
    using enum lode::Direction;
    return of_rows({"LEEKSPEAQ",  //
                    "MSBEANJCV",  //
                    "IWRGOPXHU",  //
                    "NFTAKABIZ",  //
                    "TOMATOYVW",  //
                    "JDCVHQUEX",  //
                    "BPSAGELSM"},
                   {{"LEEK", 0, 0, right},
                    {"MINT", 1, 0, down},
                    {"TOMATO", 4, 0, right},
                    {"BEAN", 1, 2, right},
                    {"CHIVES", 1, 7, down},
                    {"SAGE", 6, 2, right},
                    {"RAT", 2, 2, down_right},
                    {"TAX", 4, 4, up_right}});
}

inline constexpr double mm_an_inch = 25.4;

inline lode::Blank rectangle(double width_mm, double height_mm) {
    return lode::shaped_blank("rectangle", {width_mm, height_mm});
}

inline lode::ArtworkOptions options(lode::Surface surface = lode::Surface::first,
                                    const std::string& heading = "The Tool Shed") {
    lode::ArtworkOptions result;
    result.blank = rectangle(8 * mm_an_inch, 10 * mm_an_inch);
    result.surface = surface;
    result.heading = heading;
    return result;
}

inline lode::Artwork drawn(const lode::Puzzle& puzzle, const lode::ArtworkOptions& wanted) {
    auto artwork = draw(puzzle, wanted);
    if (!artwork) throw std::runtime_error(artwork.refusal().message);
    return *std::move(artwork);
}

inline std::size_t place_of(const lode::Artwork& artwork, const std::string& name) {
    for (std::size_t i = 0; i < artwork.layers.size(); ++i)
        if (artwork.layers[i].name == name) return i;
    throw std::runtime_error("no layer " + name);
}
inline const lode::Layer& layer(const lode::Artwork& artwork, const std::string& name) {
    return artwork.layers[place_of(artwork, name)];
}

inline bool has(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

// Why nothing is drawn.
inline std::string refusal(const lode::Puzzle& puzzle, const lode::ArtworkOptions& wanted) {
    const auto artwork = lode::draw(puzzle, wanted);
    REQUIRE(!artwork);
    CHECK(artwork.refusal().reason == lode::Refusal::Reason::unusable);
    return artwork.refusal().message;
}

inline const lode::Piece& piece_named(const lode::Artwork& artwork, const std::string& name) {
    for (const lode::Layer& one : artwork.layers)
        for (const lode::Piece& p : one.pieces)
            if (p.name == name) return p;
    throw std::runtime_error("no piece " + name);
}

inline std::vector<std::string> rows_of(int rows, int columns, char letter) {
    return std::vector<std::string>(static_cast<std::size_t>(rows),
                                    std::string(static_cast<std::size_t>(columns), letter));
}

inline std::size_t times(const std::string& text, const std::string& part) {
    std::size_t count = 0;
    for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++count;
    return count;
}

}  // namespace panels
