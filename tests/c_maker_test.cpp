// Makers, lists of puzzles and aims of the C API, beside C++.

#include <array>
#include <atomic>
#include <thread>

#include "support/c_handles.hpp"

using namespace lode::test::c_api;

namespace {

lode::CheckedRecipe checked_garden() {
    return lode::CheckedRecipe::open(garden_in_cpp()).value();
}

}  // namespace

TEST_CASE("a maker makes by seed what its recipe makes, and outlives the recipe", "[c]") {
    auto recipe = garden_recipe();
    const auto maker = maker_of(recipe.get());
    recipe.reset();
    for (const std::uint64_t seed : {std::uint64_t{0}, std::uint64_t{7}, UINT64_MAX}) {
        Out<lode_puzzle> puzzle;
        Out<lode_refusal> refusal;
        REQUIRE(lode_maker_make(puzzle, refusal, maker.get(), seed, nullptr, nullptr) == LODE_OK);
        CHECK(refusal.get() == nullptr);
        lode::Recipe judge = garden_in_cpp();
        judge.seed = seed;
        CHECK(json_of(puzzle.get()) == lode::to_json(lode::make(judge).value()));
        CHECK(lode_puzzle_seed(puzzle.get()) == seed);
        CHECK(lode_puzzle_is_certified(puzzle.get()) == 1);
    }
}

TEST_CASE("a maker is refused as a puzzle is, and refuses as one", "[c]") {
    Out<lode_maker> none;
    Out<lode_refusal> refusal;
    const auto bad = recipe_of("Leek\nB€t\n", 9, 9);
    REQUIRE(lode_maker_create(none, refusal, bad.get(), nullptr) == LODE_REFUSED);
    CHECK(none.get() == nullptr);
    CHECK(lode_refusal_reason(refusal.get()) == LODE_REASON_UNUSABLE);
    CHECK(lode_refusal_line(refusal.get()) == 2);
    CHECK(lode_refusal_position(refusal.get()) == 2);
    CHECK(lode_refusal_word_count(refusal.get()) == 1);

    const auto recipe = recipe_of("onion\nchard\n", 5, 1);
    const auto maker = maker_of(recipe.get());
    Out<lode_puzzle> puzzle;
    Out<lode_refusal> impossible;
    REQUIRE(lode_maker_make(puzzle, impossible, maker.get(), 1, nullptr, nullptr) == LODE_REFUSED);
    CHECK(lode_refusal_reason(impossible.get()) == LODE_REASON_IMPOSSIBLE);
    CHECK(lode_refusal_word_count(impossible.get()) == 2);
    CHECK(lode_refusal_advice_count(impossible.get()) > 0);
    Out<lode_puzzles> puzzles;
    Out<lode_refusal> no_choice;
    REQUIRE(lode_maker_choices(puzzles, no_choice, maker.get(), 1, 3, nullptr, nullptr) == LODE_REFUSED);
    CHECK(lode_refusal_reason(no_choice.get()) == LODE_REASON_IMPOSSIBLE);
    Out<lode_refusal> no_version;
    REQUIRE(lode_maker_versions(puzzles, no_version, maker.get(), 1, 3, nullptr, nullptr) == LODE_REFUSED);
    CHECK(lode_refusal_reason(no_version.get()) == LODE_REASON_IMPOSSIBLE);
}

TEST_CASE("choices and their ranks are those of C++", "[c]") {
    const auto recipe = garden_recipe();
    const auto maker = maker_of(recipe.get());
    Out<lode_control> control;
    REQUIRE(lode_control_create(control, nullptr) == LODE_OK);
    REQUIRE(lode_control_set_threads(control.get(), 3, nullptr) == LODE_OK);
    Out<lode_puzzles> choices;
    Out<lode_refusal> refusal;
    REQUIRE(lode_maker_choices(choices, refusal, maker.get(), 5, 6, control.get(), nullptr) == LODE_OK);
    CHECK(refusal.get() == nullptr);
    const auto expected = lode::make_choices(checked_garden(), 5, 6).value();
    REQUIRE(lode_puzzles_count(choices.get()) == expected.size());
    CHECK(json_of(choices.get()) == lode::to_json(expected));
    for (std::size_t at = 0; at < expected.size(); ++at) {
        const auto* const one = lode_puzzles_at(choices.get(), at);
        CHECK(json_of(one) == lode::to_json(expected[at]));
        CHECK(lode_puzzle_seed(one) == 5 + at);
        CHECK(lode_puzzles_score(choices.get(), at) == 0);
        CHECK(lode_puzzles_reason(choices.get(), at) == nullptr);
        CHECK(lode_puzzles_fixations(choices.get(), at) == 0);
    }
    CHECK(lode_puzzles_at(choices.get(), expected.size()) == nullptr);
    CHECK(lode_puzzles_at(choices.get(), SIZE_MAX) == nullptr);

    for (const char* aim : {static_cast<const char*>(nullptr), "easier", "150"}) {
        std::optional<lode::Aim> nearest;
        if (aim) nearest = lode::read_aim(aim).value();
        const auto order = lode::rank_puzzles(expected, nearest).value();
        Out<lode_puzzles> ranked;
        REQUIRE(lode_puzzles_rank(ranked, choices.get(), aim, nullptr) == LODE_OK);
        REQUIRE(lode_puzzles_count(ranked.get()) == order.size());
        for (std::size_t at = 0; at < order.size(); ++at) {
            CHECK(lode_puzzle_seed(lode_puzzles_at(ranked.get(), at)) == 5 + order[at].puzzle);
            CHECK(lode_puzzles_score(ranked.get(), at) == order[at].score);
            CHECK(lode_puzzles_reason(ranked.get(), at) == order[at].reason);
        }
    }
}

TEST_CASE("a puzzle of a list can be kept when the list is gone, and a ranked list too", "[c]") {
    const auto maker = maker_of(garden_recipe().get());
    auto* choices = static_cast<lode_puzzles*>(nullptr);
    Out<lode_refusal> refusal;
    REQUIRE(lode_maker_choices(&choices, refusal, maker.get(), 1, 3, nullptr, nullptr) == LODE_OK);
    Out<lode_puzzle> copy;
    REQUIRE(lode_puzzle_copy(copy, lode_puzzles_at(choices, 1), nullptr) == LODE_OK);
    const std::string json = json_of(lode_puzzles_at(choices, 1));
    Out<lode_puzzles> ranked;
    REQUIRE(lode_puzzles_rank(ranked, choices, nullptr, nullptr) == LODE_OK);
    lode_puzzles_free(choices);
    CHECK(json_of(copy.get()) == json);
    CHECK(lode_puzzles_count(ranked.get()) == 3);
    CHECK(contains(json_of(ranked.get()), "letterlode-choices"));
}

TEST_CASE("versions are those of C++, with what is known of them", "[c]") {
    const auto maker = maker_of(garden_recipe().get());
    Out<lode_puzzles> versions;
    Out<lode_refusal> refusal;
    REQUIRE(lode_maker_versions(versions, refusal, maker.get(), 3, 2, nullptr, nullptr) == LODE_OK);
    const auto expected = lode::make_versions(checked_garden(), 3, 2).value();
    CHECK(json_of(versions.get()) == lode::to_json(expected.puzzles));
    CHECK(lode_puzzles_tried(versions.get()) == expected.tried);
    CHECK(lode_puzzles_shared_places(versions.get()) == expected.shared_places);
    for (std::size_t at = 0; at < 2; ++at)
        CHECK(lode_puzzles_fixations(versions.get(), at) == expected.fixations[at]);
    Out<lode_puzzles> ranked;
    REQUIRE(lode_puzzles_rank(ranked, versions.get(), "harder", nullptr) == LODE_OK);
    CHECK(lode_puzzles_fixations(ranked.get(), 0) >= lode_puzzles_fixations(ranked.get(), 1));
    CHECK(lode_puzzles_tried(ranked.get()) == expected.tried);
}

TEST_CASE("a puzzle nearest to an aim is that of C++", "[c]") {
    const auto recipe = recipe_of("Leek\nKale\nBeet\n", 6, 6);
    Out<lode_refusal> refusal;
    std::size_t tried = 0;
    for (const std::int32_t vary : {0, 1}) {
        Out<lode_puzzle> puzzle;
        REQUIRE(lode_make_aimed(puzzle, &tried, refusal, recipe.get(), "harder", vary, nullptr, nullptr) ==
                LODE_OK);
        lode::Recipe judge;
        judge.words = lode::read_word_lines("Leek\nKale\nBeet\n", "garden.txt").value();
        judge.size = lode::Size{6, 6};
        lode::Aim aim = lode::read_aim("harder").value();
        aim.vary_filler = vary != 0;
        const auto expected = lode::make_aimed(judge, aim).value();
        CHECK(json_of(puzzle.get()) == lode::to_json(expected.puzzle));
        CHECK(tried == expected.tried);
        CHECK(tried > 1);
    }
    Out<lode_puzzle> puzzle;
    const auto bad = failure_of([&](Error e) {
        return lode_make_aimed(puzzle, &tried, refusal, recipe.get(), "quite hard", 1, nullptr, e);
    });
    CHECK(bad.status == LODE_UNUSABLE);
    CHECK(tried == 0);
    CHECK(puzzle.get() == nullptr);
    const auto impossible = recipe_of("onion\nchard\n", 5, 1);
    CHECK(lode_make_aimed(puzzle, &tried, refusal, impossible.get(), "easier", 1, nullptr, nullptr) ==
          LODE_REFUSED);
    CHECK(lode_refusal_reason(refusal.get()) == LODE_REASON_IMPOSSIBLE);
}

TEST_CASE("a puzzle's cells can be had at once, and what stands inside what", "[c]") {
    const auto recipe = recipe_of("Anne\nann\nleek\n", 7, 6);
    const auto puzzle = made(recipe.get());
    const char* const* cells = nullptr;
    REQUIRE(lode_puzzle_cells(&cells, puzzle.get(), nullptr) == LODE_OK);
    for (std::int32_t row = 0; row < 6; ++row)
        for (std::int32_t column = 0; column < 7; ++column)
            CHECK(std::string(cells[row * 7 + column]) == lode_puzzle_cell(puzzle.get(), row, column));
    const char* const* again = nullptr;
    REQUIRE(lode_puzzle_cells(&again, puzzle.get(), nullptr) == LODE_OK);
    CHECK(again == cells);
    CHECK(std::string(lode_puzzle_word_inside(puzzle.get(), 0)).empty());
    CHECK(std::string(lode_puzzle_word_inside(puzzle.get(), 1)) == "Anne");
    CHECK(lode_puzzle_word_inside(puzzle.get(), 3) == nullptr);

    const auto masked = recipe_of("fig\n", 1, 1);
    REQUIRE(lode_recipe_set_mask_text(masked.get(), "OOO\n..O\n", nullptr, nullptr) == LODE_OK);
    const auto shaped = made(masked.get());
    REQUIRE(lode_puzzle_cells(&cells, shaped.get(), nullptr) == LODE_OK);
    CHECK(cells[2] != nullptr);
    CHECK(cells[3] == nullptr);
}

TEST_CASE("makers and lists refuse NULL and numbers beyond all bounds", "[c]") {
    const auto recipe = garden_recipe();
    const auto maker = maker_of(recipe.get());
    Out<lode_maker> new_maker;
    Out<lode_puzzle> puzzle;
    Out<lode_puzzles> puzzles;
    Out<lode_refusal> refusal;
    std::size_t tried = 0;
    const auto* const m = maker.get();
    broken("maker", [&](Error e) { return lode_maker_create(nullptr, refusal, recipe.get(), e); });
    broken("refusal", [&](Error e) { return lode_maker_create(new_maker, nullptr, recipe.get(), e); });
    broken("recipe", [&](Error e) { return lode_maker_create(new_maker, refusal, nullptr, e); });
    broken("puzzle", [&](Error e) { return lode_maker_make(nullptr, refusal, m, 1, nullptr, e); });
    broken("refusal", [&](Error e) { return lode_maker_make(puzzle, nullptr, m, 1, nullptr, e); });
    broken("maker", [&](Error e) { return lode_maker_make(puzzle, refusal, nullptr, 1, nullptr, e); });
    broken("puzzles", [&](Error e) { return lode_maker_choices(nullptr, refusal, m, 1, 1, nullptr, e); });
    broken("refusal", [&](Error e) { return lode_maker_choices(puzzles, nullptr, m, 1, 1, nullptr, e); });
    broken("maker", [&](Error e) { return lode_maker_choices(puzzles, refusal, nullptr, 1, 1, nullptr, e); });
    broken("puzzles", [&](Error e) { return lode_maker_versions(nullptr, refusal, m, 1, 1, nullptr, e); });
    broken("refusal", [&](Error e) { return lode_maker_versions(puzzles, nullptr, m, 1, 1, nullptr, e); });
    broken("maker",
           [&](Error e) { return lode_maker_versions(puzzles, refusal, nullptr, 1, 1, nullptr, e); });
    const auto* const r = recipe.get();
    broken("puzzle",
           [&](Error e) { return lode_make_aimed(nullptr, &tried, refusal, r, "easier", 1, nullptr, e); });
    broken("tried",
           [&](Error e) { return lode_make_aimed(puzzle, nullptr, refusal, r, "easier", 1, nullptr, e); });
    broken("refusal",
           [&](Error e) { return lode_make_aimed(puzzle, &tried, nullptr, r, "easier", 1, nullptr, e); });
    broken("recipe", [&](Error e) {
        return lode_make_aimed(puzzle, &tried, refusal, nullptr, "easier", 1, nullptr, e);
    });
    broken("aim",
           [&](Error e) { return lode_make_aimed(puzzle, &tried, refusal, r, nullptr, 1, nullptr, e); });
    Out<lode_puzzles> some;
    REQUIRE(lode_maker_choices(some, refusal, m, 1, 1, nullptr, nullptr) == LODE_OK);
    broken("ranked", [&](Error e) { return lode_puzzles_rank(nullptr, some.get(), nullptr, e); });
    broken("puzzles", [&](Error e) { return lode_puzzles_rank(puzzles, nullptr, nullptr, e); });
    const char* json = nullptr;
    broken("json", [&](Error e) { return lode_puzzles_json(nullptr, some.get(), e); });
    broken("puzzles", [&](Error e) { return lode_puzzles_json(&json, nullptr, e); });
    const char* const* cells = nullptr;
    const auto* const one = lode_puzzles_at(some.get(), 0);
    broken("cells", [&](Error e) { return lode_puzzle_cells(nullptr, one, e); });
    broken("puzzle", [&](Error e) { return lode_puzzle_cells(&cells, nullptr, e); });
    broken("copy", [&](Error e) { return lode_puzzle_copy(nullptr, one, e); });
    broken("puzzle", [&](Error e) { return lode_puzzle_copy(puzzle, nullptr, e); });
    broken("control", [&](Error e) { return lode_control_set_threads(nullptr, 1, e); });

    const auto unusable = [](auto call) {
        const Failure failure = failure_of(call);
        CHECK(failure.status == LODE_UNUSABLE);
        CHECK_FALSE(failure.advice.empty());
    };
    for (const std::size_t count : {std::size_t{0}, std::size_t{1001}, SIZE_MAX, SIZE_MAX / 4 + 1}) {
        unusable([&](Error e) { return lode_maker_choices(puzzles, refusal, m, 1, count, nullptr, e); });
        unusable([&](Error e) { return lode_maker_versions(puzzles, refusal, m, 1, count, nullptr, e); });
    }
    unusable([&](Error e) { return lode_puzzles_rank(puzzles, some.get(), "-1", e); });
    unusable([&](Error e) { return lode_puzzles_rank(puzzles, some.get(), "\xFF", e); });
    Out<lode_control> control;
    REQUIRE(lode_control_create(control, nullptr) == LODE_OK);
    for (const std::int32_t threads : {0, -1, 1025, INT32_MIN, INT32_MAX})
        unusable([&](Error e) { return lode_control_set_threads(control.get(), threads, e); });

    CHECK(lode_puzzles_count(nullptr) == 0);
    CHECK(lode_puzzles_at(nullptr, 0) == nullptr);
    CHECK(lode_puzzles_fixations(nullptr, 0) == 0);
    CHECK(lode_puzzles_tried(nullptr) == 0);
    CHECK(lode_puzzles_shared_places(nullptr) == 0);
    CHECK(lode_puzzles_score(nullptr, 0) == 0);
    CHECK(lode_puzzles_reason(nullptr, 0) == nullptr);
    CHECK(lode_puzzle_word_inside(nullptr, 0) == nullptr);
    CHECK(lode_puzzle_seed(nullptr) == 0);
    CHECK(lode_puzzle_is_certified(nullptr) == 0);
    lode_maker_free(nullptr);
    lode_puzzles_free(nullptr);
}

TEST_CASE("seeds may run over the end of their numbers", "[c]") {
    const auto maker = maker_of(recipe_of("Leek\nKale\n", 5, 5).get());
    Out<lode_puzzles> puzzles;
    Out<lode_refusal> refusal;
    REQUIRE(lode_maker_choices(puzzles, refusal, maker.get(), UINT64_MAX, 3, nullptr, nullptr) == LODE_OK);
    CHECK(lode_puzzle_seed(lode_puzzles_at(puzzles.get(), 0)) == UINT64_MAX);
    CHECK(lode_puzzle_seed(lode_puzzles_at(puzzles.get(), 1)) == 0);
}

TEST_CASE("a cancelled maker is unfinished, and fit for work when the control is", "[c]") {
    const auto maker = maker_of(garden_recipe().get());
    Out<lode_control> control;
    REQUIRE(lode_control_create(control, nullptr) == LODE_OK);
    lode_control_cancel(control.get());
    Out<lode_puzzles> puzzles;
    Out<lode_refusal> refusal;
    REQUIRE(lode_maker_choices(puzzles, refusal, maker.get(), 1, 9, control.get(), nullptr) == LODE_REFUSED);
    CHECK(lode_refusal_reason(refusal.get()) == LODE_REASON_UNFINISHED);
    lode_control_reset(control.get());
    Out<lode_refusal> none;
    REQUIRE(lode_maker_choices(puzzles, none, maker.get(), 1, 2, control.get(), nullptr) == LODE_OK);
}

TEST_CASE("64 threads share a maker, a list of its puzzles and their texts", "[c]") {
    const auto maker = maker_of(garden_recipe().get());
    Out<lode_puzzles> puzzles;
    Out<lode_refusal> refusal;
    REQUIRE(lode_maker_choices(puzzles, refusal, maker.get(), 1, 4, nullptr, nullptr) == LODE_OK);
    std::array<std::string, 4> alone;
    for (std::uint64_t seed = 0; seed < 4; ++seed)
        alone[seed] = lode::to_json(checked_garden().make(seed + 1).value());
    std::atomic<int> wrong = 0;
    const auto work = [&](std::size_t thread) {
        const std::uint64_t seed = thread % 4;
        lode_puzzle* puzzle = nullptr;
        lode_refusal* none = nullptr;
        const char* json = nullptr;
        const char* const* cells = nullptr;
        const lode_puzzle* const shared = lode_puzzles_at(puzzles.get(), (thread + 1) % 4);
        const bool right =
            lode_maker_make(&puzzle, &none, maker.get(), seed + 1, nullptr, nullptr) == LODE_OK &&
            lode_puzzle_json(&json, puzzle, nullptr) == LODE_OK && alone[seed] == json &&
            lode_puzzle_json(&json, shared, nullptr) == LODE_OK && alone[(thread + 1) % 4] == json &&
            lode_puzzle_cells(&cells, shared, nullptr) == LODE_OK &&
            std::string(cells[0]) == lode_puzzle_cell(shared, 0, 0) &&
            lode_puzzles_json(&json, puzzles.get(), nullptr) == LODE_OK;
        lode_puzzle_free(puzzle);
        lode_refusal_free(none);
        if (!right) ++wrong;
    };
    {
        std::vector<std::jthread> threads;
        for (std::size_t thread = 0; thread < 64; ++thread) threads.emplace_back(work, thread);
    }
    CHECK(wrong == 0);
}
