#include "puzzle/inner_words.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <string>
#include <string_view>
#include <unordered_map>

namespace lode {
namespace {

std::u16string as_key(const Letters& letters) {
    return {letters.begin(), letters.end()};
}

}  // namespace

void find_inner_words(
    std::span<const Letters> sought, std::span<const Letters> words,
    const std::function<bool(std::size_t inner, std::size_t outer, std::size_t copies)>& found) {
    std::unordered_multimap<std::u16string, std::size_t> by_letters;
    std::size_t longest = 0;
    for (std::size_t inner = 0; inner < sought.size(); ++inner) {
        if (sought[inner].empty()) continue;
        by_letters.emplace(as_key(sought[inner]), inner);
        longest = std::max(longest, sought[inner].size());
    }
    for (std::size_t outer = 0; outer < words.size(); ++outer) {
        const std::u16string forward = as_key(words[outer]);
        const std::u16string backward(forward.rbegin(), forward.rend());
        std::map<std::size_t, std::set<std::size_t>>
            starts;  // by inner word, counted from the outer word's first letter
        for (std::size_t start = 0; start < forward.size(); ++start)
            for (std::size_t count = 1; count <= std::min(longest, forward.size() - start); ++count) {
                const std::size_t turned = forward.size() - start - count;
                for (const auto& part : {forward.substr(start, count), backward.substr(turned, count)}) {
                    const auto [first, last] = by_letters.equal_range(part);
                    for (auto at = first; at != last; ++at) starts[at->second].insert(start);
                }
            }
        for (const auto& [inner, copies] : starts)
            if (!found(inner, outer, copies.size())) return;
    }
}

}  // namespace lode
