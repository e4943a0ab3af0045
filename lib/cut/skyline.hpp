#pragma once
// The upper border of what was laid in a room, left to right: level parts side by side.

#include <algorithm>
#include <limits>
#include <vector>

#include "cut/pack.hpp"

namespace lode::packing {

struct Niche {
    std::size_t part = 0;
    Length left = 0;
    Length width = 0;
    Length bottom = 0;
    Length left_wall = 0;  // up to where; as good as endless at the room's sides
    Length right_wall = 0;
};

class Skyline {
  public:
    static constexpr Length endless = std::numeric_limits<Length>::max() / 4;

    explicit Skyline(Length width) : width_(width), parts_{{0, 0}} {}

    // The lowest part, and of several the leftmost.
    [[nodiscard]] Niche lowest() const {
        std::size_t low = 0;
        for (std::size_t i = 1; i < parts_.size(); ++i)
            if (parts_[i].level < parts_[low].level) low = i;
        return {low,
                parts_[low].left,
                end(low) - parts_[low].left,
                parts_[low].level,
                low > 0 ? parts_[low - 1].level : endless,
                low + 1 < parts_.size() ? parts_[low + 1].level : endless};
    }

    // Up to its lower neighbour, or to `most`: what lies under it is lost. Returns the area lost.
    Length raise(const Niche& niche, Length most) {
        const Length level = std::min({niche.left_wall, niche.right_wall, most});
        parts_[niche.part].level = level;
        join(niche.part);
        return (level - niche.bottom) * niche.width;
    }

    // The shape, its left side at x, at one end of the niche.
    void lay(const Niche& niche, Length x, const Size& shape) {
        const Length right = niche.left + niche.width;
        const auto at = parts_.begin() + static_cast<std::ptrdiff_t>(niche.part);
        std::size_t laid = niche.part;
        if (shape.width == niche.width) {
            at->level += shape.height;
        } else if (x == niche.left) {
            at->left += shape.width;
            parts_.insert(at, {x, niche.bottom + shape.height});
        } else {
            parts_.insert(at + 1, {right - shape.width, niche.bottom + shape.height});
            ++laid;
        }
        join(laid);
    }

  private:
    struct Part {
        Length left;
        Length level;
    };
    [[nodiscard]] Length end(std::size_t part) const {
        return part + 1 < parts_.size() ? parts_[part + 1].left : width_;
    }
    // With neighbours of the same level.
    void join(std::size_t part) {
        if (part + 1 < parts_.size() && parts_[part + 1].level == parts_[part].level)
            parts_.erase(parts_.begin() + static_cast<std::ptrdiff_t>(part) + 1);
        if (part > 0 && parts_[part - 1].level == parts_[part].level)
            parts_.erase(parts_.begin() + static_cast<std::ptrdiff_t>(part));
    }

    Length width_;
    std::vector<Part> parts_;
};

}  // namespace lode::packing
