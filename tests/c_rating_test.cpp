// What the C API tells of a rating, beside the rating that C++ gives.

#include <cmath>

#include "support/c_handles.hpp"

using namespace lode::test::c_api;

namespace {

Held<lode_seen> wall() {
    lode_seen* seen = nullptr;
    REQUIRE(lode_seen_create(&seen, nullptr) == LODE_OK);
    return Held<lode_seen>(seen);
}

std::string json_of_rating(const lode_rating* rating) {
    const char* json = nullptr;
    REQUIRE(lode_rating_json(&json, rating, nullptr) == LODE_OK);
    return json;
}

void check_parts(const lode_rating* rating, std::int32_t about,
                 const std::vector<lode::RatingPart>& expected) {
    REQUIRE(lode_rating_part_count(rating, about) == expected.size());
    for (std::size_t at = 0; at < expected.size(); ++at) {
        const auto& part = expected[at];
        INFO(part.part);
        CHECK(lode_rating_part(rating, about, at) == part.part);
        CHECK(lode_rating_part_value(rating, about, at) == part.value);
        CHECK(lode_rating_part_unit(rating, about, at) == part.unit);
        CHECK(lode_rating_part_threshold(rating, about, at) == part.threshold.value_or(0));
        const char* const bound = lode_rating_part_bound(rating, about, at);
        if (part.threshold)
            CHECK(std::string(bound) == (part.is_most ? "most" : "least"));
        else
            CHECK(bound == nullptr);
        CHECK(lode_rating_part_is_met(rating, about, at) == (part.is_met() ? 1 : 0));
        CHECK(lode_rating_part_source(rating, about, at) == part.source);
        CHECK(lode_rating_part_note(rating, about, at) == part.note);
    }
    CHECK(lode_rating_part(rating, about, expected.size()) == nullptr);
}

void check_rating(const lode_rating* rating, const lode::Rating& expected) {
    CHECK(json_of_rating(rating) == lode::to_json(expected));
    check_parts(rating, LODE_READABILITY, expected.readability);
    check_parts(rating, LODE_DIFFICULTY, expected.difficulty.parts);
    const auto& words = expected.difficulty.words;
    REQUIRE(lode_rating_word_count(rating) == words.size());
    for (std::size_t at = 0; at < words.size(); ++at) {
        CHECK(lode_rating_word(rating, at) == words[at].shown);
        CHECK(lode_rating_word_fixations(rating, at) == words[at].fixations);
        CHECK(lode_rating_word_is_found(rating, at) == (words[at].is_found ? 1 : 0));
    }
}

}  // namespace

TEST_CASE("every part and word of a rating can be read without JSON", "[c]") {
    const auto recipe = garden_recipe();
    const auto puzzle = made(recipe.get());
    Out<lode_rating> rating;
    REQUIRE(lode_rate_puzzle(rating, puzzle.get(), nullptr) == LODE_OK);
    const auto expected = lode::rate(lode::make(garden_in_cpp()).value()).value();
    CHECK(expected.difficulty.parts.size() > 5);
    CHECK_FALSE(expected.readability.empty());
    check_rating(rating.get(), expected);
}

TEST_CASE("letters as they are seen are rated as C++ rates them", "[c]") {
    const auto recipe = garden_recipe();
    const auto puzzle = made(recipe.get());
    const auto seen = wall();
    auto* const s = seen.get();
    lode::RatingRules rules;
    const auto check = [&](std::int32_t status) {
        REQUIRE(status == LODE_OK);
        Out<lode_rating> rating;
        REQUIRE(lode_rate_puzzle_as_seen(rating, puzzle.get(), s, nullptr) == LODE_OK);
        check_rating(rating.get(), lode::rate(lode::make(garden_in_cpp()).value(), rules).value());
    };
    check(LODE_OK);
    rules.seen.cap_height = 12.5;
    check(lode_seen_set_cap_height(s, 12.5, nullptr));
    rules.seen.viewing = 4'000;
    check(lode_seen_set_viewing(s, 4'000, nullptr));
    rules.seen.baseline = 1'250;
    check(lode_seen_set_baseline(s, 1'250, nullptr));
    rules.seen.stroke = 2;
    check(lode_seen_set_stroke(s, 2, nullptr));
    rules.seen.o_width = 11;
    check(lode_seen_set_o_width(s, 11, nullptr));
    rules.seen.letter_gap = 3;
    check(lode_seen_set_letter_gap(s, 3, nullptr));
    rules.seen.line_pitch = 18;
    check(lode_seen_set_line_pitch(s, 18, nullptr));
    rules.seen.letters = lode::read_colour("#202020").value();
    rules.seen.bands = lode::read_colour("tan").value();
    rules.seen.blank = lode::read_colour("white").value();
    check(lode_seen_set_colours(s, "#202020", "tan", "white", nullptr));
    Out<lode_rating> rating;
    REQUIRE(lode_rate_puzzle_as_seen(rating, puzzle.get(), s, nullptr) == LODE_OK);
    CHECK(std::string(lode_rating_part(rating.get(), LODE_READABILITY, 0)) == "letter height as seen");
    CHECK(std::string(lode_rating_part_bound(rating.get(), LODE_READABILITY, 0)) == "least");
    rules.seen.bands.reset();
    check(lode_seen_set_colours(s, "#202020", nullptr, "white", nullptr));
}

TEST_CASE("a judge rates a grid as it is rated alone, and a word that is missing says so", "[c]") {
    const auto recipe = recipe_of("Leek\nKale\n", 5, 5);
    constexpr const char* drawn = "LEEKX\nXXXXX\n";
    Out<lode_judge> judge;
    Out<lode_grid> grid;
    REQUIRE(lode_judge_create(judge, recipe.get(), nullptr) == LODE_OK);
    REQUIRE(lode_grid_from_text(grid, drawn, "", recipe.get(), nullptr) == LODE_OK);
    Out<lode_rating> rating;
    Out<lode_rating> alone;
    REQUIRE(lode_judge_rate(rating, judge.get(), grid.get(), nullptr, nullptr) == LODE_OK);
    REQUIRE(lode_rate_grid_text(alone, drawn, "", recipe.get(), nullptr) == LODE_OK);
    CHECK(json_of_rating(rating.get()) == json_of_rating(alone.get()));
    CHECK(lode_rating_word_is_found(rating.get(), 0) == 1);
    CHECK(lode_rating_word_is_found(rating.get(), 1) == 0);
    const auto seen = wall();
    REQUIRE(lode_seen_set_cap_height(seen.get(), 10, nullptr) == LODE_OK);
    REQUIRE(lode_seen_set_viewing(seen.get(), 1'000, nullptr) == LODE_OK);
    Out<lode_rating> hung;
    REQUIRE(lode_judge_rate(hung, judge.get(), grid.get(), seen.get(), nullptr) == LODE_OK);
    CHECK(lode_rating_part_count(hung.get(), LODE_READABILITY) >
          lode_rating_part_count(rating.get(), LODE_READABILITY));
}

TEST_CASE("ratings and what is seen refuse NULL, and what is no length or colour", "[c]") {
    const auto seen = wall();
    const auto recipe = garden_recipe();
    const auto puzzle = made(recipe.get());
    auto* const s = seen.get();
    Out<lode_rating> rating;
    Out<lode_judge> judge;
    Out<lode_grid> grid;
    REQUIRE(lode_judge_create(judge, recipe.get(), nullptr) == LODE_OK);
    REQUIRE(lode_grid_from_puzzle(grid, puzzle.get(), nullptr) == LODE_OK);
    broken("seen", [](Error e) { return lode_seen_create(nullptr, e); });
    broken("seen", [](Error e) { return lode_seen_set_colours(nullptr, "tan", "tan", "tan", e); });
    broken("rating", [&](Error e) { return lode_rate_puzzle_as_seen(nullptr, puzzle.get(), s, e); });
    broken("puzzle", [&](Error e) { return lode_rate_puzzle_as_seen(rating, nullptr, s, e); });
    broken("seen", [&](Error e) { return lode_rate_puzzle_as_seen(rating, puzzle.get(), nullptr, e); });
    broken("rating", [&](Error e) { return lode_judge_rate(nullptr, judge.get(), grid.get(), s, e); });
    broken("judge", [&](Error e) { return lode_judge_rate(rating, nullptr, grid.get(), s, e); });
    broken("grid", [&](Error e) { return lode_judge_rate(rating, judge.get(), nullptr, s, e); });
    for (auto* const set :
         {lode_seen_set_cap_height, lode_seen_set_viewing, lode_seen_set_baseline, lode_seen_set_stroke,
          lode_seen_set_o_width, lode_seen_set_letter_gap, lode_seen_set_line_pitch}) {
        broken("seen", [&](Error e) { return set(nullptr, 1, e); });
        for (const double length : {-1.0, 1e7, std::nan(""), HUGE_VAL, -HUGE_VAL})
            CHECK(failure_of([&](Error e) { return set(s, length, e); }).status == LODE_UNUSABLE);
        CHECK(set(s, 0, nullptr) == LODE_OK);
    }
    for (const char* colour : {"", "mauvish", "#12345", "\xFF"}) {
        CHECK(lode_seen_set_colours(s, colour, nullptr, nullptr, nullptr) == LODE_UNUSABLE);
        CHECK(lode_seen_set_colours(s, nullptr, colour, nullptr, nullptr) == LODE_UNUSABLE);
        CHECK(lode_seen_set_colours(s, nullptr, nullptr, colour, nullptr) == LODE_UNUSABLE);
    }
    REQUIRE(lode_rate_puzzle(rating, puzzle.get(), nullptr) == LODE_OK);
    const auto* const r = rating.get();
    for (const std::int32_t about : {-1, 2, INT32_MIN, INT32_MAX}) {
        CHECK(lode_rating_part_count(r, about) == 0);
        CHECK(lode_rating_part(r, about, 0) == nullptr);
    }
    for (const auto* const nothing : {static_cast<const lode_rating*>(nullptr), r}) {
        const std::size_t far = SIZE_MAX;
        CHECK(lode_rating_word(nothing, far) == nullptr);
        CHECK(lode_rating_word_fixations(nothing, far) == 0);
        CHECK(lode_rating_word_is_found(nothing, far) == 0);
        CHECK(lode_rating_part(nothing, LODE_DIFFICULTY, far) == nullptr);
        CHECK(lode_rating_part_value(nothing, LODE_DIFFICULTY, far) == 0);
        CHECK(lode_rating_part_unit(nothing, LODE_DIFFICULTY, far) == nullptr);
        CHECK(lode_rating_part_bound(nothing, LODE_DIFFICULTY, far) == nullptr);
        CHECK(lode_rating_part_threshold(nothing, LODE_DIFFICULTY, far) == 0);
        CHECK(lode_rating_part_is_met(nothing, LODE_DIFFICULTY, far) == 0);
        CHECK(lode_rating_part_source(nothing, LODE_DIFFICULTY, far) == nullptr);
        CHECK(lode_rating_part_note(nothing, LODE_DIFFICULTY, far) == nullptr);
    }
    CHECK(lode_rating_word_count(nullptr) == 0);
    CHECK(lode_rating_part_count(nullptr, LODE_READABILITY) == 0);
    lode_seen_free(nullptr);
}
