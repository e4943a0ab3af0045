#include "find/avoided_list.hpp"

#include <set>
#include <unordered_map>

namespace lode {

AvoidedList::AvoidedList(const AuditRules& rules, const Segmenter& segmenter) : named_(rules.avoid.size()) {
    // A letter that was met costs no more than a look: lists of avoided words may be long.
    std::unordered_map<std::string, std::uint32_t> known_as;  // as it is spelled
    std::unordered_map<std::string, std::uint32_t> places;    // without case and marks
    const auto numbers = [&](const std::string& word) {
        std::vector<std::uint32_t> all;
        const auto letters = segmenter.spell(word).letters;
        all.reserve(letters.size());
        for (const auto& letter : letters) {
            const auto [known, is_new] = known_as.try_emplace(letter, 0);
            if (is_new) {
                const auto next = static_cast<std::uint32_t>(letters_.size());
                const auto [place, is_new_place] = places.try_emplace(folded(letter), next);
                if (is_new_place) letters_.push_back(place->first);
                known->second = place->second;
            }
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
