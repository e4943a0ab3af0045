#include "puzzle/avoidance.hpp"

#include <algorithm>
#include <set>

#include "puzzle/judged_words.hpp"

namespace lode {
namespace {

Letters plain_letters(const Segmenter::Spelling& spelling, Alphabet& plain) {
    Letters letters;
    letters.reserve(spelling.letters.size());
    for (const auto& letter : spelling.letters) letters.push_back(plain.add(folded(letter)));
    return letters;
}

}  // namespace

Outcome<std::shared_ptr<const Avoidance>> Avoidance::read(const Recipe& recipe, const Segmenter& segmenter) {
    // Two spellings of one avoided word are one, and an allowed one is none.
    Alphabet plain;
    std::set<Letters> done;
    for (const auto& word : recipe.allow)
        if (auto refusal = bad_avoided_word(word, "allowed", segmenter.spell(word)))
            return *std::move(refusal);
    for (const auto& reading : allowed_readings(recipe, segmenter))
        done.insert(plain_letters(segmenter.spell(reading), plain));

    auto readings = avoided_readings(recipe, segmenter);
    std::vector<std::string> names;
    std::vector<Letters> sought;
    for (const auto& [text, word, is_as_written] : readings) {
        const auto spelling = segmenter.spell(text);
        if (is_as_written)
            if (auto refusal = bad_avoided_word(word, "avoided", spelling)) return *std::move(refusal);
        // In one letter of the alphabet no word can be read.
        if (spelling.letters.size() < 2) continue;
        const auto [letters, is_new] = done.insert(plain_letters(spelling, plain));
        if (!is_new) continue;
        names.push_back(word);
        sought.push_back(*letters);
    }
    auto judged = readings.empty() ? nullptr
                                   : std::make_shared<const AvoidedList>(
                                         audit_rules(recipe, readings, segmenter), segmenter);
    return std::shared_ptr<const Avoidance>(new Avoidance(
        std::move(readings), std::move(judged), std::move(plain), std::move(names), std::move(sought)));
}

Avoidance::Avoidance(std::vector<AvoidedReading> readings, std::shared_ptr<const AvoidedList> judged,
                     Alphabet plain, std::vector<std::string> names, std::vector<Letters> sought)
    : readings_(std::move(readings)),
      judged_(std::move(judged)),
      plain_(std::move(plain)),
      names_(std::move(names)),
      sought_(std::move(sought)),
      is_sought_(plain_.size(), false),
      inside_(sought_),
      guard_(sought_, {}) {
    for (const Letters& word : sought_)
        for (const Letter letter : word) is_sought_[letter] = true;
}

Letters Avoidance::seen_as(const Alphabet& alphabet, const Language& language) const {
    Letters seen;
    seen.reserve(alphabet.size());
    for (std::size_t letter = 0; letter < alphabet.size(); ++letter)
        seen.push_back(
            plain_.find(language.plain(alphabet.text(static_cast<Letter>(letter)))).value_or(closed_cell));
    return seen;
}

CopyGuard Avoidance::guard(Letters seen_as, std::vector<std::size_t>& which) const {
    std::vector<bool> is_missing = is_sought_;
    for (const Letter letter : seen_as)
        if (letter != closed_cell) is_missing[letter] = false;
    if (std::find(is_missing.begin(), is_missing.end(), true) == is_missing.end())
        return guard_.seen_as(std::move(seen_as));
    std::vector<Letters> some;
    for (std::size_t word = 0; word < sought_.size(); ++word) {
        if (std::any_of(sought_[word].begin(), sought_[word].end(),
                        [&](Letter letter) { return is_missing[letter]; }))
            continue;
        which.push_back(word);
        some.push_back(sought_[word]);
    }
    return {some, std::move(seen_as)};
}

}  // namespace lode
