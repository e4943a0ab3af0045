#pragma once
// In which sizes a group of pieces can share a rectangle of film.

#include <map>
#include <optional>
#include <utility>
#include <vector>

#include "cut/pack_films.hpp"

namespace lode::packing {

// Pieces by their places, ascending.
using Group = std::vector<std::size_t>;

struct FilmShape {
    Size size;                      // margins included
    std::vector<LaidPiece> pieces;  // from the film's corner
};

class FilmShapes {
  public:
    FilmShapes(const std::vector<Cutting>& pieces, const Rules& rules) : pieces_(pieces), rules_(rules) {}

    // None of them larger both ways than another, each fit for the bed and a sheet of the colour; the widest
    // first. None where none was found.
    const std::vector<FilmShape>& of(const Group& group, Random& random, Steps& steps);
    // Takes what was found elsewhere: a layout of the group's items in one room.
    void learn(const Group& group, const Layout& layout);
    // Two groups, divided by a line through one of its sizes that crosses no piece, so that both are as dense
    // as it is. None where there is no such line.
    std::optional<std::pair<Group, Group>> cut(const Group& group, Random& random, Steps& steps);

    // The pieces as items, a gap wider and higher than they are.
    [[nodiscard]] std::vector<Item> items(const Group& group) const;
    // What is left within a film for such items.
    [[nodiscard]] Size inside(Size film) const {
        return {film.width - 2 * rules_.margin + rules_.gap, film.height - 2 * rules_.margin + rules_.gap};
    }
    // As small as a layout of the group's items allows.
    [[nodiscard]] FilmShape shape_of(const Group& group, const Layout& layout) const;
    [[nodiscard]] bool is_allowed(Size film, std::size_t colour) const;

  private:
    // With its sides changed, where its pieces can be.
    [[nodiscard]] std::optional<FilmShape> changed(const FilmShape& shape) const;
    void add(std::vector<FilmShape>& shapes, FilmShape shape, std::size_t colour) const;

    const std::vector<Cutting>& pieces_;
    const Rules& rules_;
    struct Known {
        bool searched = false;
        std::vector<FilmShape> shapes;
    };
    std::map<Group, Known> known_;
};

}  // namespace lode::packing
