// What a placement must meet besides letters that agree, each demand by itself and many at once: every search
// against brute force, and the bounds by which the searches give up early against all that brute force finds.

#include <algorithm>
#include <catch2/catch.hpp>
#include <map>

#include "place/complete.hpp"
#include "support/brute_force.hpp"
#include "support/grids.hpp"
#include "support/naive.hpp"
#include "support/random_tasks.hpp"
#include "support/searches.hpp"
#include "support/slowed.hpp"

using namespace lode;
using namespace lode::test;
using End = PlaceResult::End;

namespace {

struct Outcomes {
    int possible = 0;
    int impossible = 0;
    int found_by_neighbourhoods = 0;
    int decided_by_sampling = 0;
    int possible_covers = 0;
    int impossible_covers = 0;
    int possible_in_heat_bath = 0;
    int found_in_heat_bath = 0;
    int possible_by_chance = 0;
    int found_by_chance = 0;

    void count(const Agreement& agreement) {
        ++(agreement.exists ? possible : impossible);
        found_by_neighbourhoods += agreement.neighbourhoods_found_it;
        decided_by_sampling += agreement.sampling_decided;
        if (agreement.is_cover) ++(agreement.exists ? possible_covers : impossible_covers);
        possible_in_heat_bath += agreement.exists && agreement.suits_heat_bath;
        found_in_heat_bath += agreement.heat_bath_found_it;
        possible_by_chance += agreement.exists && agreement.suits_chance;
        found_by_chance += agreement.chance_found_it;
    }
};

bool is_met(const Task& task) {
    for (const PlaceResult& result :
         {placed(task), by_sampling(task), completely(task), by_neighbourhoods(task, 1, 20'000),
          by_cells(task).value_or(placed(task))}) {
        CAPTURE(text_of(task), static_cast<int>(result.end));
        if (result.end != End::placed) return false;
        REQUIRE(fault_in(task, result) == "");
    }
    return true;
}

bool is_refused(const Task& task) {
    return placed(task).end == End::impossible && by_sampling(task).end == End::impossible &&
           completely(task).end == End::impossible &&
           by_cells(task).value_or(PlaceResult{End::impossible, 0, {}, {}, 0}).end == End::impossible &&
           by_neighbourhoods(task, 1, 2'000).end == End::unfinished;
}

std::vector<std::uint32_t> cells_of(const Task& task, std::size_t word, const Placement& placement) {
    std::vector<std::uint32_t> cells;
    for (const auto& [row, column] : cells_from(task.mask.size(), placement.first, placement.direction,
                                                static_cast<int>(task.words[word].size())))
        cells.push_back(static_cast<std::uint32_t>(row * task.mask.size().columns + column));
    return cells;
}

}  // namespace

TEST_CASE("each demand by itself is met exactly where it can be") {
    Random random(303);
    for (const Rule rule : all_rules) {
        Outcomes outcomes;
        int forbidden = 0;  // possible but for the demand
        // Hardly ever does chance spell an inner word.
        const int rounds = rule == Rule::inner ? 1500 : 1500 / slowed;
        for (int round = 0; round < rounds; ++round) {
            const Task task = random_task_with({rule}, random);
            CAPTURE(name_of(rule), round);
            const Agreement agreement = all_agree_with_brute_force(task, random.below(1000));
            outcomes.count(agreement);
            forbidden += !agreement.exists && has_solution(without(task, rule));
        }
        CAPTURE(name_of(rule), outcomes.possible, outcomes.impossible, forbidden);
        CHECK(outcomes.possible > rounds / 10);
        CHECK(outcomes.impossible > rounds / 10);
        CHECK(forbidden > (rule == Rule::inner ? 8 : rounds / 50));
        CAPTURE(outcomes.found_by_neighbourhoods);
        CHECK(outcomes.found_by_neighbourhoods * 100 >= outcomes.possible * 95);
    }
}

TEST_CASE("demands together are met exactly where they can be") {
    Random random(404);
    std::map<Rule, Outcomes> by_rule;
    Outcomes all;
    for (int round = 0; round < 8000 / slowed; ++round) {
        const auto rules = some_rules(random, 4);
        const Task task = random_task_with(rules, random);
        CAPTURE(round);
        const Agreement agreement = all_agree_with_brute_force(task, random.below(1000));
        all.count(agreement);
        if (rules.size() > 1)
            for (const Rule rule : rules) by_rule[rule].count(agreement);
    }
    for (const Rule rule : all_rules) {
        CAPTURE(name_of(rule), by_rule[rule].possible, by_rule[rule].impossible);
        CHECK(by_rule[rule].possible > 80 / slowed);
        CHECK(by_rule[rule].impossible > 80 / slowed);
    }
    CAPTURE(all.possible, all.impossible, all.found_by_neighbourhoods, all.decided_by_sampling);
    CAPTURE(all.possible_covers, all.impossible_covers);
    CHECK(all.possible_covers > 500 / slowed);
    CHECK(all.impossible_covers > 500 / slowed);
    CHECK(all.decided_by_sampling * 200 >= (all.possible + all.impossible) * 199);
    CHECK(all.found_by_neighbourhoods * 100 >= all.possible * 95);
    CAPTURE(all.possible_in_heat_bath, all.found_in_heat_bath, all.possible_by_chance, all.found_by_chance);
    CHECK(all.possible_in_heat_bath > 500 / slowed);
    CHECK(all.found_in_heat_bath * 100 >= all.possible_in_heat_bath * 95);
    CHECK(all.possible_by_chance > 300 / slowed);
    CHECK(all.found_by_chance * 100 >= all.possible_by_chance * 95);
}

TEST_CASE("brute force and the judge of placements agree on what is a solution") {
    Random random(505);
    long right = 0;
    long wrong = 0;
    for (int round = 0; round < 1000; ++round) {
        Task task = random_task_with(some_rules(random, 3), random);
        const auto solutions = all_solutions(task);
        // Any solution of the task without its demands is one of it or has a fault.
        Task free = task;
        free.demands = {};
        free.avoided.clear();
        int tried = 0;
        every_solution(free, [&](const std::vector<Placement>& placements) {
            Grid grid(task.mask);
            for (std::size_t word = 0; word < placements.size(); ++word) {
                const auto cells =
                    cells_from(task.mask.size(), placements[word].first, placements[word].direction,
                               static_cast<int>(task.words[word].size()));
                for (std::size_t at = 0; at < cells.size(); ++at)
                    grid[{cells[at].first, cells[at].second}] = task.words[word][at];
            }
            std::size_t next = 0;
            const Letters& message = task.demands.message;
            for (int row = 0; row < grid.size().rows; ++row)
                for (int step = 0; step < grid.size().columns; ++step) {
                    const int column =
                        task.demands.message_from_right ? grid.size().columns - 1 - step : step;
                    if (grid[{row, column}] == empty_cell && next < message.size())
                        grid[{row, column}] = message[next++];
                }
            const std::string fault = fault_in(task, {End::placed, 0, placements, grid, 0});
            const bool expected = solutions.count(key_of(task, placements)) > 0;
            if (fault.empty() != expected) {
                CAPTURE(round, text_of(task), rows_of(grid), fault);
                REQUIRE(fault.empty() == expected);
            }
            ++(expected ? right : wrong);
            return ++tried < 200;
        });
    }
    CHECK(right > 2000);
    CHECK(wrong > 2000);
}

TEST_CASE("no part of a solution is ever taken for a dead end, in whatever order words come and go") {
    Random random(606);
    long parts = 0;
    for (int round = 0; round < 3000; ++round) {
        const Task task = random_task_with(some_rules(random, 4), random);
        std::vector<std::vector<Placement>> solutions;
        every_solution(task, [&](const auto& placements) {
            solutions.push_back(placements);
            return true;
        });
        if (solutions.empty()) continue;
        const auto& solution = solutions[random.below(static_cast<std::uint32_t>(solutions.size()))];
        CAPTURE(round, text_of(task));

        const TaskHolder holder(task);
        auto candidates = Candidates::list(holder.task());
        REQUIRE(candidates);
        std::vector<Candidate> chosen;
        for (std::uint32_t word = 0; word < solution.size(); ++word) {
            const auto candidate = candidates->that_covers(word, solution[word]);
            REQUIRE(candidate);
            chosen.push_back(*candidate);
        }
        Position position(holder.task(), *candidates);
        std::vector<std::uint32_t> out(chosen.size());
        for (std::uint32_t word = 0; word < out.size(); ++word) out[word] = word;
        const auto has = [](const Block* set, Candidate candidate) {
            return (set[candidate / 64] >> (candidate % 64) & 1) != 0;
        };
        for (int change = 0; change < 30; ++change) {
            const std::uint32_t word = random.below(static_cast<std::uint32_t>(chosen.size()));
            const auto is_out = std::find(out.begin(), out.end(), word);
            if (is_out == out.end()) {
                position.lift(word);
                out.push_back(word);
                continue;
            }
            REQUIRE(position.place(chosen[word]));
            out.erase(is_out);
            ++parts;
            for (const Candidate foretold : position.foretold())
                REQUIRE(chosen[candidates->word(foretold)] == foretold);
            for (const std::uint32_t to_come : out) {
                for (const std::uint32_t cell : candidates->cells(chosen[word]))
                    REQUIRE(has(candidates->left_by(cell, position.letter(cell)), chosen[to_come]));
                position.each_ruling([&](const Block* left) { REQUIRE(has(left, chosen[to_come])); });
            }
            if (out.empty()) REQUIRE(position.is_solution());
        }
    }
    CHECK(parts > 5000);
}

TEST_CASE("counting says of whole placements what the judge says, and of parts only what is sure") {
    Random random(707);
    long met = 0;
    long unmet = 0;
    long doomed = 0;
    for (int round = 0; round < 2000; ++round) {
        // What is counted; of the rest, the searches know by other means.
        std::vector<Rule> rules{Rule::crossings, Rule::leftover, Rule::shares, Rule::before};
        random.shuffle(rules);
        rules.resize(1 + random.below(2));
        const Task task = random_task_with(rules, random);
        Task free = task;
        free.demands = {};
        const auto solutions = all_solutions(task);
        const TaskHolder holder(task);
        const auto words = static_cast<unsigned>(task.words.size());
        // Of each part: whether some solution has it.
        std::map<SolutionKey, bool> within_reach;
        int tried = 0;
        every_solution(free, [&](const std::vector<Placement>& placements) {
            CAPTURE(round, text_of(task));
            const bool right = solutions.count(key_of(task, placements)) > 0;
            for (unsigned part = 0; part < 1u << words; ++part) {
                Tally tally(holder.task());
                for (std::uint32_t word = 0; word < words; ++word)
                    if ((part >> word & 1) != 0)
                        tally.add(word, placements[word], cells_of(task, word, placements[word]));
                const bool reach = tally.is_within_reach();
                if (part == (1u << words) - 1) {
                    REQUIRE(reach == right);
                    ++(right ? met : unmet);
                } else {
                    if (right) REQUIRE(reach);
                    doomed += !reach;
                }
                // Taking words off again leaves what was before them.
                for (std::uint32_t word = 0; word < words; ++word)
                    if ((part >> word & 1) != 0)
                        tally.remove(word, placements[word], cells_of(task, word, placements[word]));
                if (!solutions.empty()) REQUIRE(tally.is_within_reach());
            }
            return ++tried < 100;
        });
    }
    CHECK(met > 2000);
    CHECK(unmet > 2000);
    CHECK(doomed > 2000);
}

TEST_CASE("however little may be spent, nothing is called impossible that was not proved so") {
    Random random(808);
    Outcomes outcomes;
    int unfinished = 0;
    for (int round = 0; round < 4000; ++round) {
        Task task = random_task_with(some_rules(random, 3), random);
        // Up to some thousands, small numbers as often as large ones.
        task.effort = random.below(1u << random.below(14));
        const PlaceResult result = placed(task, random.below(1000));
        CAPTURE(round, text_of(task), task.effort);
        REQUIRE(result.effort_spent <= task.effort);
        if (result.end == End::unfinished) {
            ++unfinished;
            continue;
        }
        const bool exists = agrees_with_brute_force(task, result);
        ++(exists ? outcomes.possible : outcomes.impossible);
    }
    CHECK(unfinished > 500);
    CHECK(outcomes.possible > 500);
    CHECK(outcomes.impossible > 500);
}

TEST_CASE("a pinned word stands where it is pinned, a palindrome in either order") {
    using enum Direction;
    Task task{Mask({3, 4}), Directions::all(), {word_of("HOE"), word_of("RAKE")}};
    task.demands.pins = {std::nullopt, Placement{{1, 3}, left}};
    CHECK(is_met(task));
    CHECK(placed(task).placements[1] == Placement{{1, 3}, left});
    task.demands.pins = {Placement{{0, 1}, down_left}, Placement{{1, 3}, left}};
    CHECK(is_refused(task));  // two letters for one cell
    task.demands.pins = {Placement{{0, 2}, right}, std::nullopt};
    CHECK(is_refused(task));  // out of the grid
    task.demands.pins = {Placement{{-1, 0}, right}, std::nullopt};
    CHECK(is_refused(task));
    task.demands.pins = {Placement{{2, 1}, up_right}, std::nullopt};
    CHECK(is_met(task));
    task.mask.set({1, 2}, false);
    CHECK(is_refused(task));  // on a closed cell
    task.mask.set({1, 2}, true);
    task.directions = directions_of({right, down});
    CHECK(is_refused(task));  // in a direction that is not asked for

    Task palindrome{Mask({2, 4}), directions_of({right}), {word_of("ANNA")}};
    palindrome.demands.pins = {Placement{{0, 3}, left}};
    CHECK(is_met(palindrome));
    palindrome.directions = directions_of({left, right});
    palindrome.demands.shares = {{directions_of({right}), {1, 1}}};
    CHECK(is_met(palindrome));
    palindrome.demands.shares = {{directions_of({right}), {0, 0}}};
    CHECK(is_met(palindrome));
    palindrome.demands.shares.push_back({directions_of({left}), {0, 0}});
    CHECK(is_refused(palindrome));
}

TEST_CASE("a message is read row by row in the cells that the words leave, from either side") {
    using enum Direction;
    // The words fill the first row and the last; what is left is the middle row.
    Task task{Mask({3, 4}), directions_of({right}), {word_of("RAKE"), word_of("DILL")}};
    task.demands.pins = {Placement{{0, 0}, right}, Placement{{2, 0}, right}};
    task.demands.leftover = 4;
    task.demands.message = word_of("MOTH");
    CHECK(is_met(task));
    CHECK(rows_of(placed(task).grid) == std::vector<std::string>{"RAKE", "MOTH", "DILL"});
    task.demands.message_from_right = true;
    CHECK(is_met(task));
    CHECK(rows_of(placed(task).grid) == std::vector<std::string>{"RAKE", "HTOM", "DILL"});

    // Row after row, also where each is read from the right.
    task.words = {word_of("RA"), word_of("KE")};
    task.demands.pins = {Placement{{1, 0}, right}, Placement{{1, 2}, right}};
    task.demands.leftover = 8;
    task.demands.message = word_of("SUNFLOWY");
    CHECK(is_met(task));
    CHECK(rows_of(placed(task).grid) == std::vector<std::string>{"FNUS", "RAKE", "YWOL"});
    task.demands.message_from_right = false;
    CHECK(is_met(task));
    CHECK(rows_of(placed(task).grid) == std::vector<std::string>{"SUNF", "RAKE", "LOWY"});

    // What it spells counts: down the first column there would be a second RA.
    task.demands.message = word_of("SUNFAILY");
    CHECK(is_refused(task));
    task.demands.message = word_of("SUNFLOWY");
    task.avoided = {word_of("LAN")};  // from the lower left to the upper right
    CHECK(is_refused(task));
    task.avoided = {word_of("LAS")};
    CHECK(is_met(task));
    task.demands.message = word_of("SUNFLOW");
    CHECK(is_refused(task));  // a letter too few
    task.demands.leftover.reset();
    CHECK(is_refused(task));
    task.demands.filler_follows = true;
    CHECK(is_met(task));
    CHECK(rows_of(placed(task).grid) == std::vector<std::string>{"SUNF", "RAKE", "LOW_"});
    task.demands.message = word_of("SUNFLOWYD");
    CHECK(is_refused(task));  // a letter too many
}

TEST_CASE("words apart keep their distance in every direction, however narrow the mask") {
    using enum Direction;
    Task task{Mask({1, 5}), directions_of({right}), {word_of("AB"), word_of("CD")}};
    task.demands.spacing = 1;
    CHECK(is_met(task));
    task.mask = Mask({1, 4});
    CHECK(is_refused(task));
    task.mask = Mask({3, 2});
    CHECK(is_met(task));
    task.demands.spacing = 2;
    CHECK(is_refused(task));
    task.mask = Mask({4, 2});
    CHECK(is_met(task));
    // A closed cell between them is distance as well.
    task.mask = mask_of({"OO.OO"});
    CHECK(is_refused(task));
    task.demands.spacing = 1;
    CHECK(is_met(task));
    // Corner to corner is near.
    task.mask = mask_of({"OO..", "..OO"});
    CHECK(is_refused(task));
}

TEST_CASE("words share cells as often as is asked for, and never where that is forbidden") {
    using enum Direction;
    // Three words through one cell are one crossing; apart they are rows or columns.
    Task task{Mask({3, 3}),
              directions_of({right, down, down_right}),
              {word_of("AXB"), word_of("CXD"), word_of("EXF")}};
    for (std::size_t crossings = 0; crossings < 4; ++crossings) {
        task.demands.crossings = {crossings, crossings};
        CHECK((crossings < 2 ? is_met(task) : is_refused(task)));
    }
    // ABCDE shares three cells, BCDE two. Sharing C alone spells the third word, and BCD must be there.
    task = Task{Mask({1, 9}), directions_of({right}), {word_of("ABC"), word_of("BCD"), word_of("CDE")}};
    for (std::size_t crossings = 0; crossings < 6; ++crossings) {
        task.demands.crossings = {crossings, crossings};
        CAPTURE(crossings);
        CHECK((crossings == 0 || crossings == 2 || crossings == 3 ? is_met(task) : is_refused(task)));
    }
}

TEST_CASE("shares of directions are kept to the word") {
    using enum Direction;
    Task task{Mask({5, 5}), directions_of({right, down, left, up}), {}};
    for (const char* word : {"ABCD", "EFGH", "IJKL", "MNOP"}) task.words.push_back(word_of(word));
    for (const Direction direction : {right, down, left, up})
        task.demands.shares.push_back({directions_of({direction}), {1, 1}});
    CHECK(is_met(task));
    // Three and one: the most and the least at once.
    task.demands.shares = {{directions_of({left, up}), {3, 3}}, {directions_of({right, down}), {1, 4}}};
    CHECK(is_met(task));
    task.demands.shares[1].words = {2, 4};
    CHECK(is_refused(task));
}

TEST_CASE("words stay where they stood but for as many as may move") {
    using enum Direction;
    // Three rows hold three words; a fourth needs a row of its own.
    Task task{Mask({3, 4}), directions_of({right}), {word_of("RAKE"), word_of("HOSE"), word_of("DILL")}};
    task.demands.before = {Placement{{0, 0}, right}, Placement{{1, 0}, right}, std::nullopt};
    task.demands.most_moved = 0;
    CHECK(is_met(task));
    CHECK(placed(task).placements[2] == Placement{{2, 0}, right});
    // The new word is pinned where another stood.
    task.demands.pins = {std::nullopt, std::nullopt, Placement{{1, 0}, right}};
    CHECK(is_refused(task));
    task.demands.most_moved = 1;
    CHECK(is_met(task));
    CHECK(placed(task).placements[0] == Placement{{0, 0}, right});
    // Where it stood no longer is.
    task.demands.pins.clear();
    task.demands.before = {Placement{{0, 0}, right}, Placement{{1, 0}, right}, Placement{{7, 0}, right}};
    CHECK(is_met(task));
    task.demands.most_moved = 0;
    CHECK(is_refused(task));
}

TEST_CASE("demands of no words are met or refused as those of words are") {
    Task task{Mask({2, 2})};
    task.demands.leftover = 4;
    CHECK(placed(task).end == End::placed);
    CHECK(completely(task).end == End::placed);
    task.demands.leftover = 3;
    CHECK(placed(task).end == End::impossible);
    CHECK(completely(task).end == End::impossible);
    task.demands.leftover = 4;
    task.demands.message = word_of("MOTH");
    task.avoided = {word_of("HOT")};
    CHECK(placed(task).end == End::placed);
    task.avoided = {word_of("HO")};
    CHECK(placed(task).end == End::impossible);
    CHECK(completely(task).end == End::impossible);
    task = Task{Mask({2, 2})};
    task.demands.crossings.least = 1;
    CHECK(placed(task).end == End::impossible);
    CHECK(completely(task).end == End::impossible);
}
