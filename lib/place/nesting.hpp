#pragma once
// Which copies the placements explain: a word's own, and those that stand inside others by the words' letters
// alone.

#include <algorithm>
#include <cstdint>
#include <span>
#include <vector>

#include "place/place.hpp"

namespace lode {

class Nesting {
  public:
    explicit Nesting(const PlaceTask& task);

    enum class Verdict {
        explained,  // by a word in place
        open,       // a word to come may explain it
        stray,
    };
    // Of a copy of the guard's word. `at(word)` gives the placement of a word that is in place, or nothing.
    template <class At>
    [[nodiscard]] Verdict judge(std::size_t word, const Placement& copy, const At& at) const;

    // Whether copies of the word can come from anything but its own placement.
    [[nodiscard]] bool is_inner(std::size_t word) const { return !around(word).empty(); }
    // Whether a placement of the word says where its only copy is.
    [[nodiscard]] bool is_plain(std::size_t word) const { return word < words_ && !is_inner(word); }

    // Whether the copies that the word in place and the ones around and inside it bring are all different:
    // each is expected for itself.
    template <class At>
    [[nodiscard]] bool copies_differ(std::uint32_t word, const At& at) const;

  private:
    [[nodiscard]] std::span<const InnerCopy> around(std::size_t inner) const {
        if (starts_.empty()) return {};
        return {by_inner_.data() + starts_[inner], starts_[inner + 1] - starts_[inner]};
    }
    template <class At>
    [[nodiscard]] bool copies_of_differ(std::size_t word, const At& at) const;

    const CopyGuard& guard_;
    std::size_t words_;
    std::vector<InnerCopy> by_inner_;
    std::vector<std::size_t> starts_;  // of each inner word in by_inner_; empty where none is nested
    std::vector<std::vector<std::uint32_t>> within_;  // by outer word: the inner ones
};

template <class At>
Nesting::Verdict Nesting::judge(std::size_t word, const Placement& copy, const At& at) const {
    Verdict verdict = Verdict::stray;
    const int length = guard_.length(word);
    if (word < words_) {
        const auto own = at(static_cast<std::uint32_t>(word));
        if (own && same_cells(*own, copy, length)) return Verdict::explained;
        if (!own) verdict = Verdict::open;
    }
    for (const InnerCopy& inner : around(word)) {
        const auto outer = at(inner.outer);
        if (outer && same_cells(inner.in(*outer), copy, length)) return Verdict::explained;
        if (!outer) verdict = Verdict::open;
    }
    return verdict;
}

template <class At>
bool Nesting::copies_of_differ(std::size_t word, const At& at) const {
    std::vector<Placement> copies;
    if (word < words_)
        if (const auto own = at(static_cast<std::uint32_t>(word))) copies.push_back(*own);
    for (const InnerCopy& inner : around(word))
        if (const auto outer = at(inner.outer)) copies.push_back(inner.in(*outer));
    for (std::size_t one = 0; one < copies.size(); ++one)
        for (std::size_t other = one + 1; other < copies.size(); ++other)
            if (same_cells(copies[one], copies[other], guard_.length(word))) return false;
    return true;
}

template <class At>
bool Nesting::copies_differ(std::uint32_t word, const At& at) const {
    if (starts_.empty()) return true;
    if (is_inner(word) && !copies_of_differ(word, at)) return false;
    return std::all_of(within_[word].begin(), within_[word].end(),
                       [&](std::uint32_t inner) { return copies_of_differ(inner, at); });
}

}  // namespace lode
