#pragma once
// Whether a few pieces of several colours, film about them, go into so many loads: exactly.

#include <vector>

#include "cut/film_shapes.hpp"

namespace lode::packing {

struct LoadedFilm {
    std::size_t load = 0;
    Group group;
    FilmShape shape;
    Length left = 0;
    Length top = 0;
};
struct FilmVerdict {
    Answer answer = Answer::unknown;
    std::vector<LoadedFilm> films;  // where yes
};
// Film is taken to come in any size: a no holds for every stock. At most most_exact_items pieces.
[[nodiscard]] FilmVerdict fits_loads(const std::vector<Cutting>& pieces, const Rules& rules,
                                     const FilmShapes& shapes, std::size_t loads, Steps& steps);

}  // namespace lode::packing
