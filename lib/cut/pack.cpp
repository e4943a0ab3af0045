// Laying rectangles by niches. The skyline of a room is the upper border of what was laid; its lowest,
// leftmost level part is the niche. What fits it best is laid at its taller side, and a niche that nothing
// fits is raised to its lower neighbour (Burke, Kendall, Whitwell 2004, "A new placement heuristic for the
// orthogonal stock-cutting problem", Operations Research 52(4):655-671). Here for several rooms, several
// shapes an item, and in turns: what is left out by one pass weighs more in the next (Joslin, Clements 1999,
// "Squeaky wheel optimization", JAIR 10:353-373). "Up" in this file is away from the side where laying
// begins.

#include "cut/pack.hpp"

#include <algorithm>
#include <numeric>

#include "cut/skyline.hpp"

namespace lode::packing {

Length Item::least_area() const {
    Length least = shapes.empty() ? 0 : shapes.front().area();
    for (const Size& shape : shapes) least = std::min(least, shape.area());
    return least;
}

bool is_whole(const Layout& layout) {
    return std::all_of(layout.begin(), layout.end(), [](const Spot& spot) { return spot.room >= 0; });
}

namespace {

struct Choice {
    std::size_t item = 0;
    std::size_t shape = 0;
    std::uint64_t score = 0;
};

std::uint64_t part_of(Length part, Length whole) {
    return static_cast<std::uint64_t>(part) * 256 / static_cast<std::uint64_t>(std::max<Length>(whole, 1));
}

std::uint32_t random_part(Random& random) {
    return random.below(17);
}

class Pass {
  public:
    Pass(std::span<const Item> items, std::span<const std::uint32_t> weights, const Taste& taste,
         Random& random, Steps& steps)
        : items_(items),
          weights_(weights),
          taste_(taste),
          random_(random),
          steps_(steps),
          left_(items.size()) {
        std::iota(left_.begin(), left_.end(), 0u);
        if (left_.size() > most_looked_at) random.shuffle(left_);
        for (const Item& item : items) {
            const Length least = item.least_area();
            thrift_.emplace_back();
            for (const Size& shape : item.shapes) {
                const std::uint64_t part = part_of(least, shape.area());
                thrift_.back().push_back(part * part / 256);
            }
        }
    }

    Layout run(std::span<const Size> rooms) {
        Layout layout(items_.size());
        for (std::size_t room = 0; room < rooms.size() && !left_.empty() && going_; ++room) {
            Skyline skyline(rooms[room].width);
            while (!left_.empty()) {
                const Niche niche = skyline.lowest();
                if (niche.bottom >= rooms[room].height) break;
                const auto choice = best(niche, rooms[room]);
                if (!going_) break;
                if (!choice) {
                    skyline.raise(niche, rooms[room].height);
                    continue;
                }
                const Size& shape = items_[left_[choice->item]].shapes[choice->shape];
                const bool at_right = niche.right_wall > niche.left_wall;
                const Length x = at_right ? niche.left + niche.width - shape.width : niche.left;
                layout[left_[choice->item]] = {static_cast<int>(room), x, niche.bottom, choice->shape};
                skyline.lay(niche, x, shape);
                left_.erase(left_.begin() + static_cast<std::ptrdiff_t>(choice->item));
            }
        }
        return layout;
    }

  private:
    std::optional<Choice> best(const Niche& niche, const Size& room) {
        std::optional<Choice> best;
        std::uint64_t looked = 0;
        const std::size_t end = std::min(left_.size(), most_looked_at);
        for (std::size_t i = 0; i < end; ++i) {
            const Item& item = items_[left_[i]];
            looked += item.shapes.size();
            for (std::size_t s = 0; s < item.shapes.size(); ++s) {
                const Size& shape = item.shapes[s];
                if (shape.width > niche.width || niche.bottom + shape.height > room.height) continue;
                std::uint64_t score = 1 + taste_.width * part_of(shape.width, niche.width) +
                                      taste_.height * part_of(shape.height, room.height) +
                                      taste_.area * part_of(shape.area(), room.area());
                if (shape.width == niche.width) score += taste_.flush * 256;
                const Length top = niche.bottom + shape.height;
                if (top == niche.left_wall || top == niche.right_wall || top == room.height)
                    score += taste_.flush * 128;
                if (taste_.noise) score += taste_.noise * random_.below(256);
                // A shape that takes more room than the item needs must be worth it.
                score = score * thrift_[left_[i]][s] / 256;
                score *= weights_[left_[i]];
                if (!best || score > best->score) best = {i, s, score};
            }
        }
        if (!steps_.spend(looked)) going_ = false;
        return best;
    }

    // Of thousands the first so many that are left, in an order of chance: enough to find one that fits well,
    // and the work does not grow with the square of their number.
    static constexpr std::size_t most_looked_at = 1'000;

    std::span<const Item> items_;
    std::span<const std::uint32_t> weights_;
    const Taste& taste_;
    Random& random_;
    Steps& steps_;
    std::vector<std::uint32_t> left_;
    std::vector<std::vector<std::uint64_t>> thrift_;  // of each shape, in 256ths
    bool going_ = true;
};

Length area_left_out(std::span<const Item> items, const Layout& layout) {
    Length area = 0;
    for (std::size_t i = 0; i < items.size(); ++i)
        if (layout[i].room < 0) area += items[i].least_area();
    return area;
}

}  // namespace

Layout lay(std::span<const Item> items, std::span<const Size> rooms, std::span<const std::uint32_t> weights,
           const Taste& taste, Random& random, Steps& steps) {
    return Pass(items, weights, taste, random, steps).run(rooms);
}

Layout lay_in_turns(std::span<const Item> items, std::span<const Size> rooms, Random& random, Steps& steps) {
    static constexpr Taste tastes[] = {
        {16, 4, 0, 8, 0}, {4, 16, 0, 8, 0}, {4, 4, 16, 8, 0}, {16, 0, 0, 0, 0}};
    constexpr std::uint32_t plain = 1024, heaviest = 1 << 20;
    std::vector<std::uint32_t> weights(items.size(), plain);
    Layout best(items.size());
    Length least = area_left_out(items, best);
    std::uint32_t fruitless = 0;
    for (std::size_t turn = 0; least > 0 && steps.left() > 0; ++turn) {
        Taste taste;
        if (turn < std::size(tastes))
            taste = tastes[turn];
        else
            taste = {random_part(random), random_part(random), random_part(random), random_part(random),
                     random.below(2) ? random.below(8) : 0};
        const Layout layout = lay(items, rooms, weights, taste, random, steps);
        const Length out = area_left_out(items, layout);
        if (out < least) {
            least = out;
            best = layout;
            fruitless = 0;
        } else if (++fruitless > 60) {
            std::fill(weights.begin(), weights.end(), plain);
            fruitless = 0;
        }
        if (turn + 1 < std::size(tastes)) continue;
        for (std::size_t i = 0; i < items.size(); ++i)
            if (layout[i].room < 0) weights[i] = std::min(heaviest, weights[i] + weights[i] / 4);
    }
    return best;
}

Layout lay_in_rows(std::span<const Item> items, std::span<const Size> rooms) {
    // Each item in the flattest shape that the room takes; rows are filled in the order of falling height.
    struct Row {
        std::size_t room;
        Length top, height, used;
    };
    Layout layout(items.size());
    std::vector<std::size_t> order, shapes(items.size());
    for (std::size_t i = 0; i < items.size(); ++i) {
        const auto& all = items[i].shapes;
        std::optional<std::size_t> flattest;
        for (std::size_t s = 0; s < all.size(); ++s) {
            const bool fits = std::any_of(rooms.begin(), rooms.end(), [&](const Size& room) {
                return all[s].width <= room.width && all[s].height <= room.height;
            });
            if (fits && (!flattest || all[s].height < all[*flattest].height)) flattest = s;
        }
        if (!flattest) continue;
        shapes[i] = *flattest;
        order.push_back(i);
    }
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return items[a].shapes[shapes[a]].height > items[b].shapes[shapes[b]].height;
    });
    std::vector<Row> rows;
    std::vector<Length> filled(rooms.size(), 0);
    std::size_t first_open = 0;
    for (const std::size_t i : order) {
        const Size& shape = items[i].shapes[shapes[i]];
        const auto place = [&](Row& row) {
            layout[i] = {static_cast<int>(row.room), row.used, row.top, shapes[i]};
            row.used += shape.width;
        };
        const auto row = std::find_if(
            rows.begin() + static_cast<std::ptrdiff_t>(first_open), rows.end(), [&](const Row& r) {
                return shape.height <= r.height && r.used + shape.width <= rooms[r.room].width;
            });
        if (row != rows.end()) {
            place(*row);
            continue;
        }
        for (std::size_t room = 0; room < rooms.size(); ++room) {
            if (shape.width > rooms[room].width || filled[room] + shape.height > rooms[room].height) continue;
            rows.push_back({room, filled[room], shape.height, 0});
            filled[room] += shape.height;
            place(rows.back());
            break;
        }
        // Few rows are looked back at, so that the work stays bounded.
        if (rows.size() > first_open + 200) first_open = rows.size() - 200;
    }
    return layout;
}

}  // namespace lode::packing
