#include "cut/witness.hpp"

#include <algorithm>

#include "art/constructed_typeface.hpp"

namespace lode {

namespace {

// As small as film can be weeded (common practice), and clear of everything else.
constexpr double cap_mm = 7;
constexpr double clear_mm = 1.5;
constexpr double pace_mm = 1;  // from one place that is looked at to the next

// An R: no turn and no reflection makes another letter of it. Its upper left corner is at 0.
Path letter(Surface surface) {
    ConstructedTypeface typeface({0.16, 0.16});
    Path path;
    const auto line = typeface.set_line("R");
    if (!line) return path;
    for (const SetLetter& set : line->letters)
        path.contours.insert(path.contours.end(), set.path.contours.begin(), set.path.contours.end());
    path = transformed(path, cap_mm, {});
    const Box box = bounds(path);
    path = transformed(path, 1, {-box.left, -box.top});
    return surface == Surface::second ? mirrored(path, box.width()) : path;
}

bool meet(const Box& a, const Box& b) {
    return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

// The upper left corner of a free place of this size in the room.
std::optional<Point> free_place(const Box& room, double width, double height, const std::vector<Box>& taken) {
    for (double y = room.top; y + height <= room.bottom; y += pace_mm)
        for (double x = room.left; x + width <= room.right; x += pace_mm) {
            const Box place{x, y, x + width, y + height};
            if (std::none_of(taken.begin(), taken.end(), [&](const Box& box) { return meet(box, place); }))
                return Point{x, y};
        }
    return std::nullopt;
}

// The film, longer to the right or downward by so much, where the bed and the other films leave room for it.
std::optional<Box> lengthened(const Load& load, std::size_t film, double by, const Bed& bed) {
    const Box& box = load.films[film].box;
    const double high = bed.height_mm > 0 ? bed.height_mm : bed.longest_mm;
    for (const bool down : {false, true}) {
        const Box longer{box.left, box.top, box.right + (down ? 0 : by), box.bottom + (down ? by : 0)};
        if (longer.right > bed.width_mm - bed.edge_mm || longer.bottom > high - bed.edge_mm) continue;
        bool free = true;
        for (std::size_t i = 0; i < load.films.size(); ++i)
            free = free && (i == film || !meet(longer, load.films[i].box));
        if (free) return longer;
    }
    return std::nullopt;
}

}  // namespace

std::optional<CutPlan::Witness> placed_witness(Load& load, std::span<const Path> cut, const Bed& bed,
                                               Surface surface) {
    const Path path = letter(surface);
    const Box size = bounds(path);
    const double width = size.width() + 2 * clear_mm;
    const double height = size.height() + 2 * clear_mm;
    // By contours and not by pieces: a layer that is carried whole is mostly waste.
    std::vector<Box> taken;
    for (const Path& piece : cut)
        for (const Contour& contour : piece.contours) taken.push_back(bounds({{contour}}));
    const auto at = [&](Point corner, Colour colour) {
        return CutPlan::Witness{transformed(path, 1, {corner.x + clear_mm, corner.y + clear_mm}), colour};
    };
    for (const FilmRectangle& film : load.films)
        if (const auto corner = free_place(film.box, width, height, taken)) return at(*corner, film.colour);
    for (std::size_t i = 0; i < load.films.size(); ++i) {
        if (load.films[i].stock) continue;  // the maker's own is no larger than it is
        const auto longer = lengthened(load, i, std::max(width, height), bed);
        if (!longer) continue;
        const auto corner = free_place(*longer, width, height, taken);
        if (!corner) continue;
        load.films[i].box = *longer;
        if (bed.height_mm <= 0) load.length_mm = std::max(load.length_mm, longer->bottom + bed.edge_mm);
        return at(*corner, load.films[i].colour);
    }
    return std::nullopt;
}

}  // namespace lode
