// Filling against brute force: a grid is filled exactly where that can be done.

#include <catch2/catch.hpp>

#include "fill/fill.hpp"
#include "support/grids.hpp"
#include "support/naive.hpp"

using namespace lode;
using namespace lode::test;
using End = FillResult::End;

namespace {

struct Task {
    Grid grid;
    std::vector<Letters> words;
    std::vector<Letters> avoided = {};
    std::vector<std::uint32_t> weights = {};
    std::uint64_t effort = 10'000'000;
    const std::atomic<bool>* cancel = nullptr;
};

FillResult filled(const Task& task, std::uint64_t seed = 1) {
    Letters itself(26);
    for (std::size_t letter = 0; letter < itself.size(); ++letter)
        itself[letter] = static_cast<Letter>(letter);
    const CopyGuard words(task.words, itself);
    const CopyGuard avoided(task.avoided, itself);
    auto weights = task.weights;
    weights.resize(26, 0);
    Random random(seed);
    return fill(task.grid, {words, avoided, weights, task.effort, task.cancel}, random);
}

std::string fault_in(const Task& task, const Grid& grid) {
    if (grid.size() != task.grid.size()) return "another size";
    for (int row = 0; row < grid.size().rows; ++row)
        for (int column = 0; column < grid.size().columns; ++column) {
            const Letter before = task.grid[{row, column}];
            const Letter now = grid[{row, column}];
            if (before != empty_cell && before != now) return "a letter or a closed cell has changed";
            if (before == empty_cell && (now >= task.weights.size() || task.weights[now] == 0))
                return "a cell holds no letter that is allowed";
        }
    auto forbidden = task.words;
    forbidden.insert(forbidden.end(), task.avoided.begin(), task.avoided.end());
    for (const auto& word : forbidden)
        for (const CellSet& copy : naive_copies(grid, word))
            for (const auto& [row, column] : copy)
                if (task.grid[{row, column}] == empty_cell) return "filler completes " + text_of(word);
    return {};
}

bool agrees_with_brute_force(const Task& task, std::uint64_t seed) {
    Letters allowed;
    for (std::size_t letter = 0; letter < task.weights.size(); ++letter)
        if (task.weights[letter] > 0) allowed.push_back(static_cast<Letter>(letter));
    auto forbidden = task.words;
    forbidden.insert(forbidden.end(), task.avoided.begin(), task.avoided.end());
    const bool exists = naive_can_fill(task.grid, forbidden, allowed);
    const FillResult result = filled(task, seed);
    const std::string fault = result.end == End::filled ? fault_in(task, result.grid) : std::string();
    if (result.end != (exists ? End::filled : End::impossible) || !fault.empty()) {
        std::vector<std::string> words;
        for (const auto& word : forbidden) words.push_back(text_of(word));
        CAPTURE(rows_of(task.grid), words, allowed, seed, static_cast<int>(result.end), exists, fault);
        REQUIRE(result.end == (exists ? End::filled : End::impossible));
        REQUIRE(fault.empty());
    }
    return exists;
}

}  // namespace

TEST_CASE("a grid of two by two is filled exactly where it can be, whatever words are forbidden") {
    const auto words = every_word(2, 2, 2);
    long possible = 0;
    long impossible = 0;
    std::uint64_t seed = 0;
    every_grid({2, 2}, {0, 1, empty_cell, closed_cell}, [&](const Grid& grid) {
        for (unsigned some = 0; some < 1u << words.size(); ++some) {
            Task task{grid, {}, {}, {1, 1}};
            for (std::size_t word = 0; word < words.size(); ++word)
                if ((some >> word & 1) != 0)
                    (word % 2 == 0 ? task.words : task.avoided).push_back(words[word]);
            ++(agrees_with_brute_force(task, ++seed) ? possible : impossible);
        }
    });
    CHECK(possible > 500);
    CHECK(impossible > 500);
}

TEST_CASE("random small grids are filled exactly where brute force fills them") {
    Random random(17);
    long possible = 0;
    long impossible = 0;
    for (int round = 0; round < 2500; ++round) {
        Task task{Grid({1 + static_cast<int>(random.below(3)), 2 + static_cast<int>(random.below(3))}), {}};
        const auto letters = 2 + random.below(2);
        int empty = 0;
        for (int row = 0; row < task.grid.size().rows; ++row)
            for (int column = 0; column < task.grid.size().columns; ++column) {
                const auto draw = random.below(8);
                if (draw == 0)
                    task.grid[{row, column}] = closed_cell;
                else if (draw < 3 || ++empty > 8)
                    task.grid[{row, column}] = static_cast<Letter>(random.below(letters));
            }
        for (std::uint32_t letter = 0; letter < letters; ++letter)
            task.weights.push_back(1 + random.below(3));
        if (random.below(4) == 0) task.weights[0] = 0;
        for (std::uint32_t word = 0, words = 1 + random.below(4); word < words; ++word) {
            task.words.emplace_back(2 + random.below(2));
            for (Letter& letter : task.words.back()) letter = static_cast<Letter>(random.below(letters));
        }
        CAPTURE(round);
        ++(agrees_with_brute_force(task, random.below(1000)) ? possible : impossible);
    }
    CHECK(possible > 300);
    CHECK(impossible > 300);
}

TEST_CASE("letters are drawn as often as they weigh") {
    Task task{Grid({100, 100}), {}, {}, {6, 0, 3, 1}};
    const auto result = filled(task);
    REQUIRE(result.end == End::filled);
    std::vector<int> counts(4);
    for (const Letter letter : result.grid.letters()) ++counts.at(letter);
    CHECK(counts[1] == 0);
    // 10,000 draws: four standard deviations of 6 in 10 are 196.
    CHECK(counts[0] == Approx(6000).margin(196));
    CHECK(counts[2] == Approx(3000).margin(184));
    CHECK(counts[3] == Approx(1000).margin(120));
}

TEST_CASE("a large grid over two letters is filled around words that chance would spell hundreds of times") {
    Task task{Grid({40, 40}), {word_of("ABAB"), word_of("AABB")}, {word_of("BBB")}, {1, 1}};
    for (std::uint64_t seed = 1; seed <= 5; ++seed) {
        const auto result = filled(task, seed);
        CAPTURE(seed);
        REQUIRE(result.end == End::filled);
        CHECK(fault_in(task, result.grid).empty());
    }
}

TEST_CASE("a grid without empty cells is given back as it is, and needs no letter") {
    const Task task{grid_of({"AB.", "BA."}), {word_of("AB")}};
    const auto result = filled(task);
    REQUIRE(result.end == End::filled);
    CHECK(rows_of(result.grid) == rows_of(task.grid));
    CHECK_THROWS_AS(filled({grid_of({"A_"}), {}}), std::invalid_argument);
}

TEST_CASE("the same seed fills in the same way, and another in another") {
    const Task task{Grid({10, 10}), {word_of("ABC")}, {}, {1, 1, 1, 1}};
    CHECK(rows_of(filled(task, 3).grid) == rows_of(filled(task, 3).grid));
    CHECK(rows_of(filled(task, 3).grid) != rows_of(filled(task, 4).grid));
}

TEST_CASE("filling never passes its effort, and spent effort is never called a proof") {
    for (const std::uint64_t effort : std::vector<std::uint64_t>{0, 1, 5, 99, 100, 200}) {
        Task task{Grid({10, 10}), {}, {}, {1, 1}, effort};
        const auto result = filled(task);
        CAPTURE(effort);
        CHECK(result.effort_spent <= effort);
        CHECK(result.end == (effort < 100 ? End::unfinished : End::filled));
    }
    // Every pair of two letters is forbidden but one: there is no filling, and that takes more than two
    // letters to see.
    Task hard{Grid({2, 2}), {word_of("AB"), word_of("AA"), word_of("BB")}, {}, {1, 1}, 2};
    CHECK(filled(hard).end == End::unfinished);
    hard.effort = 1000;
    CHECK(filled(hard).end == End::impossible);
}

TEST_CASE("filling stops soon after it is cancelled") {
    const std::atomic<bool> cancel = true;
    const Task task{Grid({400, 400}), {}, {}, {1, 1}, 10'000'000, &cancel};
    const auto result = filled(task);
    CHECK(result.end == End::cancelled);
    CHECK(result.effort_spent < 20'000);
}

TEST_CASE("kept letters stand again, but for those that would complete a copy") {
    // The old filling spells HOE twice now that HOE is a word: only what it takes is changed.
    const Grid old = grid_of({"HOEX", "XXXH", "XXXO", "XXXE"});
    const std::vector<Letters> words{word_of("HOE")};
    const CopyGuard guard = exact_guard(words, 26);
    const CopyGuard none = exact_guard({}, 26);
    std::vector<std::uint32_t> weights(26, 1);
    FillTask task{guard, none, weights, 10'000, nullptr, nullptr};
    task.kept = &old;
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
        Random random(seed);
        const FillResult filled = fill(grid_of({"____", "____", "____", "____"}), task, random);
        REQUIRE(filled.end == FillResult::End::filled);
        CHECK(naive_copies(filled.grid, words[0]).empty());
        int changed = 0;
        for (int row = 0; row < 4; ++row)
            for (int column = 0; column < 4; ++column)
                changed += filled.grid[{row, column}] != old[{row, column}];
        CHECK(changed == 2);
    }
    // A letter that is not drawn may be kept.
    weights.assign(26, 0);
    weights[0] = 1;
    const Grid row = grid_of({"HOEX"});
    Random random(1);
    const FillResult filled = fill(grid_of({"____"}), {none, none, weights, 100, nullptr, &row}, random);
    CHECK(rows_of(filled.grid) == std::vector<std::string>{"HOEX"});
}
