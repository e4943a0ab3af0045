// How many rooms there must be at the least. Dual feasible functions map lengths so that whatever fits side
// by side still does; the mapped areas then bound the rooms (Fekete, Schepers 2004, "A general framework for
// bounds for higher-dimensional orthogonal packing problems", Mathematical Methods of Operations Research
// 60(2):311-329; the second kind as in Carlier, Clautiaux, Moukrim 2007, Computers and Operations Research
// 34(8):2223-2250). An item counts with the shape that maps least, so the bound holds however items are
// turned.

#include <algorithm>
#include <limits>

#include "cut/pack.hpp"

namespace lode::packing {

namespace {

// Kind 0: the length itself. Kind 1, e at most half the whole: more than whole - e counts as the whole, less
// than e as nothing, the rest as itself. Kind 2: how many e it holds, or beyond the half, how many of the
// whole's it takes away.
struct Map {
    int kind = 0;
    Length e = 0;
};

Length mapped(const Map& map, Length length, Length whole) {
    switch (map.kind) {
        case 1:
            return length > whole - map.e ? whole : length < map.e ? 0 : length;
        case 2:
            if (2 * length > whole) return 2 * (whole / map.e - (whole - length) / map.e);
            if (2 * length == whole) return whole / map.e;
            return 2 * (length / map.e);
        default:
            return length;
    }
}
Length denominator(const Map& map, Length whole) {
    return map.kind == 2 ? 2 * (whole / map.e) : whole;
}

std::vector<Map> maps(std::span<const Item> items, Length whole) {
    std::vector<Length> lengths{whole / 2};
    for (const Item& item : items)
        for (const Size& shape : item.shapes)
            for (const Length side : {shape.width, shape.height}) {
                if (2 * side <= whole) lengths.push_back(side);
                if (side < whole && 2 * (whole - side + 1) <= whole) lengths.push_back(whole - side + 1);
            }
    std::sort(lengths.begin(), lengths.end());
    lengths.erase(std::unique(lengths.begin(), lengths.end()), lengths.end());
    constexpr std::size_t most = 24;
    std::vector<Map> result{{}};
    const std::size_t stride = lengths.size() / most + 1;
    for (std::size_t i = 0; i < lengths.size(); i += stride)
        for (const int kind : {1, 2})
            if (lengths[i] > 0) result.push_back({kind, lengths[i]});
    return result;
}

}  // namespace

std::size_t least_rooms(std::span<const Item> items, Size room) {
    if (items.empty()) return 0;
    std::size_t least = 1;
    const bool few = items.size() <= 500;
    for (const Map& across : few ? maps(items, room.width) : std::vector<Map>{{}})
        for (const Map& down : few ? maps(items, room.height) : std::vector<Map>{{}}) {
            const Length whole = denominator(across, room.width) * denominator(down, room.height);
            Length sum = 0;
            for (const Item& item : items) {
                Length part = std::numeric_limits<Length>::max();
                for (const Size& shape : item.shapes)
                    if (shape.width <= room.width && shape.height <= room.height)
                        part = std::min(part, mapped(across, shape.width, room.width) *
                                                  mapped(down, shape.height, room.height));
                if (part != std::numeric_limits<Length>::max()) sum += part;
            }
            if (whole > 0) least = std::max(least, static_cast<std::size_t>((sum + whole - 1) / whole));
        }
    return least;
}

}  // namespace lode::packing
