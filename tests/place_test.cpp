// The placing search against brute force: where a placement exists it is found, where none does that is
// proved.

#include <catch2/catch.hpp>

#include "place/place.hpp"
#include "support/grids.hpp"
#include "support/naive.hpp"

using namespace lode;
using namespace lode::test;
using End = PlaceResult::End;

namespace {

constexpr std::uint64_t plenty = 5'000'000;

Letters a_to_z_as_itself() {
    Letters same(26);
    for (std::size_t letter = 0; letter < same.size(); ++letter) same[letter] = static_cast<Letter>(letter);
    return same;
}

struct Task {
    Mask mask;
    Directions directions = Directions::all();
    std::vector<Letters> words = {};
    std::vector<Letters> avoided = {};
    std::uint64_t effort = plenty;
    const std::atomic<bool>* cancel = nullptr;
    std::function<void(std::uint64_t)> progress = {};
};

PlaceResult placed(const Task& task, std::uint64_t seed = 1) {
    const CopyGuard words(task.words, a_to_z_as_itself());
    const CopyGuard avoided(task.avoided, a_to_z_as_itself());
    Random random(seed);
    return place(
        {task.mask, task.directions, task.words, words, avoided, task.effort, task.progress, task.cancel},
        random);
}

// What is wrong with a result, or an empty text.
std::string fault_in(const Task& task, const PlaceResult& result) {
    if (result.placements.size() != task.words.size()) return "not every word has a placement";
    Grid written(task.mask);
    for (std::size_t word = 0; word < task.words.size(); ++word) {
        const auto [first, direction] = result.placements[word];
        if (!task.directions.contains(direction)) return "a direction that was not asked for";
        const auto cells =
            cells_from(task.mask.size(), first, direction, static_cast<int>(task.words[word].size()));
        if (cells.empty()) return "a placement leads out of the grid";
        for (std::size_t at = 0; at < cells.size(); ++at) {
            const Cell cell{cells[at].first, cells[at].second};
            if (!task.mask.open(cell)) return "a placement covers a closed cell";
            if (written[cell] != empty_cell && written[cell] != task.words[word][at])
                return "letters that clash";
            written[cell] = task.words[word][at];
        }
    }
    if (rows_of(written) != rows_of(result.grid)) return "the grid does not hold the placements' letters";
    for (std::size_t word = 0; word < task.words.size(); ++word) {
        const auto cells =
            cells_from(task.mask.size(), result.placements[word].first, result.placements[word].direction,
                       static_cast<int>(task.words[word].size()));
        if (naive_copies(written, task.words[word]) != std::set<CellSet>{{cells.begin(), cells.end()}})
            return "a word can be read elsewhere as well";
    }
    for (const auto& word : task.avoided)
        if (!naive_copies(written, word).empty()) return "an avoided word can be read";
    return {};
}

// Compares with brute force; returns whether there is a placement.
bool agrees_with_brute_force(const Task& task, std::uint64_t seed) {
    const PlaceResult result = placed(task, seed);
    const bool exists = naive_can_place(task.mask, task.directions, task.words, task.avoided);
    const std::string fault = result.end == End::placed ? fault_in(task, result) : std::string();
    if (result.end != (exists ? End::placed : End::impossible) || !fault.empty()) {
        std::vector<std::string> words, avoided;
        for (const auto& word : task.words) words.push_back(text_of(word));
        for (const auto& word : task.avoided) avoided.push_back(text_of(word));
        CAPTURE(rows_of(Grid(task.mask)), words, avoided, seed, static_cast<int>(result.end), exists, fault);
        REQUIRE(result.end == (exists ? End::placed : End::impossible));
        REQUIRE(fault.empty());
    }
    return exists;
}

Letters random_word(Random& random, std::uint32_t letters, std::uint32_t most) {
    Letters word(2 + random.below(most - 1));
    for (Letter& letter : word) letter = static_cast<Letter>(random.below(letters));
    return word;
}

}  // namespace

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
                for (std::size_t second = first; second < words.size(); ++second)
                    ++(agrees_with_brute_force({mask, directions, {words[first], words[second]}}, ++seed)
                           ? possible
                           : impossible);
    CHECK(possible > 1000);
    CHECK(impossible > 1000);
}

TEST_CASE("random words are placed on random small masks exactly where brute force places them") {
    Random random(99);
    long possible = 0;
    long impossible = 0;
    for (int round = 0; round < 6000; ++round) {
        Task task{Mask({1 + static_cast<int>(random.below(3)), 1 + static_cast<int>(random.below(4))})};
        for (int row = 0; row < task.mask.size().rows; ++row)
            for (int column = 0; column < task.mask.size().columns; ++column)
                task.mask.set({row, column}, random.below(6) != 0);
        task.directions = Directions();
        for (const Direction direction : all_directions)
            if (random.below(2) == 0) task.directions.insert(direction);
        const auto letters = 2 + random.below(3);
        for (std::uint32_t word = 0, words = 1 + random.below(3); word < words; ++word)
            task.words.push_back(random_word(random, letters, 4));
        for (std::uint32_t word = 0, words = random.below(3); word < words; ++word)
            task.avoided.push_back(random_word(random, letters, 3));
        CAPTURE(round);
        ++(agrees_with_brute_force(task, random.below(1000)) ? possible : impossible);
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

TEST_CASE("nested words are placed once each where that can be, and are proved impossible where it cannot") {
    // AN stands in ANNE once, ANN in ANNA twice.
    const Task once{Mask({3, 4}), Directions::all(), {word_of("ANNE"), word_of("AN")}};
    const auto result = placed(once);
    REQUIRE(result.end == End::placed);
    CHECK(fault_in(once, result).empty());
    CHECK(placed({Mask({4, 4}), Directions::all(), {word_of("ANNA"), word_of("ANN")}}).end ==
          End::impossible);
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
    // A word that has been tried everywhere within its bound is a proof all the same.
    Task small{Mask({1, 3}), Directions::all(), {word_of("ABCD")}};
    small.effort = 24;
    CHECK(placed(small).end == End::impossible);
    small.effort = 23;
    CHECK(placed(small).end == End::unfinished);
}

TEST_CASE("placing reports its progress and stops soon after it is cancelled") {
    Task endless{Mask({6, 6}), Directions::all(), {}, {}, 1'000'000'000};
    for (const char* word : {"ABCDEF", "GHIJKL", "MNOPQR", "STUVWX", "YZABDC", "FEHGJI", "BADCFE"})
        endless.words.push_back(word_of(word));
    std::atomic<bool> cancel = false;
    endless.cancel = &cancel;
    std::vector<std::uint64_t> reports;
    endless.progress = [&](std::uint64_t spent) {
        reports.push_back(spent);
        if (reports.size() == 3) cancel = true;
    };
    const auto result = placed(endless);
    CHECK(result.end == End::cancelled);
    CHECK(reports.size() == 3);
    CHECK(std::is_sorted(reports.begin(), reports.end()));
    CHECK(result.effort_spent == reports.back());
}
