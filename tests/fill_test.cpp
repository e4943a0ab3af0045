// Filling against brute force: a grid is filled exactly where that can be done.

#include <catch2/catch.hpp>

#include <algorithm>

#include "fill/conflict.hpp"
#include "fill/fill.hpp"
#include "support/grids.hpp"
#include "support/naive.hpp"
#include "support/slowed.hpp"

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
    FillerRules rules = {};

    [[nodiscard]] std::vector<Letters> forbidden() const {
        auto both = words;
        both.insert(both.end(), avoided.begin(), avoided.end());
        return both;
    }
    [[nodiscard]] Letters allowed() const {
        Letters letters;
        for (std::size_t letter = 0; letter < weights.size(); ++letter)
            if (weights[letter] > 0) letters.push_back(static_cast<Letter>(letter));
        return letters;
    }
    [[nodiscard]] NaiveRules naive_rules() const {
        NaiveRules naive{rules.longest_run, {}};
        for (std::size_t one = 0; one < rules.looks.size(); ++one)
            for (std::size_t other = 0; other < rules.looks.size(); ++other)
                if (rules.looks[one].shape != rules.looks[other].shape &&
                    (rules.looks[one].groups & rules.looks[other].groups) != 0)
                    naive.alike.insert({static_cast<Letter>(one), static_cast<Letter>(other)});
        return naive;
    }
};

// Calls use(the task as fill takes it).
template <class Use>
auto with_guards(const Task& task, const Use& use) {
    const CopyGuard words = exact_guard(task.words, 26);
    const CopyGuard avoided = exact_guard(task.avoided, 26);
    auto weights = task.weights;
    weights.resize(26, 0);
    return use(FillTask{words, avoided, weights, task.effort, task.cancel, nullptr, task.rules});
}

FillResult filled(const Task& task, std::uint64_t seed = 1) {
    return with_guards(task, [&](const FillTask& full) {
        Random random(seed);
        return fill(task.grid, full, random);
    });
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
    return naive_filling_fault(task.grid, grid, task.forbidden(), task.naive_rules());
}

bool brute_force_fills(const Task& task) {
    return naive_can_fill(task.grid, task.forbidden(), task.allowed(), task.naive_rules());
}

Task with_causes_alone(Task task, const std::vector<FillCause>& causes) {
    using Kind = FillCause::Kind;
    const auto has = [&](FillCause cause) {
        return std::find(causes.begin(), causes.end(), cause) != causes.end();
    };
    const auto keep = [&](std::vector<Letters>& words, Kind kind) {
        std::vector<Letters> kept;
        for (std::uint32_t word = 0; word < words.size(); ++word)
            if (has({kind, word})) kept.push_back(words[word]);
        words = kept;
    };
    keep(task.words, Kind::listed_word);
    keep(task.avoided, Kind::avoided_word);
    if (!has({Kind::longest_run})) task.rules.longest_run = 0;
    if (!has({Kind::look_alikes})) task.rules.looks.clear();
    return task;
}

// Of an impossible task: a fault in what is said to be to blame.
std::string fault_in_causes(const Task& task, const FillResult& result, std::uint64_t seed) {
    if (brute_force_fills(with_causes_alone(task, result.causes))) return "the proof needs more causes";
    const FillConflict conflict = with_guards(task, [&](const FillTask& full) {
        Random random(seed);
        return find_fill_conflict(task.grid, full, result.causes, random);
    });
    if (!conflict.irreducible) return "the conflict may be smaller";
    if (brute_force_fills(with_causes_alone(task, conflict.causes))) return "the conflict is none";
    for (std::size_t out = 0; out < conflict.causes.size(); ++out) {
        auto rest = conflict.causes;
        rest.erase(rest.begin() + static_cast<std::ptrdiff_t>(out));
        if (!brute_force_fills(with_causes_alone(task, rest))) return "the conflict is not the smallest";
    }
    if (conflict.barred.empty()) return {};
    Letters named;
    for (const auto& [letter, cause] : conflict.barred) {
        named.push_back(letter);
        Grid with_letter = task.grid;
        with_letter[conflict.cell] = letter;
        const Task one = with_causes_alone(task, {cause});
        if (naive_filling_fault(task.grid, with_letter, one.forbidden(), one.naive_rules()).empty())
            return "a letter is not barred by its cause";
    }
    return task.grid[conflict.cell] == empty_cell && named == task.allowed()
               ? ""
               : "the barred cell is not barred";
}

// What is to blame is looked into for every fourth seed: that takes many fillings.
bool agrees_with_brute_force(const Task& task, std::uint64_t seed) {
    const bool exists = brute_force_fills(task);
    const FillResult result = filled(task, seed);
    const std::string fault = result.end == End::filled ? fault_in(task, result.grid)
                              : result.end == End::impossible && seed % 4 == 0
                                  ? fault_in_causes(task, result, seed)
                                  : std::string();
    if (result.end != (exists ? End::filled : End::impossible) || !fault.empty()) {
        std::vector<std::string> words;
        for (const auto& word : task.forbidden()) words.push_back(text_of(word));
        CAPTURE(rows_of(task.grid), words, task.allowed(), task.rules.longest_run, task.rules.looks.size(),
                seed, static_cast<int>(result.end), exists, fault);
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
    for (int round = 0; round < 2500 / slowed; ++round) {
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
        // Rules of chance: letters of the groups 1, 2 or both, and of one shape or another.
        if (random.below(2) == 0) task.rules.longest_run = static_cast<int>(1 + random.below(3));
        if (random.below(2) == 0)
            for (std::uint32_t letter = 0; letter < letters; ++letter)
                task.rules.looks.push_back({random.below(4), random.below(letters)});
        CAPTURE(round);
        ++(agrees_with_brute_force(task, random.below(1000)) ? possible : impossible);
    }
    CHECK(possible > 300 / slowed);
    CHECK(impossible > 300 / slowed);
}

TEST_CASE("every grid of up to three by three over two letters is filled as brute force says, by each rule") {
    // By size: some of the grids with words, closed and empty cells, each with each cap and with look-alikes.
    const std::vector<LetterLook> alike{{1, 0}, {1, 1}};
    const std::vector<LetterLook> twins{{1, 0}, {1, 0}};
    long possible = 0;
    long impossible = 0;
    long seen = 0;
    std::uint64_t seed = 0;
    for (const Size size : {Size{1, 3}, Size{2, 2}, Size{2, 3}, Size{3, 3}}) {
        every_grid(size, {0, 1, empty_cell}, [&](const Grid& grid) {
            if (size.cells() > 4 && ++seen % (23 * slowed) != 0) return;
            for (const int cap : {0, 1, 2, 3})
                for (const auto& looks : {std::vector<LetterLook>(), alike, twins})
                    for (const auto& words : {std::vector<Letters>(), {word_of("ABA")}}) {
                        Task task{grid, words, {}, {2, 1}};
                        task.rules = {cap, looks};
                        ++(agrees_with_brute_force(task, ++seed) ? possible : impossible);
                    }
        });
    }
    CHECK(possible > 5000 / slowed);
    CHECK(impossible > 500 / slowed);
}

TEST_CASE("a run that words bring with them is no fault, but filler may not lengthen it") {
    Task task{grid_of({"AAA_"}), {}, {}, {1, 1}};
    task.rules.longest_run = 2;
    for (std::uint64_t seed = 1; seed <= 8; ++seed)
        CHECK(rows_of(filled(task, seed).grid) == std::vector<std::string>{"AAAB"});
    task.weights = {1};
    CHECK(filled(task).end == End::impossible);
    task.grid = grid_of({"AAAA"});
    CHECK(filled(task).end == End::filled);
}

TEST_CASE("large grids keep a cap and look-alikes apart, and letters stay near their weights") {
    // Twelve letters, in groups as they are in the alphabet: four, three, and five that are like none.
    Task task{Grid({60, 60}), {word_of("ABC"), word_of("LEK")}, {word_of("BB")}, {}};
    task.weights = {9, 5, 4, 3, 9, 5, 4, 3, 3, 3, 3, 3};
    task.rules = {
        2,
        {{1, 0}, {1, 1}, {1, 2}, {1, 3}, {2, 4}, {2, 5}, {2, 6}, {0, 7}, {0, 8}, {0, 9}, {0, 10}, {0, 11}}};
    for (std::uint64_t seed = 1; seed <= 3; ++seed) {
        const auto result = filled(task, seed);
        REQUIRE(result.end == End::filled);
        CHECK(fault_in(task, result.grid).empty());
        std::vector<int> counts(12);
        for (const Letter letter : result.grid.letters()) ++counts.at(letter);
        CHECK(*std::min_element(counts.begin(), counts.end()) > 60);
    }
}

TEST_CASE("a single cell that no letter suits is named with what each letter would spell") {
    Task task{grid_of({"AB_", "...", "__C"}), {word_of("ABA"), word_of("ABB")}, {word_of("CC")}, {1, 1}};
    const FillResult result = filled(task);
    REQUIRE(result.end == End::impossible);
    CHECK(fault_in_causes(task, result, 1).empty());
    with_guards(task, [&](const FillTask& full) {
        Random random(1);
        const auto conflict = find_fill_conflict(task.grid, full, result.causes, random);
        CHECK(conflict.cell == Cell{0, 2});
        REQUIRE(conflict.barred.size() == 2);
        CHECK(conflict.barred[0].cause == FillCause{FillCause::Kind::listed_word, 0});
        CHECK(conflict.barred[1].cause == FillCause{FillCause::Kind::listed_word, 1});
        return 0;
    });
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
