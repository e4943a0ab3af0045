#include "find/avoided_list.hpp"

#include <set>
#include <unordered_map>

namespace lode {

AvoidedList::AvoidedList(const AuditRules& rules, const Segmenter& segmenter) : named_(rules.avoid.size()) {
    std::unordered_map<std::string, std::uint32_t> places;
    const auto numbers = [&](const std::string& word) {
        std::vector<std::uint32_t> all;
        for (const auto& letter : segmenter.spell(word).letters) {
            const auto [known, is_new] =
                places.try_emplace(folded(letter), static_cast<std::uint32_t>(letters_.size()));
            if (is_new) letters_.push_back(known->first);
            all.push_back(known->second);
        }
        return all;
    };
    std::set<std::vector<std::uint32_t>> allowed;
    for (const auto& word : rules.allowed) allowed.insert(numbers(word));

    std::set<std::vector<std::uint32_t>> known;  // "cafe" and "café" are one avoided word
    for (const auto& word : rules.avoid) {
        auto letters = numbers(word);
        if (letters.size() < 2 || !known.insert(letters).second) continue;
        const bool is_allowed = allowed.contains(letters);
        words_.push_back({word, is_allowed, std::move(letters)});
    }
}

}  // namespace lode
