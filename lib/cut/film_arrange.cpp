#include "cut/film_arrange.hpp"

#include <algorithm>

namespace lode::packing {

namespace {

// Without numbers that no load has.
void number_loads(Arrangement& arrangement) {
    std::vector<int> numbers;
    for (const Spot& spot : arrangement.layout) numbers.push_back(spot.room);
    std::sort(numbers.begin(), numbers.end());
    numbers.erase(std::unique(numbers.begin(), numbers.end()), numbers.end());
    for (Spot& spot : arrangement.layout)
        spot.room =
            static_cast<int>(std::lower_bound(numbers.begin(), numbers.end(), spot.room) - numbers.begin());
    arrangement.loads = numbers.size();
}

}  // namespace

FilmArranger::FilmArranger(const std::vector<Cutting>& pieces, const Rules& rules, FilmShapes& shapes,
                           Random& random, Steps& steps)
    : pieces_(pieces),
      rules_(rules),
      shapes_(shapes),
      random_(random),
      steps_(steps),
      apart_(std::max<Length>(0, rules.gap - 2 * rules.margin)) {}

std::optional<Arrangement> FilmArranger::arranged(const std::vector<Group>& groups, std::size_t loads,
                                                  Size bed, Length most_area_in_64ths) {
    left_out_.clear();
    std::vector<Item> items;
    std::vector<std::vector<std::size_t>> taken;
    std::size_t looks = 0;
    for (std::size_t g = 0; g < groups.size(); ++g) {
        const auto& shapes = shapes_.of(groups[g], random_, steps_);
        Length least = 0;
        for (const FilmShape& shape : shapes)
            if (least == 0 || shape.size.area() < least) least = shape.size.area();
        Item item;
        taken.emplace_back();
        for (std::size_t s = 0; s < shapes.size(); ++s) {
            const Size& size = shapes[s].size;
            if (most_area_in_64ths && size.area() / 64 > least / 64 * most_area_in_64ths / 64) continue;
            item.shapes.push_back({size.width + apart_, size.height + apart_});
            taken.back().push_back(s);
        }
        if (item.shapes.empty()) left_out_.push_back(g);
        looks += item.shapes.size();
        items.push_back(std::move(item));
    }
    if (!left_out_.empty()) {
        blamed_colour_ = pieces_[groups[left_out_[0]].front()].colour;
        return std::nullopt;
    }
    const std::vector<Size> rooms(loads, {bed.width + apart_, bed.height + apart_});
    Steps slice = steps_.part(looks * items.size() * 30 + 1'000);
    Layout layout;
    if (items.size() <= most_by_niches) layout = lay_in_turns(items, rooms, random_, slice);
    steps_.give_back(slice);
    if (layout.empty() || !is_whole(layout)) {
        Layout in_rows = lay_in_rows(items, rooms);
        if (layout.empty() || is_whole(in_rows)) layout = std::move(in_rows);
    }
    for (std::size_t g = 0; g < groups.size(); ++g)
        if (layout[g].room < 0) left_out_.push_back(g);
    if (!left_out_.empty()) return std::nullopt;

    Arrangement arrangement;
    arrangement.groups = groups;
    for (std::size_t g = 0; g < groups.size(); ++g) {
        layout[g].shape = taken[g][layout[g].shape];
        arrangement.shapes.push_back(shapes_.of(groups[g], random_, steps_)[layout[g].shape]);
    }
    arrangement.layout = std::move(layout);
    number_loads(arrangement);
    if (!take_from_sheets(arrangement)) return std::nullopt;
    return arrangement;
}

bool FilmArranger::take_from_sheets(Arrangement& arrangement) {
    arrangement.sheets.assign(arrangement.groups.size(), std::nullopt);
    arrangement.on_sheets.assign(arrangement.groups.size(), {});
    for (std::size_t colour = 0; colour < rules_.sheets.size(); ++colour) {
        if (!rules_.sheets[colour]) continue;
        const auto& sheets = *rules_.sheets[colour];
        std::vector<std::size_t> films;
        std::vector<Item> items;
        for (std::size_t g = 0; g < arrangement.groups.size(); ++g) {
            if (pieces_[arrangement.groups[g].front()].colour != colour) continue;
            const Size size = arrangement.shapes[g].size;
            films.push_back(g);
            items.push_back({{size, {size.height, size.width}}});
        }
        std::vector<Size> rooms;
        for (const Sheet& sheet : sheets) rooms.push_back(sheet.size);
        Steps slice = steps_.part(items.size() * items.size() * 100 + 1'000);
        const Layout layout = lay_in_turns(items, rooms, random_, slice);
        steps_.give_back(slice);
        if (!is_whole(layout)) {
            blamed_colour_ = colour;
            for (std::size_t i = 0; i < films.size(); ++i)
                if (layout[i].room < 0) left_out_.push_back(films[i]);
            return false;
        }
        for (std::size_t i = 0; i < films.size(); ++i) {
            arrangement.on_sheets[films[i]] = layout[i];
            arrangement.sheets[films[i]] = sheets[static_cast<std::size_t>(layout[i].room)];
        }
    }
    return true;
}

std::vector<LaidFilm> laid(const Arrangement& arrangement, const std::vector<Cutting>& pieces) {
    std::vector<LaidFilm> films;
    for (std::size_t g = 0; g < arrangement.groups.size(); ++g) {
        const Spot& spot = arrangement.layout[g];
        LaidFilm film{pieces[arrangement.groups[g].front()].colour,
                      static_cast<std::size_t>(spot.room),
                      spot.left,
                      spot.top,
                      arrangement.shapes[g].size,
                      arrangement.shapes[g].pieces,
                      arrangement.sheets[g],
                      arrangement.on_sheets[g].left,
                      arrangement.on_sheets[g].top,
                      arrangement.on_sheets[g].shape == 1};
        for (LaidPiece& piece : film.pieces) {
            piece.left += spot.left;
            piece.top += spot.top;
        }
        films.push_back(std::move(film));
    }
    std::stable_sort(films.begin(), films.end(), [](const LaidFilm& a, const LaidFilm& b) {
        if (a.load != b.load) return a.load < b.load;
        return a.top != b.top ? a.top < b.top : a.left < b.left;
    });
    return films;
}

}  // namespace lode::packing
