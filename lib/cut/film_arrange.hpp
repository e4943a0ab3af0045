#pragma once
// Whether given groups of pieces, each on a rectangle of film, go into so many loads, and where they lie.

#include <optional>
#include <vector>

#include "cut/film_shapes.hpp"

namespace lode::packing {

// Of more items, there is no search.
inline constexpr std::size_t most_by_niches = 1'500;

struct Arrangement {
    std::vector<Group> groups;
    std::vector<FilmShape> shapes;  // the one that was taken, of each group
    Layout layout;                  // of the groups in loads
    std::vector<std::optional<Sheet>> sheets;
    Layout on_sheets;
    std::size_t loads = 0;
    [[nodiscard]] Length film_area() const {
        Length area = 0;
        for (const FilmShape& shape : shapes) area += shape.size.area();
        return area;
    }
};

// By load, and within it from top to bottom and from left to right.
[[nodiscard]] std::vector<LaidFilm> laid(const Arrangement& arrangement, const std::vector<Cutting>& pieces);

// What is referred to must live as long as the arranger.
class FilmArranger {
  public:
    FilmArranger(const std::vector<Cutting>& pieces, const Rules& rules, FilmShapes& shapes, Random& random,
                 Steps& steps);

    // These groups into so many loads of a bed, from the sheets that there are, where a way is found. With a
    // limit no group takes film of more than so many 64ths of the least that it could do with.
    std::optional<Arrangement> arranged(const std::vector<Group>& groups, std::size_t loads, Size bed,
                                        Length most_area_in_64ths = 0);
    // Finds each group's film on a sheet of its colour; false where that was not found.
    bool take_from_sheets(Arrangement& arrangement);

    // Of the last call: groups that found no place, and the colour that was short of film.
    [[nodiscard]] const std::vector<std::size_t>& left_out() const { return left_out_; }
    [[nodiscard]] std::size_t blamed_colour() const { return blamed_colour_; }

  private:
    const std::vector<Cutting>& pieces_;
    const Rules& rules_;
    FilmShapes& shapes_;
    Random& random_;
    Steps& steps_;
    Length apart_ = 0;  // films, beyond their margins
    std::vector<std::size_t> left_out_;
    std::size_t blamed_colour_ = 0;
};

}  // namespace lode::packing
