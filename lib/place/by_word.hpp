#pragma once
// What searches ask of the words, and what they keep by word and give away in the end.

#include <algorithm>
#include <cstdint>
#include <optional>
#include <vector>

#include <letterlode/grid.hpp>

namespace lode {

// The words' letters lie below.
[[nodiscard]] inline std::size_t letter_bound(const std::vector<Letters>& words) {
    Letter most = 0;
    for (const auto& word : words)
        for (const Letter letter : word) most = std::max(most, letter);
    return most + std::size_t{1};
}

// With every word in place.
[[nodiscard]] inline std::vector<Placement> all_of(const std::vector<std::optional<Placement>>& placed) {
    std::vector<Placement> all;
    all.reserve(placed.size());
    for (const auto& placement : placed) all.push_back(*placement);
    return all;
}

// The word that failed most often, the first of several; there is one.
template <class Count>
[[nodiscard]] std::uint32_t most_failed(const std::vector<Count>& failures) {
    return static_cast<std::uint32_t>(std::max_element(failures.begin(), failures.end()) - failures.begin());
}

}  // namespace lode
