// How much search a puzzle asks for, and the parts that explain it.

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>
#include <stdexcept>

#include <letterlode/score.hpp>

#include "score/simulated_reader.hpp"

namespace lode {
namespace {

struct LevelBound {
    Level level;
    std::string_view name;
    double below;  // mean fixations a word
};
constexpr std::array levels{LevelBound{Level::glance, "glance", 10}, LevelBound{Level::stroll, "stroll", 25},
                            LevelBound{Level::search, "search", 60},
                            LevelBound{Level::patience, "patience", HUGE_VAL}};

RatingPart part(std::string what, double value, std::string unit, std::string source, std::string note) {
    return {std::move(what), value, std::move(unit), std::nullopt, false, std::move(source), std::move(note)};
}

double percent(std::int64_t of, std::int64_t all) {
    return all == 0 ? 0 : 100.0 * static_cast<double>(of) / static_cast<double>(all);
}

// How the words lie: what needs their placements.
struct Lying {
    std::int64_t placed = 0;
    std::int64_t backward = 0;
    std::int64_t horizontal = 0;
    std::int64_t directions = 0;
    std::int64_t crossings = 0;
    std::vector<std::uint8_t> words_on;  // by cell
};

Lying lying_of(const Grid& grid, std::span<const SoughtWord> words, bool right_to_left) {
    Lying lying;
    lying.words_on.assign(grid.size().cells(), 0);
    std::vector<std::uint8_t> others(grid.size().cells(), 0);
    std::array<bool, 8> used{};
    const Directions forward = Directions::forward(right_to_left);
    for (const SoughtWord& word : words) {
        if (!word.placed) continue;
        const auto [first, direction] = *word.placed;
        ++lying.placed;
        lying.backward += !forward.contains(direction);
        lying.horizontal += step(direction).row == 0;
        used[static_cast<std::size_t>(direction)] = true;
        for (int at = 0; at < static_cast<int>(word.letters.size()); ++at) {
            const Cell cell = moved(first, direction, at);
            if (!grid.inside(cell)) continue;
            auto& on = lying.words_on[grid.index(cell)];
            on = 1;
            // Nesting is no crossing.
            if (!word.is_nested && others[grid.index(cell)] < 2) ++others[grid.index(cell)];
        }
    }
    lying.directions = std::count(used.begin(), used.end(), true);
    lying.crossings = std::count(others.begin(), others.end(), std::uint8_t{2});
    return lying;
}

// Kullback and Leibler 1951, Annals of Mathematical Statistics 22:79: the sum of p log2(p / q), p being the
// filler's shares of the letters and q the words', each letter of either counted once more among the words so
// that none is missing. 0 where there is no filler.
double divergence_of_filler(const LetteredGrid& grid, const std::vector<std::uint8_t>& words_on,
                            std::span<const SoughtWord> words) {
    std::vector<std::int64_t> filler(grid.alphabet.size());
    std::vector<std::int64_t> listed(grid.alphabet.size());
    for (std::size_t cell = 0; cell < words_on.size(); ++cell) {
        const Letter letter = grid.grid.letters()[cell];
        if (letter < filler.size() && words_on[cell] == 0) ++filler[letter];
    }
    for (const SoughtWord& word : words)
        for (const Letter letter : word.letters)
            if (letter < listed.size()) ++listed[letter];
    std::int64_t different = 0;
    for (std::size_t letter = 0; letter < filler.size(); ++letter)
        if (filler[letter] + listed[letter] > 0) {
            ++different;
            ++listed[letter];
        }
    if (different == 0) return 0;
    const auto all_filler =
        static_cast<double>(std::accumulate(filler.begin(), filler.end(), std::int64_t{0}));
    const auto all_listed =
        static_cast<double>(std::accumulate(listed.begin(), listed.end(), std::int64_t{0}));
    double bits = 0;
    for (std::size_t letter = 0; letter < filler.size(); ++letter) {
        if (filler[letter] == 0) continue;
        const double p = static_cast<double>(filler[letter]) / all_filler;
        const double q = static_cast<double>(listed[letter]) / all_listed;
        bits += p * std::log2(p / q);
    }
    return bits;
}

std::vector<RatingPart> parts_of(const LetteredGrid& grid, std::span<const SoughtWord> words,
                                 const FalseStarts& false_starts, const Reader& reader) {
    const Lying lying = lying_of(grid.grid, words, reader.right_to_left);
    const auto open = std::count_if(grid.grid.letters().begin(), grid.grid.letters().end(),
                                    [&](Letter letter) { return letter < grid.alphabet.size(); });
    const auto listed = static_cast<double>(words.size());
    const auto letters = std::accumulate(
        words.begin(), words.end(), 0.0,
        [](double sum, const SoughtWord& word) { return sum + static_cast<double>(word.letters.size()); });
    const std::string definition = "definition";
    std::vector<RatingPart> parts;
    parts.push_back(part("letters in the grid", static_cast<double>(open), "cells", definition,
                         "All of them may have to be looked at for each word."));
    parts.push_back(part("words", listed, "words", definition, ""));
    parts.push_back(part("length of words", words.empty() ? 0 : letters / listed, "letters a word",
                         definition,
                         "Long words are compared for longer, and have fewer false starts that go far."));
    parts.push_back(part("directions", static_cast<double>(lying.directions), "directions", definition,
                         "In how many of the eight the words are read."));
    parts.push_back(
        part("backward words", percent(lying.backward, lying.placed), "percent", definition,
             "Words that are read against the direction of the script cost half as much again; that "
             "factor is judgement."));
    parts.push_back(
        part("words not in a row", percent(lying.placed - lying.horizontal, lying.placed), "percent",
             "Yu, Park, Gerold, Legge 2010, Journal of Vision 10(2):21",
             "Letters that are stacked take 2.39 times as long to read as a line; the same is taken "
             "for diagonals, by judgement."));
    parts.push_back(part("crossings", static_cast<double>(lying.crossings), "cells", definition,
                         "Cells that words share: what is found of one leads to the other."));
    const std::array<const char*, 3> starts{"false starts of two letters", "false starts of three letters",
                                            "false starts of four letters or more"};
    for (std::size_t at = 0; at < starts.size(); ++at)
        parts.push_back(part(starts[at], words.empty() ? 0 : static_cast<double>(false_starts[at]) / listed,
                             "a word", definition,
                             "Places where so many letters of a word agree and the next does not."));
    parts.push_back(
        part("difference of filler and words", divergence_of_filler(grid, lying.words_on, words), "bits",
             "Kullback, Leibler 1951, Annals of Mathematical Statistics 22:79",
             "0 bits: the letters around the words are as frequent as in them, and hide them best."));
    return parts;
}

}  // namespace

std::string_view name(Level level) {
    return levels[static_cast<std::size_t>(level)].name;
}

Level level_of(double fixations_a_word) {
    return std::find_if(levels.begin(), std::prev(levels.end()),
                        [&](const LevelBound& bound) { return fixations_a_word < bound.below; })
        ->level;
}

Outcome<Difficulty> rate_difficulty(const LetteredGrid& grid, std::span<const SoughtWord> words,
                                    const Reader& reader) {
    if (grid.grid.size().cells() > max_rated_cells)
        return Refusal{
            Refusal::Reason::unusable,
            "A grid of more than " + std::to_string(max_rated_cells) + " cells is too large to be rated.",
            {},
            {"Rate a part of it."},
            {},
            0};
    for (const SoughtWord& word : words)
        if (word.letters.size() < 2) throw std::invalid_argument("a word of fewer than two letters is rated");

    SimulatedReader simulated(grid.grid, grid.alphabet.size(), reader);
    const auto in_fixations = [&](std::int64_t cost) {
        const std::int64_t beginnings = std::max<std::int64_t>(simulated.rows_to_begin_in(), 1);
        return static_cast<double>(cost) / (1000.0 * static_cast<double>(beginnings));
    };
    Difficulty difficulty;
    std::int64_t all = 0;
    for (const SoughtWord& word : words) {
        const auto [cost, is_found] = simulated.look_for(word.letters);
        if (simulated.steps() > max_rated_steps)
            return Refusal{Refusal::Reason::unusable,
                           "The grid repeats its letters so much that rating it would take too long.",
                           {},
                           {"Rate a part of it, or fewer words."},
                           {},
                           0};
        all += cost;
        difficulty.words.push_back({word.shown, in_fixations(cost), is_found});
    }
    difficulty.fixations = in_fixations(all);
    difficulty.level = level_of(words.empty() ? 0 : difficulty.fixations / static_cast<double>(words.size()));
    difficulty.parts = parts_of(grid, words, simulated.false_starts(), reader);
    return difficulty;
}

}  // namespace lode
