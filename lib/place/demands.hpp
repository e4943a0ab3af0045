#pragma once
// What a placement must meet besides letters that agree.

#include <cstddef>
#include <cstdint>
#include <limits>
#include <optional>
#include <vector>

#include <letterlode/grid.hpp>

namespace lode {

struct Range {
    std::size_t least = 0;
    std::size_t most = std::numeric_limits<std::size_t>::max();
    [[nodiscard]] bool contains(std::size_t number) const { return number >= least && number <= most; }
};

// Of the words, how many read in one of some directions. Shares with a least have no direction in common.
struct Share {
    Directions directions;
    Range words;
};

struct Demands {
    // By word: the placement that it must have (a palindrome may be read from its other end); empty where no
    // word is pinned.
    std::vector<std::optional<Placement>> pins;
    Range crossings;  // cells that two or more words share
    int spacing = 0;  // cells that lie between two words, in every direction, at the least
    std::optional<std::size_t> leftover;  // exactly so many open cells outside all words
    std::vector<Share> shares;
    // What the leftover cells spell in reading order: there are then as many as it has letters, or more where
    // filler follows it. Empty where all is left to the filler.
    Letters message;
    bool filler_follows = false;
    bool message_from_right = false;               // each row of it is read from the right
    std::vector<std::optional<Placement>> before;  // by word: where it stood; empty where nothing did
    // Of the words that stood somewhere, how many may stand elsewhere now.
    std::size_t most_moved = std::numeric_limits<std::size_t>::max();

    // Whether words may share cells at all.
    [[nodiscard]] bool may_cross() const { return crossings.most > 0 && spacing == 0; }
    // Whether a word on a cell of its own is no better or worse for where it stands in the grid.
    [[nodiscard]] bool are_symmetric() const {
        return pins.empty() && shares.empty() && message.empty() && before.empty();
    }
    [[nodiscard]] bool count_anything() const {
        return crossings.least > 0 || crossings.most != Range().most || spacing > 0 || leftover ||
               !shares.empty() || !message.empty() || !before.empty();
    }
};

// A copy of a listed word that every placement of another brings with it.
struct InnerCopy {
    std::uint32_t inner = 0;  // by its number in the guard over the listed words
    std::uint32_t outer = 0;  // by its number among the words to be placed
    int first = 0;            // the outer word's letter where the inner one begins, from 0
    bool turned = false;      // the inner word runs against the outer one
    // Where it stands for a placement of the outer word.
    [[nodiscard]] Placement in(const Placement& outer_placement) const {
        const auto [cell, direction] = outer_placement;
        return {moved(cell, direction, first), turned ? opposite(direction) : direction};
    }
};

}  // namespace lode
