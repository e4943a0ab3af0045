// A group's sizes of film are found from the widest to the narrowest: the group is laid into an endless
// strip, the lowest of a few tastes is kept, and the next strip is narrower than what that one took.

#include "cut/film_shapes.hpp"

#include <algorithm>

namespace lode::packing {

std::vector<Item> FilmShapes::items(const Group& group) const {
    std::vector<Item> items;
    for (const std::size_t piece : group) {
        Item item;
        for (const Turn& turn : pieces_[piece].turns)
            item.shapes.push_back({turn.size.width + rules_.gap, turn.size.height + rules_.gap});
        items.push_back(std::move(item));
    }
    return items;
}

bool FilmShapes::is_allowed(Size film, std::size_t colour) const {
    if (film.width > rules_.bed.width || film.height > rules_.bed.height) return false;
    if (!rules_.sheets[colour]) return true;
    const auto& sheets = *rules_.sheets[colour];
    return std::any_of(sheets.begin(), sheets.end(), [&](const Sheet& sheet) {
        return (film.width <= sheet.size.width && film.height <= sheet.size.height) ||
               (film.width <= sheet.size.height && film.height <= sheet.size.width);
    });
}

FilmShape FilmShapes::shape_of(const Group& group, const Layout& layout) const {
    FilmShape shape;
    Length left = layout[0].left, top = layout[0].top;
    for (const Spot& spot : layout) {
        left = std::min(left, spot.left);
        top = std::min(top, spot.top);
    }
    for (std::size_t i = 0; i < group.size(); ++i) {
        const Size& size = pieces_[group[i]].turns[layout[i].shape].size;
        const LaidPiece laid{group[i], layout[i].shape, layout[i].left - left + rules_.margin,
                             layout[i].top - top + rules_.margin};
        shape.size.width = std::max(shape.size.width, laid.left + size.width + rules_.margin);
        shape.size.height = std::max(shape.size.height, laid.top + size.height + rules_.margin);
        shape.pieces.push_back(laid);
    }
    return shape;
}

std::optional<FilmShape> FilmShapes::changed(const FilmShape& shape) const {
    FilmShape result{{shape.size.height, shape.size.width}, {}};
    for (LaidPiece laid : shape.pieces) {
        const auto& turns = pieces_[laid.piece].turns;
        const Size size = turns[laid.turn].size;
        const auto fellow = std::find_if(turns.begin(), turns.end(), [&](const Turn& turn) {
            return turn.size == Size{size.height, size.width};
        });
        if (fellow == turns.end()) return std::nullopt;
        laid.turn = static_cast<std::size_t>(fellow - turns.begin());
        std::swap(laid.left, laid.top);
        result.pieces.push_back(laid);
    }
    return result;
}

void FilmShapes::add(std::vector<FilmShape>& shapes, FilmShape shape, std::size_t colour) const {
    if (!is_allowed(shape.size, colour)) return;
    const auto covers = [](const Size& a, const Size& b) {
        return a.width <= b.width && a.height <= b.height;
    };
    for (const FilmShape& other : shapes)
        if (covers(other.size, shape.size)) return;
    std::erase_if(shapes, [&](const FilmShape& other) { return covers(shape.size, other.size); });
    const auto at = std::find_if(shapes.begin(), shapes.end(),
                                 [&](const FilmShape& other) { return other.size.width < shape.size.width; });
    shapes.insert(at, std::move(shape));
}

void FilmShapes::learn(const Group& group, const Layout& layout) {
    auto& shapes = known_[group].shapes;
    const std::size_t colour = pieces_[group.front()].colour;
    FilmShape shape = shape_of(group, layout);
    if (auto other = changed(shape)) add(shapes, std::move(*other), colour);
    add(shapes, std::move(shape), colour);
}

std::optional<std::pair<Group, Group>> FilmShapes::cut(const Group& group, Random& random, Steps& steps) {
    const auto& shapes = of(group, random, steps);
    if (shapes.empty()) return std::nullopt;
    const FilmShape& shape = shapes[random.below(static_cast<std::uint32_t>(shapes.size()))];
    const bool across = random.below(2) == 0;
    struct Extent {
        Length from, to;
        const LaidPiece* piece;
    };
    std::vector<Extent> extents;
    for (const LaidPiece& laid : shape.pieces) {
        const Size& size = pieces_[laid.piece].turns[laid.turn].size;
        const Length from = across ? laid.left : laid.top;
        extents.push_back({from, from + (across ? size.width : size.height), &laid});
    }
    std::stable_sort(extents.begin(), extents.end(),
                     [](const Extent& a, const Extent& b) { return a.from < b.from; });
    std::vector<std::size_t> lines;  // before which extent
    Length reach = extents[0].to;
    for (std::size_t i = 1; i < extents.size(); ++i) {
        if (extents[i].from >= reach) lines.push_back(i);
        reach = std::max(reach, extents[i].to);
    }
    if (lines.empty()) return std::nullopt;
    const std::size_t line = lines[random.below(static_cast<std::uint32_t>(lines.size()))];
    const auto side = [&](std::size_t from, std::size_t to) {
        std::vector<LaidPiece> laid;
        for (std::size_t i = from; i < to; ++i) laid.push_back(*extents[i].piece);
        std::sort(laid.begin(), laid.end(),
                  [](const LaidPiece& a, const LaidPiece& b) { return a.piece < b.piece; });
        Group part;
        Layout layout;
        for (const LaidPiece& piece : laid) {
            part.push_back(piece.piece);
            layout.push_back({0, piece.left, piece.top, piece.turn});
        }
        return std::pair(part, layout);
    };
    const auto before = side(0, line);
    const auto beyond = side(line, extents.size());
    learn(before.first, before.second);
    learn(beyond.first, beyond.second);
    return std::pair(before.first, beyond.first);
}

const std::vector<FilmShape>& FilmShapes::of(const Group& group, Random& random, Steps& steps) {
    Known& known = known_[group];
    if (known.searched) return known.shapes;
    known.searched = true;
    const std::size_t colour = pieces_[group.front()].colour;
    if (group.size() == 1) {
        const auto& turns = pieces_[group[0]].turns;
        for (std::size_t t = 0; t < turns.size(); ++t)
            add(known.shapes,
                {{turns[t].size.width + 2 * rules_.margin, turns[t].size.height + 2 * rules_.margin},
                 {{group[0], t, rules_.margin, rules_.margin}}},
                colour);
        return known.shapes;
    }
    constexpr std::size_t most_laid_anew = 150;
    if (group.size() > most_laid_anew) return known.shapes;
    const std::vector<Item> all = items(group);
    const std::vector<std::uint32_t> weights(all.size(), 1024);
    static constexpr Taste tastes[] = {
        {16, 4, 0, 8, 0}, {4, 16, 0, 8, 0}, {4, 4, 16, 8, 0}, {8, 8, 0, 16, 4}};
    const Size whole = inside(rules_.bed);
    const bool few = all.size() <= 16;
    for (Length width = whole.width; width > 0 && steps.left() > 0;) {
        const Size strip{width, whole.height};
        std::optional<FilmShape> lowest;
        for (const Taste& taste : std::span(tastes, few ? std::size(tastes) : 2)) {
            const Layout layout = lay(all, std::span(&strip, 1), weights, taste, random, steps);
            if (!is_whole(layout)) continue;
            FilmShape shape = shape_of(group, layout);
            if (!lowest || shape.size.height < lowest->size.height ||
                (shape.size.height == lowest->size.height && shape.size.width < lowest->size.width))
                lowest = std::move(shape);
        }
        if (!lowest) break;
        // Narrower by a fifteenth at least, or a fifth, so that there are some thirty or ten strips at the
        // most.
        const Length taken = lowest->size.width - 2 * rules_.margin + rules_.gap;
        width = std::min(taken - 1, width - width / (few ? 15 : 5) - 1);
        if (auto other = changed(*lowest)) add(known.shapes, std::move(*other), colour);
        add(known.shapes, std::move(*lowest), colour);
    }
    return known.shapes;
}

}  // namespace lode::packing
