#include "puzzle/job.hpp"

#include <algorithm>
#include <cmath>
#include <set>

#include "puzzle/avoided_words.hpp"
#include "puzzle/inner_words.hpp"
#include "text/quoted.hpp"

namespace lode {
namespace {

// Of the open cells, how many the words' letters take up at the most where the size is left to us: this
// project's judgement of what looks neither crammed nor empty.
constexpr double comfortable_density = 0.6;
constexpr std::size_t faults_told = 10;

bool is_latin(const std::string& letter) {
    const std::string plain = folded(letter);
    return plain.size() == 1 && plain.front() >= 'a' && plain.front() <= 'z';
}

// The language's letters, for filler. Where no language is given, or one whose letters are not known, words
// in Latin letters get A to Z.
std::vector<std::string> language_letters(const TextRules& rules, const WordList& list) {
    auto letters = main_letters(rules);
    if (!letters.empty()) return letters;
    for (const auto& word : list.words)
        if (std::any_of(word.letters.begin(), word.letters.end(), is_latin))
            return main_letters({"en", rules.letters});
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
        const auto some = language_letters({rules.locale, letter_case}, list);
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

std::optional<Refusal> nested_words(const Job& job) {
    std::optional<Refusal> refusal;
    std::size_t told = 0;
    find_inner_words(job.words, job.words, [&](std::size_t inner, std::size_t outer, InnerCopies) {
        const Word& small = job.list.words[inner];
        const Word& large = job.list.words[outer];
        const bool turned = small.letters.size() == large.letters.size();
        // Two words that are each other backward are told once.
        if (inner == outer || (turned && inner < outer)) return true;
        const std::string fault =
            quoted(small.shown) + (turned ? " is " + quoted(large.shown) + " backward."
                                          : " stands inside " + quoted(large.shown) + ".");
        if (!refusal)
            refusal = unusable(job.list, fault, {}, "Take one of the two out, or write it another way.",
                               small.line);
        else
            refusal->message += "\n" + place_in(job.list.source, small.line) + fault;
        for (const auto& word : {small.shown, large.shown})
            if (std::find(refusal->words.begin(), refusal->words.end(), word) == refusal->words.end())
                refusal->words.push_back(word);
        return ++told < faults_told;
    });
    return refusal;
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
    for (const auto& word : recipe.allow) done.insert(folded_letters(word, job.segmenter));
    std::vector<std::string> names;
    std::vector<Letters> sought;
    for (const auto& word : avoided_words(recipe)) {
        const auto letters = folded_letters(word, job.segmenter);
        if (!done.insert(letters).second) continue;
        if (auto numbers = numbered(letters)) {
            names.push_back(word);
            sought.push_back(std::move(*numbers));
        }
    }

    std::vector<Letters> listed;
    for (const auto& word : job.words) {
        listed.emplace_back();
        for (const Letter letter : word) listed.back().push_back(seen_as[letter]);
    }
    std::optional<Refusal> refusal;
    std::size_t told = 0;
    find_inner_words(sought, listed, [&](std::size_t inner, std::size_t outer, InnerCopies) {
        const Word& word = job.list.words[outer];
        const std::string fault = "'" + word.shown + "' holds the avoided word '" + names[inner] + "'.";
        if (!refusal)
            refusal = unusable(job.list, fault, {},
                               "Take the word out, or allow the avoided one with --allow.", word.line);
        else
            refusal->message += "\n" + place_in(job.list.source, word.line) + fault;
        refusal->words.push_back(word.shown);
        refusal->words.push_back(names[inner]);
        return ++told < faults_told;
    });
    job.avoided_guard = CopyGuard(sought, std::move(seen_as));
    return refusal;
}

void choose_filler(const Recipe& recipe, Job& job) {
    const auto language = job.alphabet.add_all(filler_letters(recipe.text, job.list));
    // As often as in the words, and every letter of the language now and then.
    job.filler_weights.assign(job.alphabet.size(), 0);
    for (const auto& word : job.words)
        for (const Letter letter : word) ++job.filler_weights[letter];
    for (const Letter letter : language) ++job.filler_weights[letter];
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

    Job job{std::move(*segmenter), std::move(*list), {}, {}, {}, {}, {}, {}};
    for (const auto& word : job.list.words) job.words.push_back(job.alphabet.add_all(word.letters));
    if (auto refusal = nested_words(job)) return std::move(*refusal);
    choose_filler(recipe, job);

    job.directions =
        recipe.directions.value_or(Directions::forward(is_right_to_left(job.list.words.front().shown)));
    Letters itself(job.alphabet.size());
    for (std::size_t letter = 0; letter < itself.size(); ++letter)
        itself[letter] = static_cast<Letter>(letter);
    job.words_guard = CopyGuard(job.words, std::move(itself));

    if (auto refusal = bad_avoided_word(recipe, job.segmenter)) return std::move(*refusal);
    if (auto refusal = guard_against_avoided(recipe, job)) return std::move(*refusal);
    return job;
}

std::optional<Refusal> too_long_for(const Mask& mask, const Job& job) {
    const auto longest = static_cast<std::size_t>(longest_run(mask, job.directions));
    for (const auto& word : job.list.words) {
        if (word.letters.size() <= longest) continue;
        return unusable(
            job.list,
            "'" + word.shown + "' has " + std::to_string(word.letters.size()) + " letters, and a grid of " +
                std::to_string(mask.size().columns) + "x" + std::to_string(mask.size().rows) +
                " takes words of at most " + std::to_string(longest) + " in these directions and this shape.",
            {word.shown}, "Take a larger grid, more directions or a shorter word; --grid auto finds a size.",
            word.line);
    }
    return std::nullopt;
}

namespace {

// A shape that leaves its outer rows or columns closed has lost its tips, as a star on an even number of
// columns does.
bool fills_its_frame(const Mask& mask) {
    const Size size = mask.size();
    const auto open_in_row = [&](int row) {
        for (int column = 0; column < size.columns; ++column)
            if (mask.open({row, column})) return true;
        return false;
    };
    const auto open_in_column = [&](int column) {
        for (int row = 0; row < size.rows; ++row)
            if (mask.open({row, column})) return true;
        return false;
    };
    return open_in_row(0) && open_in_row(size.rows - 1) && open_in_column(0) &&
           open_in_column(size.columns - 1);
}

std::optional<Refusal> too_large(Size size) {
    if (size.cells() <= max_made_cells) return std::nullopt;
    return Refusal{Refusal::Reason::unusable,
                   "A puzzle of " + std::to_string(size.cells()) + " cells is too large.",
                   {},
                   {"At most " + std::to_string(max_made_cells) + " cells."},
                   {},
                   0};
}

}  // namespace

Outcome<Mask> choose_mask(const Recipe& recipe, const Job& job, std::size_t growth) {
    if (recipe.mask) {
        if (auto refusal = too_large(recipe.mask->size())) return std::move(*refusal);
        return *recipe.mask;
    }
    if (recipe.size) {
        const auto size = checked_size(recipe.size->columns, recipe.size->rows);
        if (!size) return size.refusal();
        if (auto refusal = too_large(*size)) return std::move(*refusal);
        return shape_mask(recipe.shape, *size);
    }
    std::size_t letters = 0;
    std::size_t longest = 0;
    for (const auto& word : job.words) {
        letters += word.size();
        longest = std::max(longest, word.size());
    }
    const double wanted =
        std::ceil(static_cast<double>(letters) / comfortable_density) + static_cast<double>(growth);
    for (double cells = std::max(4.0, wanted); cells <= static_cast<double>(max_made_cells); cells *= 1.03) {
        const double columns = std::max(1.0, std::round(std::sqrt(cells * recipe.aspect)));
        const double rows = std::max(1.0, std::ceil(cells / columns));
        const auto size = checked_size(static_cast<long long>(columns), static_cast<long long>(rows));
        if (!size) break;
        if (std::max(columns, rows) < static_cast<double>(longest)) continue;
        Mask mask = shape_mask(recipe.shape, *size);
        if (static_cast<double>(mask.open_count()) >= wanted && fills_its_frame(mask) &&
            !too_long_for(mask, job))
            return mask;
    }
    return Refusal{Refusal::Reason::unusable,
                   "No grid of at most " + std::to_string(max_made_cells) +
                       " cells holds these words in these directions.",
                   {},
                   {"Give fewer or shorter words, more directions, or an aspect nearer to 1."},
                   {},
                   0};
}

}  // namespace lode
