// Words inside words, as the placing searches see them: the copies that placements bring with them are
// expected, each for itself, and no other is.

#include <catch2/catch.hpp>

#include "support/brute_force.hpp"
#include "support/grids.hpp"
#include "support/naive.hpp"
#include "support/searches.hpp"

using namespace lode;
using namespace lode::test;
using End = PlaceResult::End;

namespace {

Task task_of(Size size, const std::vector<std::string>& words, const std::vector<std::string>& inner = {}) {
    Task task{Mask(size), Directions::all(), words_of(words)};
    task.inner = words_of(inner);
    return task;
}

// How often each listed word stands in what every search makes of the task; the same for all of them.
std::vector<std::size_t> copies_in(const Task& task) {
    std::vector<std::size_t> copies;
    for (const PlaceResult& result :
         {placed(task), by_sampling(task), completely(task), by_neighbourhoods(task, 1, 20'000)}) {
        CAPTURE(text_of(task));
        REQUIRE(result.end == End::placed);
        REQUIRE(fault_in(task, result) == "");
        std::vector<std::size_t> found;
        for (const auto& word : task.listed()) found.push_back(naive_copies(result.grid, word).size());
        if (copies.empty()) copies = found;
        CHECK(found == copies);
    }
    return copies;
}

void is_impossible(const Task& task) {
    CAPTURE(text_of(task));
    CHECK(!has_solution(task));
    CHECK(placed(task).end == End::impossible);
    CHECK(by_sampling(task).end == End::impossible);
    CHECK(completely(task).end == End::impossible);
    CHECK(by_neighbourhoods(task, 1, 2'000).end == End::unfinished);
}

using Counts = std::vector<std::size_t>;

}  // namespace

TEST_CASE("a word that has no place of its own stands where another holds it, and nowhere else") {
    CHECK(copies_in(task_of({4, 5}, {"ANNE"}, {"ANN"})) == Counts{1, 1});
    CHECK(copies_in(task_of({4, 5}, {"ANNE", "HOE"}, {"NNA"})) == Counts{1, 1, 1});
    // Held twice.
    CHECK(copies_in(task_of({4, 5}, {"ANNA"}, {"ANN"})) == Counts{1, 2});
    CHECK(copies_in(task_of({4, 6}, {"ANANAS"}, {"ANA"})) == Counts{1, 2});
    CHECK(copies_in(task_of({4, 5}, {"ANNE", "JOANN"}, {"ANN"})) == Counts{1, 1, 2});
    // One that nothing holds may stand nowhere.
    Task pinned = task_of({1, 4}, {"AN", "NE"});
    pinned.demands.pins = {Placement{{0, 0}, Direction::right}, Placement{{0, 2}, Direction::right}};
    CHECK(copies_in(pinned) == Counts{1, 1});
    pinned.inner = words_of({"NN"});
    is_impossible(pinned);
}

TEST_CASE("a word with a place of its own stands there and wherever others hold it") {
    CHECK(copies_in(task_of({4, 5}, {"ANNE", "ANN"})) == Counts{1, 2});
    CHECK(copies_in(task_of({4, 5}, {"ANNA", "ANN"})) == Counts{1, 3});
    CHECK(copies_in(task_of({4, 6}, {"ANANAS", "ANA"})) == Counts{1, 3});
    CHECK(copies_in(task_of({5, 5}, {"ANNE", "JOANN", "ANN"})) == Counts{1, 1, 3});
}

TEST_CASE("one placement serves a word and the same word turned, or each has its own") {
    CHECK(copies_in(task_of({3, 4}, {"STAR"}, {"RATS"})) == Counts{1, 1});
    CHECK(copies_in(task_of({3, 4}, {"STAR", "RATS"})) == Counts{2, 2});
    is_impossible(task_of({1, 4}, {"STAR", "RATS"}));
}

TEST_CASE("words inside words inside words are each expected by their own count") {
    CHECK(copies_in(task_of({3, 4}, {"ANNE"}, {"AN", "ANN"})) == Counts{1, 1, 1});
    CHECK(copies_in(task_of({4, 5}, {"ANNE", "ANN", "AN"})) == Counts{1, 2, 3});
    CHECK(copies_in(task_of({4, 5}, {"ANNE", "AN"}, {"ANN"})) == Counts{1, 2, 1});
}

TEST_CASE("copies that are expected for themselves must not be one") {
    using enum Direction;
    // JOANNE in one row holds both, and ANN once where twice is expected.
    Task joanne = task_of({1, 6}, {"ANNE", "JOANN"});
    joanne.directions = directions_of({right});
    CHECK(copies_in(joanne) == Counts{1, 1});
    joanne.inner = words_of({"ANN"});
    is_impossible(joanne);
    // A word may not take the copy that another holds for its own.
    is_impossible(task_of({1, 4}, {"ANNE", "ANN"}));
    is_impossible(task_of({1, 5}, {"ANNE", "ANN"}));
    CHECK(copies_in(task_of({1, 6}, {"ANNE", "ANN"})) == Counts{1, 2});  // NNANNE
}

TEST_CASE("a word inside another crosses nothing and is near to nothing") {
    Task task = task_of({3, 5}, {"ANNE"}, {"ANN"});
    task.demands.crossings = {0, 0};
    task.demands.spacing = 2;
    task.demands.leftover = 11;
    CHECK(copies_in(task) == Counts{1, 1});
    task.demands.crossings = {1, 15};
    is_impossible(task);
}

TEST_CASE("which words stand inside which is found letter by letter") {
    const Task task = task_of({5, 5}, {"ANNA", "JOANN"}, {"NNA", "OJ"});
    std::vector<std::string> found;
    for (const InnerCopy& copy : nested_in(task))
        found.push_back(text_of(task.listed()[copy.inner]) + " in " + text_of(task.words[copy.outer]) +
                        " from " + std::to_string(copy.first) + (copy.turned ? " turned" : ""));
    CHECK(found == std::vector<std::string>{"NNA in ANNA from 2 turned", "NNA in ANNA from 1",
                                            "NNA in JOANN from 4 turned", "OJ in JOANN from 1 turned"});
    // From a placement of the outer word follows that of the inner one.
    const InnerCopy turned = nested_in(task).back();
    CHECK(turned.in({{2, 4}, Direction::left}) == Placement{{2, 3}, Direction::right});
    CHECK(turned.in({{4, 0}, Direction::up_right}) == Placement{{3, 1}, Direction::down_left});
}
