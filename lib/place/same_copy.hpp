#pragma once
// When two placements of a word are one: they put the same letters on the same cells.

#include <algorithm>

#include <letterlode/grid.hpp>

namespace lode {

[[nodiscard]] inline bool is_palindrome(const Letters& word) {
    return std::equal(word.begin(), word.end(), word.rbegin());
}

[[nodiscard]] inline bool same_copy(const Letters& word, const Placement& a, const Placement& b) {
    return a == b || (same_cells(a, b, static_cast<int>(word.size())) && is_palindrome(word));
}

}  // namespace lode
