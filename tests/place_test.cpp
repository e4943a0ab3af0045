// The placing search against brute force: where a placement exists it is found, where none does that is
// proved.

#include <catch2/catch.hpp>

#include "place/place.hpp"
#include "support/grids.hpp"
#include "support/naive.hpp"
#include "support/random_tasks.hpp"
#include "support/searches.hpp"

using namespace lode;
using namespace lode::test;
using End = PlaceResult::End;

TEST_CASE("two words of up to three letters are placed on a mask of two by three exactly where they can be") {
    using enum Direction;
    const auto words = every_word(2, 2, 3);
    long possible = 0;
    long impossible = 0;
    std::uint64_t seed = 0;
    for (const Directions directions :
         {Directions::all(), Directions::forward(), directions_of({right, down}), directions_of({left})})
        for (const Mask& mask : every_mask({2, 3}))
            for (std::size_t first = 0; first < words.size(); ++first)
                for (std::size_t second = first; second < words.size(); ++second) {
                    const Task task{mask, directions, {words[first], words[second]}};
                    ++(agrees_with_brute_force(task, placed(task, ++seed)) ? possible : impossible);
                }
    CHECK(possible > 1000);
    CHECK(impossible > 1000);
}

TEST_CASE("random words are placed on random small masks exactly where brute force places them") {
    Random random(99);
    long possible = 0;
    long impossible = 0;
    for (int round = 0; round < 6000; ++round) {
        const Task task = random_small_task(random);
        CAPTURE(round);
        ++(agrees_with_brute_force(task, placed(task, random.below(1000))) ? possible : impossible);
    }
    CHECK(possible > 500);
    CHECK(impossible > 500);
}

TEST_CASE("words that leave no cell over are placed, and one cell less is proved impossible") {
    // Four words of four letters in a square of four: right only, they must fill the rows.
    const std::vector<Letters> words{word_of("ABCD"), word_of("EFGH"), word_of("IJKL"), word_of("MNOP")};
    using enum Direction;
    const Task exact{Mask({4, 4}), directions_of({right}), words};
    const auto full = placed(exact);
    REQUIRE(full.end == End::placed);
    CHECK(fault_in(exact, full).empty());
    Task less = exact;
    less.mask.set({2, 1}, false);
    const auto proof = placed(less);
    CHECK(proof.end == End::impossible);
    CHECK(proof.hardest < words.size());
    CHECK(proof.effort_spent > 0);
    Task fewer_rows = exact;
    fewer_rows.mask = Mask({3, 4});
    CHECK(placed(fewer_rows).end == End::impossible);
}

TEST_CASE("an avoided word that stands in a listed one makes any placement impossible") {
    CHECK(placed({Mask({3, 5}), Directions::all(), {word_of("SPADE")}, {word_of("PAD")}}).end ==
          End::impossible);
    CHECK(placed({Mask({3, 5}), Directions::all(), {word_of("SPADE")}, {word_of("DAP")}}).end ==
          End::impossible);
    CHECK(placed({Mask({3, 5}), Directions::all(), {word_of("SPADE")}, {word_of("PAN")}}).end == End::placed);
}

TEST_CASE("no words, no directions and no cells have their outcomes") {
    CHECK(placed({Mask({2, 2}), Directions::all(), {}}).end == End::placed);
    CHECK(placed({Mask({2, 2}), Directions(), {word_of("AB")}}).end == End::impossible);
    CHECK(placed({Mask(), Directions::all(), {word_of("AB")}}).end == End::impossible);
    CHECK(placed({Mask({2, 2}, false), Directions::all(), {word_of("AB")}}).end == End::impossible);
    CHECK(placed({Mask({9, 9}), Directions::all(), {word_of("ABCDEFGHIJ")}}).end == End::impossible);
}

TEST_CASE("the same seed places words in the same way, and other seeds in others") {
    const Task task{Mask({8, 8}), Directions::all(), {word_of("SPADE"), word_of("RAKE"), word_of("HOE")}};
    CHECK(placed(task, 7).placements == placed(task, 7).placements);
    std::set<std::string> grids;
    for (std::uint64_t seed = 0; seed < 20; ++seed) {
        std::string all;
        for (const auto& row : rows_of(placed(task, seed).grid)) all += row;
        grids.insert(all);
    }
    CHECK(grids.size() == 20);
}

TEST_CASE("every placement of a word comes up, in every direction") {
    const Task task{Mask({3, 3}), Directions::all(), {word_of("RAKE"), word_of("HOE")}};
    Task only{Mask({3, 3}), Directions::all(), {word_of("HOE")}};
    std::set<std::tuple<int, int, Direction>> seen;
    for (std::uint64_t seed = 0; seed < 400; ++seed) {
        const auto result = placed(only, seed);
        REQUIRE(result.end == End::placed);
        seen.emplace(result.placements[0].first.row, result.placements[0].first.column,
                     result.placements[0].direction);
    }
    CHECK(seen.size() == 16);
    CHECK(placed(task).end == End::impossible);
}

TEST_CASE("effort is a bound that is never passed, and spent effort is never called a proof") {
    // Nine words that all begin and end alike leave much to try in a grid that is too small for them.
    Task tight{Mask({5, 5}), Directions::all(), {}};
    for (const char* word : {"ABCDE", "FGHIJ", "KLMNO", "PQRST", "UVWXY", "AFKPU"})
        tight.words.push_back(word_of(word));
    for (const std::uint64_t effort :
         {std::uint64_t{0}, std::uint64_t{1}, std::uint64_t{2}, std::uint64_t{10}, std::uint64_t{1000},
          std::uint64_t{16384}, std::uint64_t{20001}, std::uint64_t{123457}}) {
        tight.effort = effort;
        const auto result = placed(tight);
        CAPTURE(effort);
        CHECK(result.effort_spent <= effort);
        CHECK(result.end != End::impossible);
        CHECK(result.end != End::cancelled);
        if (effort < 5) CHECK(result.end == End::unfinished);
    }
    // That a word fits nowhere is seen without a step.
    Task small{Mask({1, 3}), Directions::all(), {word_of("ABCD")}};
    for (const std::uint64_t effort : {0u, 23u, 24u}) {
        small.effort = effort;
        CHECK(placed(small).end == End::impossible);
    }
}

TEST_CASE("placing reports its progress and stops soon after it is cancelled") {
    // Far too many short words, in which no count of lines sees a contradiction.
    Task endless{Mask({10, 10}), Directions::all(), {}, {}, 1'000'000'000};
    Random letters(1);
    for (int word = 0; word < 80; ++word) {
        endless.words.emplace_back();
        for (int at = 0; at < 4; ++at) endless.words.back().push_back(static_cast<Letter>(letters.below(12)));
    }
    std::atomic<bool> cancel = false;
    endless.cancel = &cancel;
    std::vector<std::uint64_t> reports;
    endless.progress = [&](std::uint64_t spent) {
        reports.push_back(spent);
        if (reports.size() == 3) cancel = true;
    };
    const auto result = placed(endless);
    CHECK(result.end == End::cancelled);
    REQUIRE(reports.size() == 3);
    CHECK(std::is_sorted(reports.begin(), reports.end()));
    CHECK(result.effort_spent == reports.back());
}
