// A way to choose filler is a function from what is known of letters to their weights, listed with its name
// at the end. Weights are whole numbers. Judged by tests/filler_letters_test.cpp.

#include "puzzle/filler_letters.hpp"

#include <algorithm>
#include <map>
#include <numeric>
#include <set>

#include "puzzle/letter_shapes.hpp"
#include "puzzle/letter_table.hpp"
#include "text/quoted.hpp"
#include "text/utf8.hpp"

namespace lode {
namespace {

using Weights = std::vector<std::uint64_t>;

// A letter of which no count is known comes about once in so many.
constexpr std::uint64_t now_and_then = 1024;
// With easy weeding a letter of one counter is so much rarer than it would be, one of two twice that.
constexpr std::uint64_t rarer_by_counter = 12;
// A letter with a mark that no word has is so much rarer than one without.
constexpr std::uint64_t rarer_by_mark = 16;
// The sum of all weights stays below this.
constexpr std::uint64_t most_weight = std::uint64_t{1} << 30;

bool is_latin(const std::string& letter) {
    const std::string plain = folded(letter);
    return plain.size() == 1 && plain.front() >= 'a' && plain.front() <= 'z';
}

bool has_latin_word(const WordList& list) {
    return std::any_of(list.words.begin(), list.words.end(), [](const Word& word) {
        return std::any_of(word.letters.begin(), word.letters.end(), is_latin);
    });
}

// The language's letters, for filler. Where no language is given, or one whose letters are not known, words
// in Latin letters get A to Z.
const std::vector<std::string>& language_letters(const Language::InOneCase& known, const WordList& list) {
    return known.letters.empty() && has_latin_word(list) ? known.latin : known.letters;
}

// Letters that are kept as they are written show by the words which case the grid is in, or that it is in
// both.
std::vector<std::string> letters_in_case(const Language& language, const WordList& list) {
    if (language.cases().size() == 1) return language_letters(language.cases().front(), list);
    std::set<std::string> used;
    for (const auto& word : list.words) used.insert(word.letters.begin(), word.letters.end());
    std::vector<std::string> letters;
    for (const auto& in_one_case : language.cases()) {
        const auto& some = language_letters(in_one_case, list);
        if (std::any_of(some.begin(), some.end(), [&](const auto& letter) { return used.count(letter) > 0; }))
            letters.insert(letters.end(), some.begin(), some.end());
    }
    return letters;
}

// What is known of the alphabet's letters, by number.
struct Known {
    const Alphabet& alphabet;
    const Language& its_language;
    Weights in_words;            // how often each stands in the words
    std::vector<bool> language;  // whether it is one of the language's
    Weights in_language;         // how often it comes in the language; all 0 where nobody knows
};

std::uint64_t sum(const Weights& weights) {
    return std::accumulate(weights.begin(), weights.end(), std::uint64_t{0});
}

// By letter, whether no word has it and the alphabet has the same without its marks, written with fewer
// bytes: É beside E. Such a letter gives itself away, and in some languages they are more than the others.
std::vector<bool> odd_letters(const Known& known) {
    std::vector<bool> odd(known.alphabet.size(), false);
    const auto text_of = [&](std::size_t letter) -> const std::string& {
        return known.alphabet.text(static_cast<Letter>(letter));
    };
    std::size_t letters_of_a_byte = 0;
    for (std::size_t letter = 0; letter < odd.size(); ++letter)
        letters_of_a_byte += text_of(letter).size() == 1;
    if (letters_of_a_byte == odd.size()) return odd;  // one with a mark has more
    std::map<std::string, std::size_t> fewest;
    std::vector<std::string> plain;
    for (std::size_t letter = 0; letter < odd.size(); ++letter) {
        plain.push_back(known.its_language.plain(text_of(letter)));
        const auto [seen, is_new] = fewest.emplace(plain.back(), text_of(letter).size());
        if (!is_new) seen->second = std::min(seen->second, text_of(letter).size());
    }
    for (std::size_t letter = 0; letter < odd.size(); ++letter) {
        odd[letter] = text_of(letter).size() > fewest[plain[letter]];
        // Among words with marks, filler has them too.
        if (odd[letter] && known.in_words[letter] > 0) return std::vector<bool>(odd.size(), false);
    }
    return odd;
}

Weights as_in_words(const Known& known) {
    Weights weights = known.in_words;
    for (std::size_t letter = 0; letter < weights.size(); ++letter)
        if (known.language[letter]) ++weights[letter];
    const auto odd = odd_letters(known);
    if (std::find(odd.begin(), odd.end(), true) == odd.end()) return weights;
    for (std::size_t letter = 0; letter < weights.size(); ++letter)
        if (!odd[letter]) weights[letter] *= rarer_by_mark;
    return weights;
}

Weights only_as_in_words(const Known& known) {
    return known.in_words;
}

Weights as_in_language(const Known& known) {
    const std::uint64_t all = sum(known.in_language);
    if (all == 0) return as_in_words(known);
    const std::uint64_t all_in_words = sum(known.in_words);
    Weights weights = known.in_language;
    for (std::size_t letter = 0; letter < weights.size(); ++letter) {
        weights[letter] *= now_and_then;
        if (weights[letter] > 0) continue;
        // Letters of the words that the language's counts lack come as often as in the words.
        if (known.in_words[letter] > 0)
            weights[letter] =
                std::max<std::uint64_t>(1, all * now_and_then / all_in_words * known.in_words[letter]);
        else if (known.language[letter])
            weights[letter] = all;
    }
    return weights;
}

Weights with_few_counters(const Known& known) {
    Weights weights = as_in_language(known);
    for (std::size_t letter = 0; letter < weights.size(); ++letter) {
        const int counters = counters_of(known.alphabet.text(static_cast<Letter>(letter)));
        weights[letter] *= 2 * rarer_by_counter;  // so that the rare ones, too, keep their proportions
        if (counters > 0 && weights[letter] > 0)
            weights[letter] = std::max<std::uint64_t>(
                1, weights[letter] / (rarer_by_counter * static_cast<std::uint64_t>(counters)));
    }
    return weights;
}

struct Way {
    FillerWay way;
    std::string_view name;
    Weights (*weigh)(const Known&);
};
constexpr std::array<Way, all_filler_ways.size()> ways{{
    {FillerWay::words, "words", as_in_words},
    {FillerWay::language, "language", as_in_language},
    {FillerWay::only_words, "only-words", only_as_in_words},
    {FillerWay::easy_weeding, "easy-weeding", with_few_counters},
}};

const Way& details_of(FillerWay wanted) {
    return *std::find_if(ways.begin(), ways.end(), [&](const Way& way) { return way.way == wanted; });
}

Refusal unusable(const std::string& message, const std::string& advice) {
    return {Refusal::Reason::unusable, message, {}, {advice}, {}, 0};
}

// The recipe's counts, where it has any; letters that are neither the words' nor the language's are passed
// over where the language's letters are known.
std::optional<Refusal> take_counts(const Recipe& recipe, Job& job, Known& known) {
    const bool any_letter =
        std::find(known.language.begin(), known.language.end(), true) == known.language.end();
    for (const auto& [letter, count] : recipe.letter_counts) {
        const auto spelling = job.segmenter().spell(letter);
        if (!spelling.bad.empty() || spelling.letters != std::vector{letter})
            return unusable("The letter counts hold " + quoted(letter) +
                                ", which is no letter by the recipe's locale and case.",
                            "Count the text again with --filler-text.");
        if (count > max_letter_count)
            return unusable("The letter counts say " + std::to_string(count) + " for " + quoted(letter) +
                                ", which is too many.",
                            "At most " + std::to_string(max_letter_count) + ".");
        auto number = job.alphabet.find(letter);
        if (!number && any_letter && count > 0 && job.alphabet.size() < max_letters / 2) {
            number = job.alphabet.add(letter);
            for (Weights* weights : {&known.in_words, &known.in_language})
                weights->resize(job.alphabet.size(), 0);
            known.language.resize(job.alphabet.size(), false);
        }
        if (number && (any_letter || known.language[*number] || known.in_words[*number] > 0))
            known.in_language[*number] += count;
    }
    return std::nullopt;
}

void take_table(const Recipe& recipe, const Job& job, Known& known) {
    const std::string& locale = recipe.text.locale;
    // As with the avoid list: a maker who names no language most often writes in English.
    const bool is_root = !job.language->is_known();
    const auto& table = letter_table(is_root && has_latin_word(job.list) ? "en" : locale);
    for (const auto& [tabled, count] : table) {
        const std::string bare = to_utf8(icu::UnicodeString(static_cast<UChar32>(tabled)));
        for (std::size_t letter = 0; letter < known.language.size(); ++letter) {
            const std::string& text = known.alphabet.text(static_cast<Letter>(letter));
            // Letters with marks are letters of their own, which the table does not have.
            if (known.language[letter] && folded(text) == bare && text.size() == bare.size())
                known.in_language[letter] = count;
        }
    }
}

// In proportion, so that their sum can be drawn from.
std::vector<std::uint32_t> scaled(const Weights& weights) {
    const std::uint64_t divisor = sum(weights) / most_weight + 1;
    std::vector<std::uint32_t> small;
    for (const std::uint64_t weight : weights)
        small.push_back(
            weight == 0 ? 0 : static_cast<std::uint32_t>(std::max<std::uint64_t>(1, weight / divisor)));
    return small;
}

}  // namespace

std::string_view name(FillerWay way) {
    return details_of(way).name;
}

std::optional<FillerWay> filler_way_named(std::string_view name) {
    for (const Way& way : ways)
        if (way.name == name) return way.way;
    return std::nullopt;
}

std::optional<Refusal> choose_filler(const Recipe& recipe, Job& job) {
    const bool by_language = recipe.filler == FillerWay::language || recipe.filler == FillerWay::easy_weeding;
    if (!recipe.letter_counts.empty() && !by_language)
        return unusable("Letters are counted, and the filler '" + std::string(name(recipe.filler)) +
                            "' does not go by counts.",
                        "Leave --filler-text out, or take --filler language.");
    const auto language = job.alphabet.add_all(letters_in_case(*job.language, job.list));
    const std::size_t letters = job.alphabet.size();
    Known known{job.alphabet, *job.language, Weights(letters, 0), std::vector<bool>(letters, false),
                Weights(letters, 0)};
    for (const Letter letter : language) known.language[letter] = true;
    for (const auto& word : job.words)
        for (const Letter letter : word) ++known.in_words[letter];
    if (by_language) {
        if (auto refusal = take_counts(recipe, job, known)) return refusal;
        if (recipe.letter_counts.empty()) take_table(recipe, job, known);
    }
    job.filler_weights = scaled(details_of(recipe.filler).weigh(known));
    return std::nullopt;
}

FillerRules filler_rules(const Recipe& recipe, const Alphabet& alphabet) {
    FillerRules rules;
    rules.longest_run = static_cast<int>(std::min<std::uint32_t>(recipe.longest_run, max_side));
    if (recipe.look_alikes_apart)
        for (std::size_t letter = 0; letter < alphabet.size(); ++letter)
            rules.looks.push_back(look_of(alphabet.text(static_cast<Letter>(letter))));
    return rules;
}

std::vector<LetterCount> count_letters(std::string_view text, const Segmenter& segmenter) {
    std::map<std::string, std::uint64_t> counts;
    const auto count = [&](std::string_view part) {
        const auto spelling = segmenter.spell(part);
        for (const auto& letter : spelling.letters) ++counts[letter];
        return spelling.bad.empty();
    };
    constexpr std::string_view blanks = " \t\r\n";
    for (std::size_t start = 0; (start = text.find_first_not_of(blanks, start)) != std::string_view::npos;) {
        const std::size_t end = std::min(text.find_first_of(blanks, start), text.size());
        const std::string_view word = text.substr(start, end - start);
        if (!count(word))
            for (const auto& cluster : segmenter.clusters(word)) count(cluster);
        start = end;
    }
    std::vector<LetterCount> all;
    for (const auto& [letter, times] : counts) all.push_back({letter, times});
    return all;
}

}  // namespace lode
