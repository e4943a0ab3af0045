// Layouts that waste next to nothing. What was cut from whole rooms fits back in few ways only, and taste
// does not find them. But where little may be wasted, a niche must be filled to its full width, and sizes in
// micrometres seldom add up to it by chance: a search that looks first for what fills a niche exactly, alone,
// with one more, with two more, and turns back where more is wasted than the rooms can spare, goes straight
// to them. It starts anew by Luby's lengths, with other choices among equals. Complete where nothing may be
// wasted, up to its steps. Judged by the tests that cut rooms apart and ask for as many rooms.

#include <algorithm>
#include <numeric>

#include "cut/pack.hpp"
#include "cut/skyline.hpp"
#include "random/luby.hpp"

namespace lode::packing {

namespace {

class Search {
  public:
    Search(std::span<const Item> items, std::span<const Size> rooms, Random& random, Steps& steps)
        : items_(items), rooms_(rooms), random_(random), steps_(steps), layout_(items.size()) {
        for (const Size& room : rooms) spare_ += room.area();
        for (std::uint32_t i = 0; i < items.size(); ++i) {
            least_.push_back(items[i].least_area());
            spare_ -= least_.back();
            for (const Size& shape : items[i].shapes) sides_.push_back({shape.width, i});
        }
        std::sort(sides_.begin(), sides_.end());
        sides_.erase(std::unique(sides_.begin(), sides_.end()), sides_.end());
    }

    // Looks at so many places at the most.
    std::optional<Layout> run(std::uint64_t places) {
        places_left_ = places;
        if (spare_ >= 0 && go_on(Skyline(rooms_[0].width), 0, spare_)) return layout_;
        return std::nullopt;
    }
    // Whether the run tried all there was.
    [[nodiscard]] bool tried_all() const { return !cut_short_; }

  private:
    struct Side {
        Length length;
        std::uint32_t item;
        auto operator<=>(const Side&) const = default;
    };
    struct Choice {
        int more;  // how many more at least fill the niche: 3 stands for three or more
        std::uint64_t rank;
        std::uint32_t item;
        std::uint32_t shape;
    };

    [[nodiscard]] bool is_left(std::uint32_t item) const { return layout_[item].room < 0; }

    // How many more items at least fill a width beside this one.
    [[nodiscard]] int more_for(Length width, std::uint32_t beside) const {
        if (width == 0) return 0;
        const auto usable = [&](const Side& side) { return side.item != beside && is_left(side.item); };
        auto low = sides_.begin();
        auto high = std::upper_bound(sides_.begin(), sides_.end(), width,
                                     [](Length w, const Side& side) { return w < side.length; });
        for (auto it = high; it != low && (it - 1)->length == width; --it)
            if (usable(*(it - 1))) return 1;
        while (low != high) {
            const auto top = high - 1;
            const Length sum = low->length + top->length;
            if (sum < width || !usable(*low))
                ++low;
            else if (sum > width || !usable(*top) || top->item == low->item)
                --high;
            else
                return 2;
        }
        return 3;
    }

    bool go_on(Skyline skyline, std::size_t room, Length spare) {
        if (laid_ == items_.size()) return true;
        Niche niche = skyline.lowest();
        while (niche.bottom >= rooms_[room].height) {
            if (++room == rooms_.size()) return false;
            skyline = Skyline(rooms_[room].width);
            niche = skyline.lowest();
        }
        for (const Choice& choice : choices(niche, rooms_[room], spare)) {
            if (places_left_ == 0) {
                cut_short_ = true;
                return false;
            }
            --places_left_;
            const Size& shape = items_[choice.item].shapes[choice.shape];
            layout_[choice.item] = {static_cast<int>(room), niche.left, niche.bottom, choice.shape};
            ++laid_;
            Skyline after = skyline;
            after.lay(niche, niche.left, shape);
            if (go_on(std::move(after), room, spare - (shape.area() - least_[choice.item]))) return true;
            layout_[choice.item] = {};
            --laid_;
            if (cut_short_) return false;
        }
        const Length lost = skyline.raise(niche, rooms_[room].height);
        return lost <= spare && go_on(std::move(skyline), room, spare - lost);
    }

    std::vector<Choice> choices(const Niche& niche, const Size& room, Length spare) {
        std::vector<Choice> choices;
        for (std::uint32_t i = 0; i < items_.size(); ++i) {
            if (!is_left(i)) continue;
            const auto& shapes = items_[i].shapes;
            for (std::uint32_t s = 0; s < shapes.size(); ++s) {
                const Size& shape = shapes[s];
                if (shape.width > niche.width || niche.bottom + shape.height > room.height) continue;
                if (shape.area() - least_[i] > spare) continue;
                const bool like_another = std::any_of(choices.begin(), choices.end(), [&](const Choice& c) {
                    return items_[c.item].shapes[c.shape] == shape;
                });
                if (like_another) continue;
                const Length top = niche.bottom + shape.height;
                const bool level = top == niche.left_wall || top == niche.right_wall || top == room.height;
                const int more = more_for(niche.width - shape.width, i);
                choices.push_back({more - (level ? 1 : 0), random_.below(1u << 20), i, s});
            }
        }
        if (!steps_.spend(choices.size() * (8 + sides_.size() / 8) + items_.size())) {
            cut_short_ = true;
            return {};
        }
        std::sort(choices.begin(), choices.end(), [](const Choice& a, const Choice& b) {
            return a.more != b.more ? a.more < b.more : a.rank < b.rank;
        });
        return choices;
    }

    std::span<const Item> items_;
    std::span<const Size> rooms_;
    Random& random_;
    Steps& steps_;
    std::vector<Length> least_;
    std::vector<Side> sides_;
    Length spare_ = 0;
    Layout layout_;
    std::size_t laid_ = 0;
    std::uint64_t places_left_ = 0;
    bool cut_short_ = false;
};

// Some items put together, in one or two variants, the second with its sides changed.
struct Block {
    struct Member {
        std::size_t item;
        Spot spot;  // within the block
    };
    std::vector<Size> sizes;
    std::vector<std::vector<Member>> members;  // for each size
};

class Joiner {
  public:
    Joiner(std::span<const Item> items, std::span<const Size> rooms) : items_(items) {
        for (const Size& room : rooms) {
            most_.width = std::max(most_.width, room.width);
            most_.height = std::max(most_.height, room.height);
        }
        for (std::size_t i = 0; i < items.size(); ++i) {
            Block block;
            for (std::size_t s = 0; s < items[i].shapes.size(); ++s) {
                block.sizes.push_back(items[i].shapes[s]);
                block.members.push_back({{i, {0, 0, 0, s}}});
            }
            alone_.push_back(std::move(block));
        }
    }

    // Up to so many times two blocks that share a side, rather those whose side fewer others share.
    std::vector<Block> join(std::size_t times, Random& random, Steps& steps) const {
        std::vector<Block> blocks = alone_;
        for (; times > 0; --times) {
            if (!steps.spend(blocks.size() * 8)) break;
            const auto pair = pair_of(blocks, random);
            if (!pair) break;
            Block joined =
                stacked(blocks[pair->one], pair->variant_of_one, blocks[pair->other], pair->variant_of_other);
            blocks[pair->one] = std::move(joined);
            blocks.erase(blocks.begin() + static_cast<std::ptrdiff_t>(pair->other));
        }
        return blocks;
    }

  private:
    struct Pair {
        std::size_t one, variant_of_one, other, variant_of_other;
    };
    struct Width {
        Length width;
        std::size_t block, variant;
        auto operator<=>(const Width&) const = default;
    };

    [[nodiscard]] std::optional<Pair> pair_of(const std::vector<Block>& blocks, Random& random) const {
        std::vector<Width> widths;
        for (std::size_t b = 0; b < blocks.size(); ++b)
            for (std::size_t v = 0; v < blocks[b].sizes.size(); ++v)
                widths.push_back({blocks[b].sizes[v].width, b, v});
        std::sort(widths.begin(), widths.end());
        std::optional<Pair> best;
        std::uint32_t best_rank = 0;
        for (std::size_t from = 0, to = 0; from < widths.size(); from = to) {
            while (to < widths.size() && widths[to].width == widths[from].width) ++to;
            const auto many = static_cast<std::uint32_t>(to - from);
            if (many < 2) continue;
            for (std::size_t i = from; i < to; ++i)
                for (std::size_t j = i + 1; j < to && j < i + 8; ++j) {
                    const Width &a = widths[i], &b = widths[j];
                    const Length height =
                        blocks[a.block].sizes[a.variant].height + blocks[b.block].sizes[b.variant].height;
                    const bool upright = a.width <= most_.width && height <= most_.height;
                    const bool turned = a.width <= most_.height && height <= most_.width;
                    if (a.block == b.block || (!upright && !turned)) continue;
                    const std::uint32_t rank = random.below(1000) / many + 1;
                    if (rank <= best_rank) continue;
                    best_rank = rank;
                    best = Pair{std::min(a.block, b.block), a.block < b.block ? a.variant : b.variant,
                                std::max(a.block, b.block), a.block < b.block ? b.variant : a.variant};
                }
        }
        return best;
    }

    [[nodiscard]] Block stacked(const Block& one, std::size_t v, const Block& other, std::size_t w) const {
        Block block;
        const Size above = one.sizes[v], below = other.sizes[w];
        block.sizes.push_back({above.width, above.height + below.height});
        block.members.push_back(one.members[v]);
        for (Block::Member member : other.members[w]) {
            member.spot.top += above.height;
            block.members[0].push_back(member);
        }
        // With its sides changed, where all its members can be.
        std::vector<Block::Member> changed;
        for (Block::Member member : block.members[0]) {
            const auto& shapes = items_[member.item].shapes;
            const Size& as_is = shapes[member.spot.shape];
            const auto fellow = std::find(shapes.begin(), shapes.end(), Size{as_is.height, as_is.width});
            if (fellow == shapes.end()) return block;
            member.spot.shape = static_cast<std::size_t>(fellow - shapes.begin());
            std::swap(member.spot.left, member.spot.top);
            changed.push_back(member);
        }
        block.sizes.push_back({block.sizes[0].height, block.sizes[0].width});
        block.members.push_back(std::move(changed));
        return block;
    }

    std::span<const Item> items_;
    Size most_;
    std::vector<Block> alone_;
};

}  // namespace

std::optional<Layout> lay_tightly(std::span<const Item> items, std::span<const Size> rooms, Random& random,
                                  Steps& steps) {
    if (items.empty() || rooms.empty()) return std::nullopt;
    const Joiner joiner(items, rooms);
    constexpr std::uint64_t places_a_round = 60;
    for (std::uint64_t round = 1; steps.left() > 0; ++round) {
        const std::size_t times = round % 4 == 1 ? 0 : random.below(static_cast<std::uint32_t>(items.size()));
        const std::vector<Block> blocks = joiner.join(times, random, steps);
        std::vector<Item> joined;
        for (const Block& block : blocks) joined.push_back({block.sizes});
        Search search(joined, rooms, random, steps);
        const auto found = search.run(luby(round) * places_a_round);
        if (!found) {
            if (times == 0 && search.tried_all()) return std::nullopt;
            continue;
        }
        Layout layout(items.size());
        for (std::size_t b = 0; b < blocks.size(); ++b) {
            const Spot& at = (*found)[b];
            for (const Block::Member& member : blocks[b].members[at.shape])
                layout[member.item] = {at.room, at.left + member.spot.left, at.top + member.spot.top,
                                       member.spot.shape};
        }
        return layout;
    }
    return std::nullopt;
}

}  // namespace lode::packing
