// Whether a few rectangles fit, proved either way.
//
// One room: any packing can be built from its upper left corner so that each rectangle lies beyond a
// staircase over all that came before it, in one of the staircase's inner corners (Martello, Pisinger, Vigo
// 2000, "The three-dimensional bin packing problem", Operations Research 48(2):256-267; complete in two
// dimensions). A branch ends where the area beyond the staircase is less than what is left needs, and where
// the same rectangles made the same staircase before. The largest has its centre in the upper left quarter,
// since packings can be mirrored.
//
// Several rooms: the first item left is given each set of companions that a room holds, sets remembered.
//
// Judged against brute force over all places, and by squared rectangles from the literature.

#include <algorithm>
#include <numeric>
#include <unordered_set>

#include "cut/cover.hpp"

namespace lode::packing {

namespace {

struct Corner {
    Length x;
    Length y;
};
// Outer corners, x growing and y falling.
using Staircase = std::vector<Corner>;

Length area_under(const Staircase& stairs) {
    Length area = 0, left = 0;
    for (const Corner& corner : stairs) {
        area += (corner.x - left) * corner.y;
        left = corner.x;
    }
    return area;
}

Staircase with(const Staircase& stairs, Corner added) {
    Staircase result;
    result.reserve(stairs.size() + 1);
    bool done = false;
    for (const Corner& corner : stairs) {
        if (!done && corner.x > added.x) {
            result.push_back(added);
            done = true;
        }
        if (corner.x > added.x || corner.y > added.y) result.push_back(corner);
    }
    if (!done) result.push_back(added);
    return result;
}

struct HashOfKey {
    std::size_t operator()(const std::vector<Length>& key) const {
        std::uint64_t hash = 0x9e3779b97f4a7c15u;
        for (const Length part : key)
            hash = (hash ^ static_cast<std::uint64_t>(part)) * 0xff51afd7ed558ccdu, hash ^= hash >> 29;
        return static_cast<std::size_t>(hash);
    }
};

class OneRoom {
  public:
    OneRoom(std::span<const Item> items, Size room, Steps& steps)
        : room_(room), steps_(steps), layout_(items.size()) {
        order_.resize(items.size());
        std::iota(order_.begin(), order_.end(), std::size_t{0});
        std::stable_sort(order_.begin(), order_.end(), [&](std::size_t a, std::size_t b) {
            return items[a].least_area() > items[b].least_area();
        });
        for (const std::size_t i : order_) items_.push_back(items[i]);
        for (std::size_t i = 0; i < items_.size(); ++i) {
            area_left_ += items_[i].least_area();
            like_before_.push_back(i > 0 && items_[i].shapes == items_[i - 1].shapes);
        }
    }

    Verdict run() {
        const bool found = go_on({}, 0);
        if (found) {
            Layout layout(items_.size());
            for (std::size_t i = 0; i < items_.size(); ++i) layout[order_[i]] = layout_[i];
            return {Answer::yes, layout};
        }
        return {going_ ? Answer::no : Answer::unknown, {}};
    }

  private:
    bool go_on(const Staircase& stairs, std::uint32_t laid) {
        if (laid + 1 == std::uint32_t{1} << items_.size()) return true;
        if (room_.area() - area_under(stairs) < area_left_) return false;
        std::vector<Length> key{static_cast<Length>(laid)};
        for (const Corner& corner : stairs) key.insert(key.end(), {corner.x, corner.y});
        if (failed_.contains(key)) return false;
        for (std::size_t at = 0; at <= stairs.size(); ++at) {
            const Corner inner{at > 0 ? stairs[at - 1].x : 0, at < stairs.size() ? stairs[at].y : 0};
            for (std::size_t i = 0; i < items_.size(); ++i) {
                if (laid >> i & 1u || (like_before_[i] && !(laid >> (i - 1) & 1u))) continue;
                for (std::size_t s = 0; s < items_[i].shapes.size(); ++s) {
                    const Size& shape = items_[i].shapes[s];
                    const Corner outer{inner.x + shape.width, inner.y + shape.height};
                    if (outer.x > room_.width || outer.y > room_.height) continue;
                    if (i == 0 && !like_next() &&
                        (inner.x + outer.x > room_.width || inner.y + outer.y > room_.height))
                        continue;
                    if (!steps_.spend(4)) going_ = false;
                    if (!going_) return false;
                    layout_[i] = {0, inner.x, inner.y, s};
                    area_left_ -= items_[i].least_area();
                    if (go_on(with(stairs, outer), laid | std::uint32_t{1} << i)) return true;
                    area_left_ += items_[i].least_area();
                    if (!going_) return false;
                }
            }
        }
        if (failed_.size() < most_remembered) failed_.insert(std::move(key));
        return false;
    }
    // The mirroring rule speaks of one rectangle; among equals it is not known which.
    [[nodiscard]] bool like_next() const { return items_.size() > 1 && like_before_[1]; }

    static constexpr std::size_t most_remembered = 300'000;
    Size room_;
    Steps& steps_;
    std::vector<std::size_t> order_;
    std::vector<Item> items_;
    std::vector<bool> like_before_;
    Layout layout_;
    Length area_left_ = 0;
    bool going_ = true;
    std::unordered_set<std::vector<Length>, HashOfKey> failed_;
};

// Shapes that are no smaller than another of the item in any direction, or larger than the room, are left
// out.
std::vector<std::size_t> useful_shapes(const Item& item, Size room) {
    std::vector<std::size_t> useful;
    for (std::size_t s = 0; s < item.shapes.size(); ++s) {
        const Size& shape = item.shapes[s];
        if (shape.width > room.width || shape.height > room.height) continue;
        bool beaten = false;
        for (std::size_t o = 0; o < item.shapes.size() && !beaten; ++o) {
            const Size& other = item.shapes[o];
            if (o == s || other.width > shape.width || other.height > shape.height) continue;
            beaten = other != shape || o < s;
        }
        if (!beaten) useful.push_back(s);
    }
    return useful;
}

// All sizes, none larger than another both ways, of boxes about the items.
class Sizes {
  public:
    Sizes(std::span<const Item> items, Size room, Steps& steps)
        : items_(items), room_(room), steps_(steps), layout_(items.size()) {
        for (const Item& item : items) area_ += item.least_area();
    }

    std::optional<std::vector<BoxedLayout>> run() {
        go_on({}, 0);
        if (!going_) return std::nullopt;
        return std::move(found_);
    }

  private:
    static Size around(const Staircase& stairs) {
        return stairs.empty() ? Size{} : Size{stairs.back().x, stairs.front().y};
    }
    // Whether a box at least as large as this, and as the area, can be smaller in one way than each that is
    // known.
    [[nodiscard]] bool may_be_new(Size least) const {
        // Known boxes by growing width have falling heights: what is new lies left of the first, under the
        // last, or in a notch between two.
        for (std::size_t i = 0; i <= found_.size(); ++i) {
            const Length width = i < found_.size() ? found_[i].size.width - 1 : room_.width;
            const Length height = i > 0 ? found_[i - 1].size.height - 1 : room_.height;
            if (least.width <= width && least.height <= height && width * height >= area_) return true;
        }
        return false;
    }
    void take(Size size) {
        std::erase_if(found_, [&](const BoxedLayout& f) {
            return size.width <= f.size.width && size.height <= f.size.height;
        });
        const auto at = std::find_if(found_.begin(), found_.end(),
                                     [&](const BoxedLayout& f) { return f.size.width > size.width; });
        found_.insert(at, {size, layout_});
    }

    void go_on(const Staircase& stairs, std::uint32_t laid) {
        const Size size = around(stairs);
        if (!may_be_new(size)) return;
        if (laid + 1 == std::uint32_t{1} << items_.size()) {
            take(size);
            return;
        }
        std::vector<Length> key{static_cast<Length>(laid)};
        for (const Corner& corner : stairs) key.insert(key.end(), {corner.x, corner.y});
        if (!seen_.insert(std::move(key)).second) return;
        for (std::size_t at = 0; at <= stairs.size(); ++at) {
            const Corner inner{at > 0 ? stairs[at - 1].x : 0, at < stairs.size() ? stairs[at].y : 0};
            for (std::size_t i = 0; i < items_.size(); ++i) {
                if (laid >> i & 1u) continue;
                for (std::size_t s = 0; s < items_[i].shapes.size(); ++s) {
                    const Size& shape = items_[i].shapes[s];
                    const Corner outer{inner.x + shape.width, inner.y + shape.height};
                    if (outer.x > room_.width || outer.y > room_.height) continue;
                    if (!steps_.spend(4) || seen_.size() > 2'000'000) going_ = false;
                    if (!going_) return;
                    layout_[i] = {0, inner.x, inner.y, s};
                    go_on(with(stairs, outer), laid | std::uint32_t{1} << i);
                }
            }
        }
    }

    std::span<const Item> items_;
    Size room_;
    Steps& steps_;
    Layout layout_;
    Length area_ = 0;
    bool going_ = true;
    std::vector<BoxedLayout> found_;
    std::unordered_set<std::vector<Length>, HashOfKey> seen_;
};

}  // namespace

Verdict fits_one_room(std::span<const Item> items, Size room, Steps& steps) {
    if (items.empty()) return {Answer::yes, {}};
    std::vector<Item> reduced(items.size());
    std::vector<std::vector<std::size_t>> shapes(items.size());
    for (std::size_t i = 0; i < items.size(); ++i) {
        shapes[i] = useful_shapes(items[i], room);
        if (shapes[i].empty()) return {Answer::no, {}};
        for (const std::size_t s : shapes[i]) reduced[i].shapes.push_back(items[i].shapes[s]);
    }
    if (least_rooms(reduced, room) > 1) return {Answer::no, {}};
    const auto restored = [&](Verdict verdict) {
        for (std::size_t i = 0; i < verdict.layout.size(); ++i)
            verdict.layout[i].shape = shapes[i][verdict.layout[i].shape];
        return verdict;
    };
    Random random(items.size());
    Steps first = steps.part(20 * items.size() * items.size());
    const Layout quick = lay_in_turns(reduced, std::span(&room, 1), random, first);
    steps.give_back(first);
    if (is_whole(quick)) return restored({Answer::yes, quick});
    if (items.size() > most_exact_items) return {Answer::unknown, {}};
    return restored(OneRoom(reduced, room, steps).run());
}

std::optional<std::vector<BoxedLayout>> least_boxes(std::span<const Item> items, Size room, Steps& steps) {
    return Sizes(items, room, steps).run();
}

std::vector<std::size_t> by_area(std::span<const Item> items) {
    std::vector<std::size_t> order(items.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return items[a].least_area() > items[b].least_area();
    });
    return order;
}

Verdict fits_rooms(std::span<const Item> items, Size room, std::size_t rooms, Steps& steps) {
    if (items.size() > most_exact_items) return {};
    const std::vector<std::size_t> order = by_area(items);
    std::vector<Length> areas;
    for (const std::size_t i : order) areas.push_back(items[i].least_area());
    const auto fits = [&](Set set) {
        std::vector<Item> chosen;
        for (std::size_t i = 0; i < order.size(); ++i)
            if (set >> i & 1u) chosen.push_back(items[order[i]]);
        return fits_one_room(chosen, room, steps);
    };
    std::vector<Set> sets;
    Verdict verdict;
    verdict.answer = Cover(std::move(areas), room.area(), [&](Set set) {
                         return fits(set).answer;
                     }).cover((Set{1} << items.size()) - 1, rooms, sets);
    if (verdict.answer != Answer::yes) return verdict;
    verdict.layout.resize(items.size());
    for (std::size_t r = 0; r < sets.size(); ++r) {
        const Verdict here = fits(sets[r]);
        if (here.answer != Answer::yes) return {};  // the steps ran out
        std::size_t next = 0;
        for (std::size_t i = 0; i < order.size(); ++i) {
            if (!(sets[r] >> i & 1u)) continue;
            verdict.layout[order[i]] = here.layout[next++];
            verdict.layout[order[i]].room = static_cast<int>(r);
        }
    }
    return verdict;
}

}  // namespace lode::packing
