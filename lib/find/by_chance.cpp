#include "find/by_chance.hpp"

#include <algorithm>
#include <map>
#include <tuple>

namespace lode {
namespace {

// In one case, so that it does not matter in which a grid and a dictionary are written.
Segmenter in_one_case(const Segmenter& segmenter) {
    TextRules rules = segmenter.rules();
    if (rules.letters == LetterCase::keep) rules.letters = LetterCase::upper;
    return std::move(Segmenter::open(rules)).value();
}

std::string joined(const std::vector<std::string>& letters) {
    std::string text;
    for (const auto& letter : letters) text += letter;
    return text;
}

struct Standing {
    Copy copy;
    std::size_t word;
};

bool is_told_before(const Standing& a, const Standing& b) {
    const auto key = [](const Standing& of) {
        return std::tuple(-of.copy.length, of.copy.first.row, of.copy.first.column, of.copy.direction,
                          of.word);
    };
    return key(a) < key(b);
}

}  // namespace

ByChance::ByChance(const Alphabet& alphabet, const std::vector<std::string>& dictionary, std::size_t shortest,
                   const Segmenter& segmenter)
    : ByChance(alphabet, dictionary, shortest, in_one_case(segmenter)) {}

ByChance::ByChance(const Alphabet& alphabet, const std::vector<std::string>& dictionary, std::size_t shortest,
                   Segmenter&& one_case)
    : reading_(alphabet, [&](const std::string& letter) { return joined(one_case.spell(letter).letters); }) {
    std::map<std::vector<std::string>, std::size_t> known;
    for (const auto& word : dictionary) {
        auto letters = one_case.spell(word).letters;
        if (letters.size() < std::max(shortest, std::size_t{1})) continue;
        const auto [at, is_new] = known.emplace(std::move(letters), words_.size());
        if (is_new) {
            if (reading_.add(at->first))
                words_.push_back(word);
            else
                known.erase(at);
        } else if (word.size() < words_[at->second].size()) {
            words_[at->second] = word;
        }
    }
    reading_.build();
}

bool ByChance::find(const Grid& grid, const CoveredLines& explained, std::size_t most,
                    const SearchControl& control, std::vector<AvoidedFinding>& findings) const {
    std::vector<Standing> standing;
    bool all = true;
    const auto keep_the_first = [&] {
        if (standing.size() <= most) return;
        all = false;
        std::nth_element(standing.begin(), standing.begin() + static_cast<std::ptrdiff_t>(most),
                         standing.end(), is_told_before);
        standing.resize(most);
    };
    SearchRules rules;
    rules.control = control;
    all &= reading_.search(
        grid,
        [&](std::size_t word, const Copy& copy) {
            if (explained.holds(copy)) return true;
            standing.push_back({copy, word});
            if (standing.size() / 2 > most) keep_the_first();
            return true;
        },
        rules);
    keep_the_first();
    std::sort(standing.begin(), standing.end(), is_told_before);
    findings.reserve(findings.size() + standing.size());
    for (const Standing& one : standing) findings.push_back({words_[one.word], one.copy});
    return all;
}

}  // namespace lode
