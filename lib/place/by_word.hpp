#pragma once
// What searches keep by word, and give away in the end.

#include <algorithm>
#include <cstdint>
#include <optional>
#include <vector>

#include <letterlode/grid.hpp>

namespace lode {

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
