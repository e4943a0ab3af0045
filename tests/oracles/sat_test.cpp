// What can be placed and what cannot, by a SAT solver (CaDiCaL, package cadical) that knows nothing of the
// searches: the rules are in support/formula.cpp, once more from their wording.

#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <map>

#include <catch2/catch.hpp>

#include "support/brute_force.hpp"
#include "support/formula.hpp"
#include "support/grids.hpp"
#include "support/random_tasks.hpp"
#include "support/scratch_folder.hpp"
#include "support/searches.hpp"

using namespace lode;
using namespace lode::test;
using End = PlaceResult::End;

namespace {

// What place() may spend on a task of a square of four or five: a second or so.
constexpr std::uint64_t fixed_effort = 3'000'000;

bool solver_finds_a_placement(const Task& task, const std::string& file) {
    std::ofstream(file) << Formula(task).dimacs();
    const int status = std::system(("cadical -q -n '" + file + "' > /dev/null").c_str());
    const int code = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
    // The exit codes of the SAT competitions: 10 satisfiable, 20 unsatisfiable. A missing solver is a
    // failure, not an answer.
    REQUIRE((code == 10 || code == 20));
    return code == 10;
}

struct Outcomes {
    int possible = 0;
    int impossible = 0;
    int undecided = 0;

    void count(End end) {
        ++(end == End::placed ? possible : end == End::impossible ? impossible : undecided);
    }
};

// How place() ends, once the solver has confirmed it.
End decided(const Task& task, const std::string& file) {
    const PlaceResult result = placed(task);
    if (result.end == End::unfinished) return result.end;
    CAPTURE(text_of(task));
    REQUIRE(solver_finds_a_placement(task, file) == (result.end == End::placed));
    if (result.end == End::placed) REQUIRE(fault_in(task, result) == "");
    return result.end;
}

// Words for a square that have about as many letters as it has cells: few different letters bring copies by
// chance; a closed cell and fewer directions bring the rest.
Task crowded_square(std::uint32_t least_percent, std::uint32_t more_percent, Random& random) {
    const int side = 4 + static_cast<int>(random.below(2));
    Task task{Mask({side, side})};
    task.effort = fixed_effort;
    if (random.below(3) == 0)
        task.mask.set({static_cast<int>(random.below(4)), static_cast<int>(random.below(4))}, false);
    if (random.below(3) == 0) task.directions = Directions::forward();
    const std::uint32_t different = 3 + random.below(10);
    const std::size_t wanted =
        static_cast<std::size_t>(side * side) * (least_percent + random.below(more_percent)) / 100;
    for (std::size_t letters = 0; letters < wanted;) {
        Letters word(3 + random.below(static_cast<std::uint32_t>(side) - 2));
        for (Letter& letter : word) letter = static_cast<Letter>(random.below(different));
        letters += word.size();
        task.words.push_back(std::move(word));
    }
    for (std::uint32_t count = random.below(3); count > 0; --count)
        task.avoided.push_back({static_cast<Letter>(random.below(different)),
                                static_cast<Letter>(random.below(different)),
                                static_cast<Letter>(random.below(different))});
    return task;
}

}  // namespace

TEST_CASE("random tasks near the edge of what is possible are decided as a SAT solver decides them") {
    const ScratchFolder folder;
    Random random(606);
    Outcomes outcomes;
    constexpr int rounds = 600;
    for (int round = 0; round < rounds; ++round) {
        CAPTURE(round);
        outcomes.count(decided(crowded_square(95, 60, random), folder / "task.cnf"));
    }
    CAPTURE(outcomes.possible, outcomes.impossible, outcomes.undecided);
    CHECK(outcomes.undecided * 50 <= rounds);
    CHECK(outcomes.possible > 60);
    CHECK(outcomes.impossible > 60);
}

TEST_CASE("random tasks with rules of every kind are decided as a SAT solver decides them") {
    const ScratchFolder folder;
    Random random(909);
    Outcomes all;
    std::map<Rule, Outcomes> by_rule;
    constexpr int rounds = 600;
    for (int round = 0; round < rounds; ++round) {
        CAPTURE(round);
        auto rules = some_rules(random, 4);
        // Words that keep apart need about three times the room.
        const bool apart = std::count(rules.begin(), rules.end(), Rule::spacing) > 0;
        Task task = apart ? crowded_square(25, 40, random) : crowded_square(80, 60, random);
        add_rules(
            task, rules, [](const Task& free) { return placed(free).placements; }, random);
        const End end = decided(task, folder / "task.cnf");
        all.count(end);
        for (const Rule rule : rules) by_rule[rule].count(end);
    }
    CAPTURE(all.possible, all.impossible, all.undecided);
    CHECK(all.undecided * 50 <= rounds);
    for (const Rule rule : all_rules) {
        CAPTURE(name_of(rule), by_rule[rule].possible, by_rule[rule].impossible, by_rule[rule].undecided);
        CHECK(by_rule[rule].possible > 20);
        CHECK(by_rule[rule].impossible > 20);
    }
}

TEST_CASE("small tasks with rules of every kind are decided as a SAT solver decides them") {
    const ScratchFolder folder;
    Random random(404);
    Outcomes outcomes;
    for (int round = 0; round < 500; ++round) {
        CAPTURE(round);
        outcomes.count(decided(random_task_with(some_rules(random, 4), random), folder / "task.cnf"));
    }
    CHECK(outcomes.undecided == 0);
    CHECK(outcomes.possible > 100);
    CHECK(outcomes.impossible > 100);
}

TEST_CASE("what other tests call impossible is so to a SAT solver as well") {
    using enum Direction;
    const ScratchFolder folder;
    const Directions all = Directions::all();
    const auto right_only = directions_of({right});
    std::vector<Task> tasks{
        // tests/unplaced_test.cpp, tests/make_test.cpp
        {Mask({3, 3}), all, words_of({"ABC", "DEF", "GHI", "JKL", "AX"})},
        {Mask({3, 3}), all, words_of({"ABC", "DEF", "GHI", "JKL"})},
        {Mask({4, 4}), right_only, words_of({"ABCD", "EFGH", "IJKL", "MNOP", "AEIM"})},
        {mask_of({"OOOO"}), right_only, words_of({"ABCA", "XY"})},
        {Mask({2, 4}), all, words_of({"ABCD", "EFGH", "IJKL"})},
        // tests/place_test.cpp
        {mask_of({"OOOO", "OOOO", "O.OO", "OOOO"}), right_only, words_of({"ABCD", "EFGH", "IJKL", "MNOP"})},
        {Mask({3, 4}), right_only, words_of({"ABCD", "EFGH", "IJKL", "MNOP"})},
        {Mask({3, 5}), all, words_of({"SPADE"}), words_of({"PAD"})},
        {Mask({3, 5}), all, words_of({"SPADE"}), words_of({"DAP"})},
        {Mask({2, 2}), Directions(), words_of({"AB"})},
        {Mask({2, 2}, false), all, words_of({"AB"})},
        {Mask({9, 9}), all, words_of({"ABCDEFGHIJ"})},
        {Mask({3, 3}), all, words_of({"RAKE", "HOE"})},
        {Mask({1, 3}), all, words_of({"ABCD"})},
        // tests/tight_test.cpp
        {Mask({5, 5}), all, words_of({"ABCDE", "FGHIJ", "KLMNO", "PQRST", "UVWXY", "AGNRY"})},
        {Mask({3, 3}), all, words_of({"BK", "DK", "KN", "SZ", "BD", "CJ", "JZ", "CV", "FP", "FG",
                                      "DH", "CD", "QV", "FQ", "HJ", "NW", "MN", "CN", "JM", "DW"})},
        // tests/nesting_test.cpp
        {Mask({1, 4}), all, words_of({"STAR", "RATS"})},
        {Mask({1, 4}), all, words_of({"ANNE", "ANN"})},
        {Mask({1, 5}), all, words_of({"ANNE", "ANN"})},
    };
    tasks.push_back({Mask({1, 6}), right_only, words_of({"ANNE", "JOANN"})});
    tasks.back().inner = words_of({"ANN"});
    // tests/demands_test.cpp
    tasks.push_back({mask_of({"OO..", "..OO"}), right_only, words_of({"AB", "CD"})});
    tasks.back().demands.spacing = 1;
    tasks.push_back({mask_of({"OO.OO"}), right_only, words_of({"AB", "CD"})});
    tasks.back().demands.spacing = 2;
    for (const std::size_t crossings : {1u, 4u, 5u}) {
        tasks.push_back({Mask({1, 9}), right_only, words_of({"ABC", "BCD", "CDE"})});
        tasks.back().demands.crossings = {crossings, crossings};
    }
    tasks.push_back(
        {Mask({5, 5}), directions_of({right, down, left, up}), words_of({"ABCD", "EFGH", "IJKL", "MNOP"})});
    tasks.back().demands.shares = {{directions_of({left, up}), {3, 3}},
                                   {directions_of({right, down}), {2, 4}}};
    tasks.push_back({Mask({3, 4}), right_only, words_of({"RAKE", "HOSE", "DILL"})});
    tasks.back().demands.before = {Placement{{0, 0}, right}, Placement{{1, 0}, right}, std::nullopt};
    tasks.back().demands.most_moved = 0;
    tasks.back().demands.pins = {std::nullopt, std::nullopt, Placement{{1, 0}, right}};
    tasks.push_back({Mask({3, 4}), right_only, words_of({"RA", "KE"}), words_of({"LAN"})});
    tasks.back().demands.pins = {Placement{{1, 0}, right}, Placement{{1, 2}, right}};
    tasks.back().demands.message = word_of("SUNFLOWY");
    for (const Task& task : tasks) {
        CAPTURE(text_of(task));
        CHECK(placed(task).end == End::impossible);
        CHECK(!solver_finds_a_placement(task, folder / "task.cnf"));
    }

    // The random words of tests/unplaced_test.cpp, which blames some of them.
    Random random(31);
    int conflicts = 0;
    for (int round = 0; round < 1000; ++round) {
        Task task;
        for (std::uint32_t word = 0, count = 2 + random.below(3); word < count; ++word) {
            task.words.emplace_back(2 + random.below(3));
            for (Letter& letter : task.words.back()) letter = static_cast<Letter>(random.below(6));
        }
        task.mask = Mask({2 + static_cast<int>(random.below(2)), 3});
        if (placed(task).end != End::impossible) continue;
        ++conflicts;
        CAPTURE(round, text_of(task));
        REQUIRE(!solver_finds_a_placement(task, folder / "task.cnf"));
    }
    CHECK(conflicts > 100);
}

TEST_CASE("English words in a square of five are decided as a SAT solver decides them") {
    const ScratchFolder folder;
    std::ifstream list(LODE_ENGLISH_WORDS);
    std::vector<std::string> words;
    for (std::string word; std::getline(list, word);)
        if (word.size() >= 4 && word.size() <= 5 &&
            word.find_first_not_of("abcdefghijklmnopqrstuvwxyz") == std::string::npos)
            words.push_back(word);
    REQUIRE(words.size() > 1000);
    Random random(77);
    Outcomes outcomes;
    for (int round = 0; round < 40; ++round) {
        CAPTURE(round);
        Task task{Mask({5, 5})};
        task.effort = 20'000'000;
        for (std::uint32_t count = 5 + random.below(4); count > 0; --count) {
            std::string word = words[random.below(static_cast<std::uint32_t>(words.size()))];
            for (char& letter : word) letter = static_cast<char>(letter - 'a' + 'A');
            task.words.push_back(word_of(word));
        }
        outcomes.count(decided(task, folder / "task.cnf"));
    }
    CAPTURE(outcomes.possible, outcomes.impossible, outcomes.undecided);
    CHECK(outcomes.undecided == 0);
    CHECK(outcomes.possible > 5);
    CHECK(outcomes.impossible > 5);
}
