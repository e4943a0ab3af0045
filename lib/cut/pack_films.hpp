#pragma once
// Pieces of several colours onto film, and film into loads: the plan without its outlines. Lengths are whole
// micrometres.

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "cut/pack.hpp"

namespace lode::packing {

struct Turn {
    Size size;  // of the piece's box
    int eighths = 0;
};
struct Cutting {
    std::size_t colour = 0;
    std::vector<Turn> turns;
};
struct Sheet {
    std::size_t stock = 0;
    int number = 0;
    Size size;
};
struct Rules {
    Size bed;  // what is reached of it
    bool roll = false;
    Length gap = 0;
    Length margin = 0;
    // For each colour its sheets, or nothing where there is film of any size.
    std::vector<std::optional<std::vector<Sheet>>> sheets;
};

struct LaidPiece {
    std::size_t piece = 0;
    std::size_t turn = 0;
    Length left = 0;
    Length top = 0;
};
struct LaidFilm {
    std::size_t colour = 0;
    std::size_t load = 0;
    Length left = 0;
    Length top = 0;
    Size size;
    std::vector<LaidPiece> pieces;  // from the corner of the reached bed, as the film
    std::optional<Sheet> sheet;
    Length sheet_left = 0;
    Length sheet_top = 0;
    bool turned = false;
};
struct FilmPlan {
    std::size_t loads = 0;
    std::vector<LaidFilm> films;
    std::size_t least_loads = 0;
    bool searched_all = false;  // all was tried in fewer loads, as far as film of any size goes
};

// No film plan: the colour whose sheets were not enough, as far as was found.
struct FilmsShort {
    std::size_t colour = 0;
};

struct FilmOutcome {
    std::optional<FilmPlan> plan;
    FilmsShort fault;
};

// Every piece must have a turn that fits the bed and a sheet of its colour with the margin about it.
[[nodiscard]] FilmOutcome plan_films(const std::vector<Cutting>& pieces, const Rules& rules, Steps& steps);

}  // namespace lode::packing
