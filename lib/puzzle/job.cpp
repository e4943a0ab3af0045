#include "puzzle/job.hpp"

#include <algorithm>
#include <cmath>
#include <set>

#include "puzzle/avoided_words.hpp"
#include "puzzle/inner_words.hpp"
#include "puzzle/nested_words.hpp"
#include "text/quoted.hpp"

namespace lode {
namespace {

constexpr std::size_t faults_told = 10;

bool is_latin(const std::string& letter) {
    const std::string plain = folded(letter);
    return plain.size() == 1 && plain.front() >= 'a' && plain.front() <= 'z';
}

TextRules with_locale(TextRules rules, const std::string& locale) {
    rules.locale = locale;
    return rules;
}

TextRules with_case(TextRules rules, LetterCase letters) {
    rules.letters = letters;
    return rules;
}

// The language's letters, for filler. Where no language is given, or one whose letters are not known, words
// in Latin letters get A to Z.
std::vector<std::string> language_letters(const TextRules& rules, const WordList& list) {
    auto letters = main_letters(rules);
    if (!letters.empty()) return letters;
    for (const auto& word : list.words)
        if (std::any_of(word.letters.begin(), word.letters.end(), is_latin))
            return main_letters(with_locale(rules, "en"));
    return {};
}

// Letters that are kept as they are written show by the words which case the grid is in, or that it is in
// both.
std::vector<std::string> filler_letters(const TextRules& rules, const WordList& list) {
    if (rules.letters != LetterCase::keep) return language_letters(rules, list);
    std::set<std::string> used;
    for (const auto& word : list.words) used.insert(word.letters.begin(), word.letters.end());
    std::vector<std::string> letters;
    for (const LetterCase letter_case : {LetterCase::upper, LetterCase::lower}) {
        const auto some = language_letters(with_case(rules, letter_case), list);
        if (std::any_of(some.begin(), some.end(), [&](const auto& letter) { return used.count(letter) > 0; }))
            letters.insert(letters.end(), some.begin(), some.end());
    }
    return letters;
}

Refusal unusable(const WordList& list, const std::string& message, std::vector<std::string> words,
                 const std::string& advice, int line) {
    return {Refusal::Reason::unusable,
            place_in(list.source, line) + message,
            std::move(words),
            {advice},
            list.source,
            line};
}

// In letters without case and marks.
std::vector<std::string> folded_letters(const std::string& word, const Segmenter& segmenter) {
    auto letters = segmenter.spell(word).letters;
    for (auto& letter : letters) letter = folded(letter);
    return letters;
}

// Numbers the letters without case and marks, and takes out the avoided words that are allowed.
std::optional<Refusal> guard_against_avoided(const Recipe& recipe, Job& job) {
    Alphabet plain;
    Letters seen_as;
    for (std::size_t letter = 0; letter < job.alphabet.size(); ++letter)
        seen_as.push_back(plain.add(folded(job.alphabet.text(static_cast<Letter>(letter)))));
    // Nothing where the grid will lack one of the letters: such a word can stand nowhere.
    const auto numbered = [&](const std::vector<std::string>& letters) -> std::optional<Letters> {
        Letters numbers;
        for (const auto& letter : letters) {
            const auto number = plain.find(letter);
            if (!number) return std::nullopt;
            numbers.push_back(*number);
        }
        return numbers;
    };

    // Two spellings of one avoided word are one, and an allowed one is none.
    std::set<std::vector<std::string>> done;
    for (const auto& word : allowed_readings(recipe, job.segmenter))
        done.insert(folded_letters(word, job.segmenter));
    std::vector<std::string> names;
    std::vector<Letters> sought;
    for (const auto& [text, word] : avoided_readings(recipe, job.segmenter)) {
        const auto letters = folded_letters(text, job.segmenter);
        if (!done.insert(letters).second) continue;
        if (auto numbers = numbered(letters)) {
            names.push_back(word);
            sought.push_back(std::move(*numbers));
        }
    }

    // The message is held to the same.
    std::vector<Letters> texts = job.words;
    if (!job.message.empty()) texts.push_back(job.message);
    for (Letters& text : texts)
        for (Letter& letter : text) letter = seen_as[letter];
    std::optional<Refusal> refusal;
    std::size_t told = 0;
    find_inner_words(sought, texts, [&](std::size_t inner, std::size_t outer, InnerCopies) {
        const bool listed = outer < job.words.size();
        const std::string shown = listed ? job.list.words[outer].shown : recipe.message;
        const int line = listed ? job.list.words[outer].line : 0;
        const std::string fault = (listed ? "" : "The message ") + quoted(shown) +
                                  " holds the avoided word " + quoted(names[inner]) + ".";
        if (!refusal)
            refusal = unusable(job.list, fault, {},
                               listed ? "Take the word out, or allow the avoided one with --allow."
                                      : "Write the message another way, or allow the word with --allow.",
                               line);
        else
            refusal->message += "\n" + place_in(job.list.source, line) + fault;
        refusal->words.push_back(shown);
        refusal->words.push_back(names[inner]);
        return ++told < faults_told;
    });
    job.avoided_guard = CopyGuard(sought, std::move(seen_as));
    return refusal;
}

// Beside the letters of the words and the message there is room for those of a language.
constexpr std::size_t most_chosen_letters = max_letters / 2;

Refusal too_many_letters() {
    return {Refusal::Reason::unusable,
            "The recipe has more different letters than a grid can hold.",
            {},
            {"Give a shorter message, or words of fewer different letters."},
            {},
            0};
}

std::optional<Refusal> spell_message(const Recipe& recipe, Job& job) {
    if (recipe.message.empty()) return std::nullopt;
    const auto spelling = job.segmenter.spell(recipe.message);
    if (spelling.bad.empty() && !spelling.letters.empty()) {
        for (const auto& letter : spelling.letters) {
            if (job.alphabet.size() == most_chosen_letters && !job.alphabet.find(letter))
                return too_many_letters();
            job.message.push_back(job.alphabet.add(letter));
        }
        return std::nullopt;
    }
    return Refusal{
        Refusal::Reason::unusable,
        "The message " + quoted(recipe.message) +
            (spelling.bad.empty() ? " holds no letter."
                                  : " holds " + quoted(spelling.bad) + ", which can stand in no cell."),
        {},
        {"Write it with letters; spaces and punctuation are left out."},
        {},
        0};
}

void choose_filler(const Recipe& recipe, Job& job) {
    const auto language = job.alphabet.add_all(filler_letters(recipe.text, job.list));
    // As often as in the words, and every letter of the language now and then.
    job.filler_weights.assign(job.alphabet.size(), 0);
    for (const auto& word : job.words)
        for (const Letter letter : word) ++job.filler_weights[letter];
    for (const Letter letter : language) ++job.filler_weights[letter];
}

// Letters of an earlier puzzle's filler stand where they stood; they are not drawn unless they are among the
// others.
std::optional<Refusal> add_kept_filler(const Recipe& recipe, Job& job) {
    if (!recipe.earlier) return std::nullopt;
    const std::set<std::string> letters(recipe.earlier->filler.begin(), recipe.earlier->filler.end());
    for (const auto& letter : letters) {
        if (letter.empty() || job.alphabet.find(letter)) continue;
        const auto spelling = job.segmenter.spell(letter);
        if (!spelling.bad.empty() || spelling.letters != std::vector{letter})
            return Refusal{Refusal::Reason::unusable,
                           "The earlier puzzle's filler holds " + quoted(letter) +
                               ", which is no letter by the recipe's locale and case.",
                           {},
                           {"Leave --keep filler out."},
                           {},
                           0};
        if (job.alphabet.size() == max_letters) return too_many_letters();
        job.alphabet.add(letter);
    }
    job.filler_weights.resize(job.alphabet.size(), 0);
    return std::nullopt;
}

}  // namespace

Outcome<double> checked_aspect(double columns_over_rows) {
    if (columns_over_rows >= 0.01 && columns_over_rows <= 100) return columns_over_rows;
    return Refusal{Refusal::Reason::unusable,
                   "The aspect is not between 0.01 and 100.",
                   {},
                   {"Give columns over rows: 1 is a square."},
                   {},
                   0};
}

Outcome<Job> check(const Recipe& recipe) {
    if (recipe.directions && recipe.directions->empty())
        return Refusal{
            Refusal::Reason::unusable, "No direction is given.", {}, {"Name one or more, or all."}, {}, 0};
    const auto aspect = checked_aspect(recipe.aspect);
    if (!aspect) return aspect.refusal();

    auto segmenter = Segmenter::open(recipe.text);
    if (!segmenter) return segmenter.refusal();
    auto list = spell(recipe.words, *segmenter);
    if (!list) return list.refusal();

    Job job{std::move(*segmenter), std::move(*list), {}, {}, {}, {}, {}, {}, {}, {}};
    for (const auto& word : job.list.words) job.words.push_back(job.alphabet.add_all(word.letters));
    auto nested = nest(job.list, job.words, recipe.nested);
    if (!nested) return nested.refusal();
    job.nested = std::move(*nested);
    job.right_to_left = is_right_to_left(job.list.words.front().shown);
    job.directions = recipe.directions.value_or(Directions::forward(job.right_to_left));

    if (auto refusal = spell_message(recipe, job)) return std::move(*refusal);
    choose_filler(recipe, job);
    if (auto refusal = add_kept_filler(recipe, job)) return std::move(*refusal);
    if (auto refusal = bad_avoided_word(recipe, job.segmenter)) return std::move(*refusal);
    if (auto refusal = guard_against_avoided(recipe, job)) return std::move(*refusal);
    return job;
}

}  // namespace lode
