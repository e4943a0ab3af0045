// The searches for tight tasks, each by itself: in place() easier tasks never reach them.

#include <catch2/catch.hpp>
#include <cstdlib>
#include <map>

#include "place/complete.hpp"
#include "place/symmetry.hpp"
#include "support/brute_force.hpp"
#include "support/grids.hpp"
#include "support/naive.hpp"
#include "support/random_tasks.hpp"
#include "support/searches.hpp"
#include "support/slowed.hpp"

using namespace lode;
using namespace lode::test;
using End = PlaceResult::End;

TEST_CASE(
    "the complete search places two short words on every mask of two by three exactly where they can be") {
    using enum Direction;
    const auto words = every_word(2, 2, 3);
    long possible = 0;
    long impossible = 0;
    for (const Directions directions :
         {Directions::all(), Directions::forward(), directions_of({right, down}), directions_of({left})})
        for (const Mask& mask : every_mask({2, 3}))
            for (std::size_t first = 0; first < words.size(); ++first)
                for (std::size_t second = first; second < words.size(); ++second) {
                    const Task task{mask, directions, {words[first], words[second]}};
                    ++(agrees_with_brute_force(task, completely(task)) ? possible : impossible);
                }
    CHECK(possible > 1000);
    CHECK(impossible > 1000);
}

TEST_CASE("all tight searches agree with brute force on random small tasks") {
    Random random(2024);
    long possible = 0;
    for (int round = 0; round < 6000 / slowed; ++round) {
        const Task task = random_small_task(random);
        CAPTURE(round);
        const bool exists = agrees_with_brute_force(task, completely(task));
        possible += exists;
        // Finding is no proof: where there is no placement, it must find none.
        const std::uint64_t seed = random.below(1000);
        const auto by_neighbourhoods = test::by_neighbourhoods(task, seed, 500);
        for (const auto& found :
             {by_neighbourhoods,
              by_heat_bath(task, seed, exists ? 5'000 : 200).value_or(by_neighbourhoods)}) {
            CAPTURE(text_of(task), seed);
            if (exists) {
                REQUIRE(found.end == End::placed);
                REQUIRE(fault_in(task, found) == "");
            } else {
                REQUIRE(found.end == End::unfinished);
            }
        }
    }
    CHECK(possible > 500 / slowed);
    CHECK(possible < 5500 / slowed);
}

TEST_CASE("the complete search visits every solution once, on every mask of up to four by four") {
    Random random(1616);
    long solutions = 0;
    long tasks = 0;
    long with_demands = 0;
    long seen = 0;
    for (int rows = 1; rows <= 4; ++rows)
        for (int columns = 1; columns <= 4; ++columns) {
            const int cells = rows * columns;
            for (const Mask& mask : every_mask({rows, columns})) {
                if (cells > 12 && ++seen % slowed != 0) continue;
                for (std::size_t set = 0, sets = cells <= 9 ? 5 : 1; set < sets; ++set) {
                    const Task task =
                        random_task_with(some_rules(random, 2), mask, cells <= 9 ? 3 : 2, random);
                    const TaskHolder holder(task);
                    auto candidates = Candidates::list(holder.task());
                    REQUIRE(candidates);
                    Effort effort(holder.task());
                    CompleteSearch search(holder.task(), *candidates, effort);
                    std::vector<SolutionKey> visited;
                    const bool all = search.visit_all([&](const Position& position) {
                        visited.push_back(key_of(task, position.placements()));
                    });
                    std::sort(visited.begin(), visited.end());
                    const auto expected = all_solutions(task);
                    if (!all ||
                        !std::equal(visited.begin(), visited.end(), expected.begin(), expected.end())) {
                        CAPTURE(text_of(task), all, visited.size(), expected.size());
                        REQUIRE(all);
                        REQUIRE(visited == std::vector<SolutionKey>(expected.begin(), expected.end()));
                    }
                    solutions += static_cast<long>(expected.size());
                    tasks += !expected.empty();
                    with_demands += !expected.empty() && task.demands.count_anything();
                }
            }
        }
    CHECK(tasks > 10'000 / slowed);
    CHECK(with_demands > 3'000 / slowed);
    CHECK(solutions > 500'000 / slowed);
}

TEST_CASE("cases that are images of each other are left out and no solution is missed for it") {
    // Masks and directions that some mirror or turn keeps, and demands that it keeps too.
    using enum Direction;
    Random random(88);
    long possible = 0;
    long impossible = 0;
    long reduced = 0;
    for (const Size size : {Size{2, 3}, Size{3, 3}, Size{2, 4}, Size{4, 4}})
        for (const Mask& mask : every_mask(size)) {
            if (size.cells() == 16 && random.below(16) > 0) continue;
            for (const Directions directions : {Directions::all(), directions_of({right, left, up, down}),
                                                directions_of({right, down}), directions_of({right, left})}) {
                std::vector<Rule> rules{Rule::crossings, Rule::spacing, Rule::leftover, Rule::inner};
                random.shuffle(rules);
                rules.resize(random.below(3));
                Task task = random_task_with(rules, mask, 3, random);
                task.directions = directions;
                const bool exists = agrees_with_brute_force(task, completely(task));
                ++(exists ? possible : impossible);

                const TaskHolder holder(task);
                const auto candidates = Candidates::list(holder.task());
                std::size_t all = 0;
                each_bit(candidates->all().data(), candidates->runs()[0], [&](Candidate) { ++all; });
                reduced += one_of_each_class(holder.task(), *candidates, 0).size() < all;
            }
        }
    CHECK(possible > 3'000);
    CHECK(impossible > 3'000);
    CHECK(reduced > 500);
}

TEST_CASE("a long copy that only the whole grid spells is no solution of any search") {
    // Read down, the first column of the rows spells the avoided word, whichever way the rows are turned.
    const Task task{Mask({4, 4}),
                    directions_of({Direction::right}),
                    {word_of("ABCD"), word_of("EFGH"), word_of("IJKL"), word_of("MNOP")},
                    {word_of("AEIM"), word_of("MIEA"), word_of("EAIM")}};
    const auto complete = completely(task);
    REQUIRE(complete.end == End::placed);
    CHECK(fault_in(task, complete) == "");
    for (std::uint64_t seed = 0; seed < 20; ++seed) {
        for (const auto& found : {by_neighbourhoods(task, seed, 2'000), *by_heat_bath(task, seed, 20'000)}) {
            REQUIRE(found.end == End::placed);
            CHECK(fault_in(task, found) == "");
        }
    }
}

TEST_CASE("a round that finds nothing leaves the grid as it was, however crowded by short words") {
    Task task{Mask({3, 3})};
    for (const char* word : {"BK", "DK", "KN", "SZ", "BD", "CJ", "JZ", "CV", "FP", "FG",
                             "DH", "CD", "QV", "FQ", "HJ", "NW", "MN", "CN", "JM", "DW"})
        task.words.push_back(word_of(word));
    for (std::uint64_t seed = 0; seed < 20; ++seed)
        CHECK(by_neighbourhoods(task, seed, 20'000).end == End::unfinished);
    CHECK(completely(task).end == End::impossible);
    task.mask = Mask({5, 5});
    for (std::uint64_t seed = 0; seed < 20; ++seed) {
        const auto found = by_neighbourhoods(task, seed, 20'000);
        REQUIRE(found.end == End::placed);
        CHECK(fault_in(task, found) == "");
    }
}

TEST_CASE("a perfect square of words with no cell over is found by all tight searches") {
    const Task task{
        Mask({5, 5}),
        Directions::all(),
        {word_of("ABCDE"), word_of("FGHIJ"), word_of("KLMNO"), word_of("PQRST"), word_of("UVWXY")}};
    CHECK(fault_in(task, completely(task)) == "");
    CHECK(fault_in(task, by_neighbourhoods(task, 1, 100'000)) == "");
    CHECK(fault_in(task, *by_heat_bath(task, 1, 100'000)) == "");
    Task more = task;
    more.words.push_back(word_of("AGNRY"));
    CHECK(completely(more).end == End::impossible);
}

TEST_CASE(
    "candidates are numbered a word after another, and each is found again by the cells that it covers") {
    const Task task{mask_of({"OOOO", "O.OO", "OOOO"}), Directions::all(), {word_of("ABC"), word_of("ABA")}};
    const TaskHolder holder(task);
    const auto candidates = Candidates::list(holder.task());
    REQUIRE(candidates);
    std::size_t counts[2] = {0, 0};
    for (std::uint32_t word = 0; word < 2; ++word)
        each_bit(candidates->all().data(), candidates->runs()[word], [&](Candidate candidate) {
            ++counts[word];
            CHECK(candidates->word(candidate) == word);
            CHECK(candidates->that_covers(word, candidates->placement(candidate)) == candidate);
            for (const auto cell : candidates->cells(candidate))
                CHECK(task.mask.open({static_cast<int>(cell / 4), static_cast<int>(cell % 4)}));
        });
    CHECK(counts[0] == 2 * counts[1]);  // a palindrome once for both its ends
    CHECK(candidates->that_covers(1, {{0, 2}, Direction::left}).has_value());
    CHECK(!candidates->that_covers(0, {{1, 0}, Direction::right}).has_value());
}

TEST_CASE("a word has as many candidates as the closed formulas say, and a palindrome half as many") {
    // Rows R, columns C, length L, a = max(R-L+1, 0), b = max(C-L+1, 0): 2 (R b + C a + 2 a b) in all eight
    // directions, R b in one along the rows, and by hand 912 for 12x20 and 7 letters.
    const auto count = [](Size size, Directions directions, const Letters& word) {
        const Task task{Mask(size), directions, {word}};
        const TaskHolder holder(task);
        const auto candidates = Candidates::list(holder.task());
        REQUIRE(candidates);
        long long all = 0;
        each_bit(candidates->all().data(), candidates->runs()[0], [&](Candidate) { ++all; });
        return all;
    };
    CHECK(count({12, 20}, Directions::all(), word_of("ABCDEFG")) == 912);
    for (int rows = 1; rows <= 7; ++rows)
        for (int columns = 1; columns <= 7; ++columns)
            for (int length = 2; length <= 6; ++length) {
                const long long a = std::max(rows - length + 1, 0);
                const long long b = std::max(columns - length + 1, 0);
                const long long eight = 2 * (rows * b + columns * a + 2 * a * b);
                CAPTURE(rows, columns, length);
                const Letters word =
                    word_of(std::string("ABCDEF").substr(0, static_cast<std::size_t>(length)));
                CHECK(count({rows, columns}, Directions::all(), word) == eight);
                CHECK(count({rows, columns}, directions_of({Direction::left}), word) == rows * b);
                CHECK(count({rows, columns}, Directions::all(), Letters(word.size(), Letter{0})) ==
                      eight / 2);
            }
}

TEST_CASE(
    "a letter in a cell leaves the candidates that have it there and those that do not cover the cell") {
    const Task task{Mask({3, 3}), Directions::all(), {word_of("AB"), word_of("BCA")}};
    const TaskHolder holder(task);
    auto candidates = Candidates::list(holder.task());
    REQUIRE(candidates);
    for (std::uint32_t cell = 0; cell < 9; ++cell)
        for (Letter letter = 0; letter < 3; ++letter) {
            const Block* const left = candidates->left_by(cell, letter);
            for (std::uint32_t word = 0; word < 2; ++word)
                each_bit(candidates->all().data(), candidates->runs()[word], [&](Candidate candidate) {
                    const auto cells = candidates->cells(candidate);
                    const auto at = std::find(cells.begin(), cells.end(), cell);
                    const bool stays =
                        at == cells.end() ||
                        task.words[word][static_cast<std::size_t>(at - cells.begin())] == letter;
                    CHECK(((left[candidate / 64] >> (candidate % 64) & 1) != 0) == stays);
                });
        }
}

TEST_CASE("where words keep apart a letter leaves the candidates that keep their distance, and no others") {
    for (const int spacing : {0, 1, 2}) {
        Task task{
            mask_of({"OOOO", "O.OO", "OOOO", "OOOO"}), Directions::all(), {word_of("AB"), word_of("BCA")}};
        task.demands.spacing = spacing;
        if (spacing == 0) task.demands.crossings.most = 0;
        const TaskHolder holder(task);
        auto candidates = Candidates::list(holder.task());
        REQUIRE(candidates);
        for (std::uint32_t cell = 0; cell < 16; ++cell)
            for (Letter letter = 0; letter < 3; ++letter) {
                const Block* const left = candidates->left_by(cell, letter);
                for (std::uint32_t word = 0; word < 2; ++word)
                    each_bit(candidates->all().data(), candidates->runs()[word], [&](Candidate candidate) {
                        int nearest = 4;
                        for (const std::uint32_t other : candidates->cells(candidate))
                            nearest = std::min(
                                nearest,
                                std::max(std::abs(static_cast<int>(cell / 4) - static_cast<int>(other / 4)),
                                         std::abs(static_cast<int>(cell % 4) - static_cast<int>(other % 4))));
                        CHECK(((left[candidate / 64] >> (candidate % 64) & 1) != 0) == (nearest > spacing));
                    });
            }
    }
}

TEST_CASE("the candidates at home are where their words stood, letter by letter, and all of other words") {
    using enum Direction;
    Task task{Mask({3, 4}), Directions::all(), {word_of("ABC"), word_of("ABA"), word_of("CAB")}};
    task.demands.before = {Placement{{1, 3}, left}, Placement{{2, 3}, left}, std::nullopt};
    task.demands.shares = {{directions_of({right}), {0, 3}}};  // a palindrome has both its candidates
    const TaskHolder holder(task);
    auto candidates = Candidates::list(holder.task());
    REQUIRE(candidates);
    std::vector<std::vector<Placement>> at_home(3);
    std::vector<std::size_t> all(3);
    for (std::uint32_t word = 0; word < 3; ++word)
        each_bit(candidates->all().data(), candidates->runs()[word], [&](Candidate candidate) {
            ++all[word];
            if ((candidates->at_home()[candidate / 64] >> (candidate % 64) & 1) != 0)
                at_home[word].push_back(candidates->placement(candidate));
        });
    CHECK(at_home[0] == std::vector<Placement>{{{1, 3}, left}});
    CHECK(at_home[1] == std::vector<Placement>{{{2, 1}, right}, {{2, 3}, left}});
    CHECK(at_home[2].size() == all[2]);
}

TEST_CASE(
    "symmetries leave one of eight places of a word on a square, and all of them where nothing is "
    "symmetrical") {
    const auto classes = [](const Mask& mask, Directions directions) {
        const Task task{mask, directions, {word_of("ABC")}};
        const TaskHolder holder(task);
        const auto candidates = Candidates::list(holder.task());
        return one_of_each_class(holder.task(), *candidates, 0).size();
    };
    // Burnside's lemma by hand: of the 96 placements each of the four mirrors keeps the 6 on its axis and no
    // turn keeps any: (96 + 4 x 6) / 8 classes.
    CHECK(naive_placements({5, 5}, Directions::all(), 3) == 96);
    CHECK(classes(Mask({5, 5}), Directions::all()) == 15);
    CHECK(classes(mask_of({"OOOO", "OOO.", "OO..", "O..."}), directions_of({Direction::right})) == 3);
}

TEST_CASE("operations on sets are the same on every machine") {
    // The plain ones are what block_operations() falls back on; the test computes the results itself.
    Random random(5);
    const BlockOperations& operations = block_operations();
    for (std::size_t size = 1; size < 40; ++size) {
        std::vector<Block> a(size), b(size), met(size);
        for (auto* set : {&a, &b})
            for (Block& block : *set)
                block = Block{random.below(UINT32_MAX)} << 32 | random.below(UINT32_MAX);
        operations.meet(met.data(), a.data(), b.data(), size);
        std::vector<Block> joined = a;
        operations.join(joined.data(), b.data(), size);
        std::uint32_t bits = 0;
        for (std::size_t at = 0; at < size; ++at) {
            CHECK(met[at] == (a[at] & b[at]));
            CHECK(joined[at] == (a[at] | b[at]));
            for (int bit = 0; bit < 64; ++bit) bits += static_cast<std::uint32_t>(a[at] >> bit & 1);
        }
        const BlockRun run{0, static_cast<std::uint32_t>(size)};
        const std::uint32_t which = 0;
        std::uint32_t count = 0;
        operations.count_runs(a.data(), &run, {&which, 1}, &count);
        CHECK(count == bits);
    }
}

TEST_CASE(
    "a tight task ends the same on any number of threads, whether it is placed, impossible or unfinished") {
    Random random(77);
    std::map<End, int> ends;
    for (int round = 0; round < 60; ++round) {
        Task task{Mask({5, 5})};
        const auto words = 6 + random.below(5);
        for (std::uint32_t word = 0; word < words; ++word) task.words.push_back(random_word(random, 12, 5));
        task.effort = 100'000 + random.below(200'000);
        if (round % 3 == 0) task.demands.leftover = random.below(6);
        const auto on = [&](unsigned threads) {
            const TaskHolder holder(task);
            PlaceTask several = holder.task();
            several.threads = threads;
            Random chance(5);
            return place(several, chance);
        };
        const PlaceResult one = on(1);
        ++ends[one.end];
        if (one.end == End::placed) REQUIRE(fault_in(task, one) == "");
        for (const unsigned threads : {2u, 7u}) {
            const PlaceResult other = on(threads);
            CAPTURE(round, threads);
            REQUIRE(other.end == one.end);
            REQUIRE(other.placements == one.placements);
            REQUIRE(other.effort_spent == one.effort_spent);
            REQUIRE(other.hardest == one.hardest);
        }
    }
    CAPTURE(ends[End::placed], ends[End::impossible], ends[End::unfinished]);
    CHECK(ends[End::placed] > 5);
    CHECK(ends[End::impossible] > 5);
}
