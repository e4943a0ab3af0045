#include "puzzle/job.hpp"

#include <algorithm>
#include <cmath>
#include <set>

#include "puzzle/avoided_words.hpp"
#include "puzzle/band_words.hpp"
#include "puzzle/filler_letters.hpp"
#include "puzzle/inner_words.hpp"
#include "puzzle/nested_words.hpp"
#include "text/quoted.hpp"

namespace lode {
namespace {

constexpr std::size_t faults_told = 10;

Refusal unusable(const WordList& list, const std::string& message, std::vector<std::string> words,
                 const std::string& advice, int line) {
    return {Refusal::Reason::unusable,
            place_in(list.source, line) + message,
            std::move(words),
            {advice},
            list.source,
            line};
}

// Sees letters without case and marks. Refused: an avoided or allowed word that cannot be used, an avoided
// one inside a listed word or the message.
std::optional<Refusal> guard_against_avoided(const Recipe& recipe, Job& job) {
    if (!job.avoidance) {
        auto read = Avoidance::read(recipe, job.segmenter());
        if (!read) return read.refusal();
        job.avoidance = std::move(*read);
    }
    const Avoidance& avoided = *job.avoidance;
    Letters seen_as = avoided.seen_as(job.alphabet, *job.language);

    // The message is held to the same.
    std::vector<Letters> texts = job.words;
    if (!job.message.empty()) texts.push_back(job.message);
    for (Letters& text : texts)
        for (Letter& letter : text) letter = seen_as[letter];
    std::optional<Refusal> refusal;
    std::size_t told = 0;
    avoided.inside().find(texts, [&](std::size_t inner, std::size_t outer, InnerCopies) {
        const bool listed = outer < job.words.size();
        const std::string shown = listed ? job.list.words[outer].shown : recipe.message;
        const int line = listed ? job.list.words[outer].line : 0;
        const std::string fault = (listed ? "" : "The message ") + quoted(shown) +
                                  " holds the avoided word " + quoted(avoided.names()[inner]) + ".";
        if (!refusal)
            refusal = unusable(job.list, fault, {},
                               listed ? "Take the word out, or allow the avoided one with --allow."
                                      : "Write the message another way, or allow the word with --allow.",
                               line);
        else
            refusal->message += "\n" + place_in(job.list.source, line) + fault;
        refusal->words.push_back(shown);
        refusal->words.push_back(avoided.names()[inner]);
        return ++told < faults_told;
    });
    job.avoided_guard = avoided.guard(std::move(seen_as), job.guarded);
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
    const auto spelling = job.segmenter().spell(recipe.message);
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

// Letters of an earlier puzzle's filler stand where they stood; they are not drawn unless they are among the
// others.
std::optional<Refusal> add_kept_filler(const Recipe& recipe, Job& job) {
    if (!recipe.earlier) return std::nullopt;
    const std::set<std::string> letters(recipe.earlier->filler.begin(), recipe.earlier->filler.end());
    for (const auto& letter : letters) {
        if (letter.empty() || job.alphabet.find(letter)) continue;
        const auto spelling = job.segmenter().spell(letter);
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

Outcome<Job> check(const Recipe& recipe, KnownOfRecipe known) {
    if (recipe.directions && recipe.directions->empty())
        return Refusal{
            Refusal::Reason::unusable, "No direction is given.", {}, {"Name one or more, or all."}, {}, 0};
    const auto aspect = checked_aspect(recipe.aspect);
    if (!aspect) return aspect.refusal();
    if (auto fault = fault_in_bands(recipe.words)) return *std::move(fault);

    if (!known.language) {
        auto language = Language::open(recipe.text);
        if (!language) return language.refusal();
        known.language = std::move(*language);
    }
    auto list = spell(recipe.words, known.language->segmenter());
    if (!list) return list.refusal();

    Job job;
    job.language = std::move(known.language);
    job.avoidance = std::move(known.avoidance);
    job.list = std::move(*list);
    job.words.reserve(job.list.words.size());
    for (const auto& word : job.list.words) job.words.push_back(job.alphabet.add_all(word.letters));
    auto nested = nest(job.list, job.words, recipe.nested);
    if (!nested) return nested.refusal();
    job.nested = std::move(*nested);
    job.right_to_left = is_right_to_left(job.list.words.front().shown);
    job.directions = recipe.directions.value_or(Directions::forward(job.right_to_left));

    if (auto refusal = spell_message(recipe, job)) return std::move(*refusal);
    if (auto refusal = choose_filler(recipe, job)) return std::move(*refusal);
    if (auto refusal = add_kept_filler(recipe, job)) return std::move(*refusal);
    job.filler_rules = filler_rules(recipe, job.alphabet);
    if (auto refusal = guard_against_avoided(recipe, job)) return std::move(*refusal);
    return job;
}

}  // namespace lode
