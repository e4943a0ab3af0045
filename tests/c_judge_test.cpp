// Grids and judges of the C API, beside C++.

#include <array>
#include <atomic>
#include <cstring>
#include <thread>

#include "support/c_handles.hpp"

using namespace lode::test::c_api;

namespace {

Held<lode_grid> grid_of(const char* drawn, const lode_recipe* recipe) {
    lode_grid* grid = nullptr;
    REQUIRE(lode_grid_from_text(&grid, drawn, "grid.txt", recipe, nullptr) == LODE_OK);
    return Held<lode_grid>(grid);
}

Held<lode_judge> judge_of(const lode_recipe* recipe) {
    lode_judge* judge = nullptr;
    REQUIRE(lode_judge_create(&judge, recipe, nullptr) == LODE_OK);
    return Held<lode_judge>(judge);
}

Held<lode_audit> audited(const lode_judge* judge, const lode_grid* grid) {
    lode_audit* audit = nullptr;
    REQUIRE(lode_judge_audit(&audit, judge, grid, nullptr, nullptr) == LODE_OK);
    return Held<lode_audit>(audit);
}

std::string json_of_audit(const lode_audit* audit) {
    const char* json = nullptr;
    REQUIRE(lode_audit_json(&json, audit, nullptr) == LODE_OK);
    return json;
}

constexpr const char* beds = "LEEKX\nKALEX\nXXXXB\nEELXX\n";

}  // namespace

TEST_CASE("a judge audits many grids as each is audited alone, and outlives its recipe", "[c]") {
    auto recipe = recipe_of("Leek\nKale\n", 5, 5);
    const auto judge = judge_of(recipe.get());
    const std::array drawings{beds, "LEEK\nKALE\n", "ÄÖÜÑ\nLEEK\nELAK\n", "L.K\nE#E\nE.E\nK.L\n", "K\n"};
    std::vector<std::string> alone;
    std::vector<Held<lode_grid>> grids;
    for (const char* drawn : drawings) {
        Out<lode_audit> audit;
        REQUIRE(lode_audit_grid_text(audit, drawn, "grid.txt", recipe.get(), nullptr) == LODE_OK);
        alone.push_back(json_of_audit(audit.get()));
        grids.push_back(grid_of(drawn, recipe.get()));
    }
    recipe.reset();
    for (int round = 0; round < 2; ++round)
        for (std::size_t at = 0; at < grids.size(); ++at)
            CHECK(json_of_audit(audited(judge.get(), grids[at].get()).get()) == alone[at]);
}

TEST_CASE("a grid of cells is the grid that is drawn", "[c]") {
    const auto recipe = recipe_of("Leek\nKale\n", 5, 5);
    const auto drawn = grid_of("LÉEK\nK.LE\n", recipe.get());
    constexpr std::array<const char*, 8> cells{"L", "e\u0301", "e", "K", "k", nullptr, "L", "E"};
    Out<lode_grid> grid;
    REQUIRE(lode_grid_from_cells(grid, cells.data(), 2, 4, recipe.get(), nullptr) == LODE_OK);
    CHECK(lode_grid_rows(grid.get()) == 2);
    CHECK(lode_grid_columns(grid.get()) == 4);
    const char *text = nullptr, *other = nullptr;
    REQUIRE(lode_grid_text(&text, grid.get(), nullptr) == LODE_OK);
    REQUIRE(lode_grid_text(&other, drawn.get(), nullptr) == LODE_OK);
    CHECK(std::string(text) == "L É E K\nK . L E\n");
    CHECK(std::string(text) == other);
    CHECK(std::string(lode_grid_cell(grid.get(), 0, 1)) == "É");
    CHECK(lode_grid_cell(grid.get(), 1, 1) == nullptr);
    for (const std::int32_t far : {-1, 4, INT32_MIN, INT32_MAX}) {
        CHECK(lode_grid_cell(grid.get(), far, 0) == nullptr);
        CHECK(lode_grid_cell(grid.get(), 0, far) == nullptr);
    }
    // What is handed out can be handed in.
    const char* const* given = nullptr;
    REQUIRE(lode_grid_cells(&given, grid.get(), nullptr) == LODE_OK);
    Out<lode_grid> again;
    REQUIRE(lode_grid_from_cells(again, given, 2, 4, recipe.get(), nullptr) == LODE_OK);
    REQUIRE(lode_grid_text(&other, again.get(), nullptr) == LODE_OK);
    CHECK(std::string(text) == other);

    const auto judge = judge_of(recipe.get());
    CHECK(json_of_audit(audited(judge.get(), grid.get()).get()) ==
          json_of_audit(audited(judge.get(), drawn.get()).get()));
}

TEST_CASE("a cell that is no letter is told by its row and column", "[c]") {
    const auto recipe = recipe_of("Leek\n", 5, 5);
    Out<lode_grid> grid;
    const auto fault = [&](const char* cell) {
        const std::array<const char*, 6> cells{"A", "B", "C", "D", cell, "F"};
        return failure_of(
            [&](Error e) { return lode_grid_from_cells(grid, cells.data(), 2, 3, recipe.get(), e); });
    };
    for (const char* cell : {"€", "AB", " ", "A B", "\x01", "\xC3(", "\xFF", "\xED\xA0\x80"}) {
        INFO(cell);
        const Failure failure = fault(cell);
        CHECK(failure.status == LODE_UNUSABLE);
        CHECK(failure.line == 2);
        CHECK(failure.position == 2);
        CHECK(contains(failure.message, "row 2, column 2 holds "));
        CHECK_FALSE(failure.advice.empty());
        CHECK(grid.get() == nullptr);
    }
    // A cell may hold anything without end, too.
    CHECK(fault(std::string(1'000'000, 'A').c_str()).message.size() < 1'000);
    const char* one = "A";
    for (const std::int32_t side : {0, -1, INT32_MIN, 20'001, INT32_MAX}) {
        CHECK(failure_of([&](Error e) {
                  return lode_grid_from_cells(grid, &one, side, 1, recipe.get(), e);
              }).status == LODE_UNUSABLE);
        CHECK(failure_of([&](Error e) {
                  return lode_grid_from_cells(grid, &one, 1, side, recipe.get(), e);
              }).status == LODE_UNUSABLE);
    }
}

TEST_CASE("letters of several characters are cells of their own", "[c]") {
    const auto recipe = recipe_of("Llan\n", 5, 5);
    REQUIRE(lode_recipe_set_locale(recipe.get(), "cy", nullptr) == LODE_OK);
    constexpr std::array<const char*, 3> cells{"LL", "A", "n"};
    Out<lode_grid> grid;
    REQUIRE(lode_grid_from_cells(grid, cells.data(), 1, 3, recipe.get(), nullptr) == LODE_OK);
    const auto audit = audited(judge_of(recipe.get()).get(), grid.get());
    CHECK(lode_audit_copy_count(audit.get(), 0) == 1);
    CHECK(lode_audit_is_certified(audit.get()) == 1);
}

TEST_CASE("a page brings its grid and the recipe's words", "[c]") {
    Out<lode_recipe> recipe;
    REQUIRE(lode_recipe_create(recipe, nullptr) == LODE_OK);
    Out<lode_grid> grid;
    REQUIRE(lode_grid_from_page(grid, recipe.get(), "LEEKX\nKALEX\n\nLeek, Kale\n", "page.txt", nullptr) ==
            LODE_OK);
    CHECK(lode_recipe_word_count(recipe.get()) == 2);
    CHECK(std::string(lode_recipe_word(recipe.get(), 1)) == "Kale");
    CHECK(lode_audit_is_certified(audited(judge_of(recipe.get()).get(), grid.get()).get()) == 1);
    const std::string before = json_of(recipe.get());
    Out<lode_grid> none;
    const auto failure =
        failure_of([&](Error e) { return lode_grid_from_page(none, recipe.get(), "LEEK\n", "page.txt", e); });
    CHECK(failure.status == LODE_UNUSABLE);
    CHECK(failure.source == "page.txt");
    CHECK(none.get() == nullptr);
    CHECK(json_of(recipe.get()) == before);
}

TEST_CASE("words of a dictionary that stand by chance are told, and are no finding", "[c]") {
    const auto recipe = recipe_of("Leek\nKale\n", 5, 5);
    const auto judge = judge_of(recipe.get());
    const auto grid = grid_of(beds, recipe.get());
    CHECK(lode_audit_chance_count(audited(judge.get(), grid.get()).get()) == 0);
    REQUIRE(lode_judge_add_dictionary_text(judge.get(), "eel/S\nbeets\n", "en.dic", nullptr) == LODE_OK);
    CHECK(lode_audit_chance_count(audited(judge.get(), grid.get()).get()) == 0);
    REQUIRE(lode_judge_set_chance_letters(judge.get(), 3, nullptr) == LODE_OK);
    REQUIRE(lode_judge_add_dictionary_text(judge.get(), "xxxx\n", nullptr, nullptr) == LODE_OK);
    const auto audit = audited(judge.get(), grid.get());
    CHECK(lode_audit_is_certified(audit.get()) == 1);
    lode::Recipe in_cpp;
    in_cpp.words = lode::read_word_lines("Leek\nKale\n", "").value();
    const auto segmenter = lode::Segmenter::open({}).value();
    const auto expected = lode::audit(lode::read_grid(beds, "", segmenter).value(), in_cpp, {},
                                      {{"eel", "beets", "xxxx"}, 3, {}})
                              .value();
    REQUIRE(lode_audit_chance_count(audit.get()) == expected.chance.size());
    REQUIRE_FALSE(expected.chance.empty());
    for (std::size_t at = 0; at < expected.chance.size(); ++at) {
        std::int32_t row = -1, column = -1, direction = -1, length = -1;
        CHECK(lode_audit_chance(audit.get(), at) == expected.chance[at].word);
        REQUIRE(lode_audit_chance_copy(&row, &column, &direction, &length, audit.get(), at, nullptr) ==
                LODE_OK);
        const auto& copy = expected.chance[at].copy;
        CHECK(row == copy.first.row);
        CHECK(column == copy.first.column);
        CHECK(direction == static_cast<std::int32_t>(copy.direction));
        CHECK(length == copy.length);
    }
    CHECK(lode_audit_chance(audit.get(), expected.chance.size()) == nullptr);

    // What cannot be used changes nothing.
    for (const std::int32_t letters : {0, -1, 101, INT32_MAX})
        CHECK(lode_judge_set_chance_letters(judge.get(), letters, nullptr) == LODE_UNUSABLE);
    CHECK(lode_judge_add_dictionary_text(judge.get(), "\n\n", "empty.dic", nullptr) == LODE_UNUSABLE);
    CHECK(json_of_audit(audited(judge.get(), grid.get()).get()) == json_of_audit(audit.get()));
}

TEST_CASE("a judge goes by a puzzle's placements, and makes a puzzle of a grid", "[c]") {
    const auto recipe = garden_recipe();
    const auto puzzle = made(recipe.get());
    const auto judge = judge_of(recipe.get());
    Out<lode_audit> audit;
    REQUIRE(lode_judge_audit_puzzle(audit, judge.get(), puzzle.get(), nullptr, nullptr) == LODE_OK);
    CHECK(lode_audit_is_certified(audit.get()) == 1);
    CHECK(json_of_audit(audit.get()) == lode::to_json(lode::make(garden_in_cpp()).value().audit));

    Out<lode_grid> grid;
    REQUIRE(lode_grid_from_puzzle(grid, puzzle.get(), nullptr) == LODE_OK);
    Out<lode_puzzle> again;
    REQUIRE(lode_judge_puzzle(again, judge.get(), grid.get(), nullptr, nullptr) == LODE_OK);
    CHECK(lode_puzzle_is_certified(again.get()) == 1);
    CHECK(lode_puzzle_word_count(again.get()) == 5);
    const char *text = nullptr, *other = nullptr;
    REQUIRE(lode_puzzle_key_text(&text, puzzle.get(), nullptr) == LODE_OK);
    REQUIRE(lode_puzzle_key_text(&other, again.get(), nullptr) == LODE_OK);
    CHECK(std::string(text) == other);

    // A word that is missing is left out.
    const auto spoilt = grid_of("BROADBEANS\n", recipe.get());
    Out<lode_puzzle> poor;
    REQUIRE(lode_judge_puzzle(poor, judge.get(), spoilt.get(), nullptr, nullptr) == LODE_OK);
    CHECK(lode_puzzle_is_certified(poor.get()) == 0);
    CHECK(lode_puzzle_word_count(poor.get()) == 1);
}

TEST_CASE("a copy says which word it stands inside", "[c]") {
    const auto recipe = recipe_of("Ann\nAnne\nLeek\n", 5, 5);
    const auto audit = audited(judge_of(recipe.get()).get(), grid_of("ANNE\nLEEK\n", recipe.get()).get());
    CHECK(lode_audit_is_certified(audit.get()) == 1);
    CHECK(std::string(lode_audit_copy_inside(audit.get(), 0, 0)) == "Anne");
    CHECK(std::string(lode_audit_copy_inside(audit.get(), 1, 0)).empty());
    CHECK(std::string(lode_audit_copy_inside(audit.get(), 2, 0)).empty());
    CHECK(lode_audit_copy_inside(audit.get(), 2, 1) == nullptr);
    CHECK(lode_audit_copy_inside(audit.get(), 3, 0) == nullptr);
}

TEST_CASE("a judge is refused for words that no grid can hold, with the words", "[c]") {
    Out<lode_judge> judge;
    const auto nested = recipe_of("Ann\nAnna\n", 5, 5);
    const auto failure = failure_of([&](Error e) { return lode_judge_create(judge, nested.get(), e); });
    CHECK(failure.status == LODE_UNUSABLE);
    CHECK(failure.words.size() == 2);
    CHECK(judge.get() == nullptr);
    const auto bad = recipe_of("Leek\nB€t\n", 5, 5);
    const auto spelling = failure_of([&](Error e) { return lode_judge_create(judge, bad.get(), e); });
    CHECK(spelling.line == 2);
    CHECK(spelling.position == 2);
}

TEST_CASE("a search can be watched, and cancelled is a status of its own", "[c]") {
    const auto recipe = recipe_of("Leek\nKale\n", 5, 5);
    const auto judge = judge_of(recipe.get());
    std::string rows;
    for (int row = 0; row < 3'000; ++row) rows += "LEKABCDFGH\n";
    const auto grid = grid_of(rows.c_str(), recipe.get());
    Out<lode_control> control;
    REQUIRE(lode_control_create(control, nullptr) == LODE_OK);
    struct Seen {
        std::uint64_t done = 0;
        std::uint64_t all = 0;
        bool in_order = true;
    } seen;
    const lode_progress look = [](void* user, std::uint64_t done, std::uint64_t all) {
        auto& here = *static_cast<Seen*>(user);
        here.in_order = here.in_order && done >= here.done && done <= all;
        here.done = done;
        here.all = all;
    };
    REQUIRE(lode_control_set_progress(control.get(), look, &seen, nullptr) == LODE_OK);
    REQUIRE(lode_control_set_threads(control.get(), 2, nullptr) == LODE_OK);
    Out<lode_audit> audit;
    REQUIRE(lode_judge_audit(audit, judge.get(), grid.get(), control.get(), nullptr) == LODE_OK);
    CHECK(seen.in_order);
    CHECK(seen.all > 0);
    CHECK(seen.all % 3'000 == 0);
    CHECK(seen.done == seen.all);

    lode_control_cancel(control.get());
    Out<lode_audit> none;
    Out<lode_puzzle> puzzle;
    const auto failure = failure_of(
        [&](Error e) { return lode_judge_audit(none, judge.get(), grid.get(), control.get(), e); });
    CHECK(failure.status == LODE_CANCELLED);
    CHECK(failure.code == LODE_CANCELLED);
    CHECK(contains(failure.message, "interrupted"));
    CHECK(none.get() == nullptr);
    CHECK(lode_judge_puzzle(puzzle, judge.get(), grid.get(), control.get(), nullptr) == LODE_CANCELLED);
    CHECK(puzzle.get() == nullptr);

    lode_control_reset(control.get());
    const lode_progress thrower = [](void*, std::uint64_t, std::uint64_t) { throw 42; };
    REQUIRE(lode_control_set_progress(control.get(), thrower, nullptr, nullptr) == LODE_OK);
    CHECK(lode_judge_audit(none, judge.get(), grid.get(), control.get(), nullptr) == LODE_BROKEN_CALL);
}

TEST_CASE("grids and judges refuse NULL", "[c]") {
    const auto recipe = garden_recipe();
    const auto puzzle = made(recipe.get());
    const auto judge = judge_of(recipe.get());
    const auto grid = grid_of(beds, recipe.get());
    const auto audit = audited(judge.get(), grid.get());
    const auto* const r = recipe.get();
    const auto* const g = grid.get();
    auto* const j = judge.get();
    const char* const cells[] = {"A"};
    Out<lode_grid> new_grid;
    Out<lode_judge> new_judge;
    Out<lode_audit> new_audit;
    Out<lode_puzzle> new_puzzle;
    broken("grid", [&](Error e) { return lode_grid_from_text(nullptr, "A", "", r, e); });
    broken("text", [&](Error e) { return lode_grid_from_text(new_grid, nullptr, "", r, e); });
    broken("recipe", [&](Error e) { return lode_grid_from_text(new_grid, "A", "", nullptr, e); });
    broken("grid", [&](Error e) { return lode_grid_from_page(nullptr, recipe.get(), "A", "", e); });
    broken("recipe", [&](Error e) { return lode_grid_from_page(new_grid, nullptr, "A", "", e); });
    broken("text", [&](Error e) { return lode_grid_from_page(new_grid, recipe.get(), nullptr, "", e); });
    broken("grid", [&](Error e) { return lode_grid_from_cells(nullptr, cells, 1, 1, r, e); });
    broken("cells", [&](Error e) { return lode_grid_from_cells(new_grid, nullptr, 1, 1, r, e); });
    broken("recipe", [&](Error e) { return lode_grid_from_cells(new_grid, cells, 1, 1, nullptr, e); });
    broken("grid", [&](Error e) { return lode_grid_from_puzzle(nullptr, puzzle.get(), e); });
    broken("puzzle", [&](Error e) { return lode_grid_from_puzzle(new_grid, nullptr, e); });
    const char* text = nullptr;
    const char* const* all = nullptr;
    broken("text", [&](Error e) { return lode_grid_text(nullptr, g, e); });
    broken("grid", [&](Error e) { return lode_grid_text(&text, nullptr, e); });
    broken("cells", [&](Error e) { return lode_grid_cells(nullptr, g, e); });
    broken("grid", [&](Error e) { return lode_grid_cells(&all, nullptr, e); });
    broken("judge", [&](Error e) { return lode_judge_create(nullptr, r, e); });
    broken("recipe", [&](Error e) { return lode_judge_create(new_judge, nullptr, e); });
    broken("judge", [&](Error e) { return lode_judge_add_dictionary_text(nullptr, "a", "", e); });
    broken("text", [&](Error e) { return lode_judge_add_dictionary_text(j, nullptr, "", e); });
    broken("judge", [&](Error e) { return lode_judge_set_chance_letters(nullptr, 3, e); });
    broken("audit", [&](Error e) { return lode_judge_audit(nullptr, j, g, nullptr, e); });
    broken("judge", [&](Error e) { return lode_judge_audit(new_audit, nullptr, g, nullptr, e); });
    broken("grid", [&](Error e) { return lode_judge_audit(new_audit, j, nullptr, nullptr, e); });
    broken("audit", [&](Error e) { return lode_judge_audit_puzzle(nullptr, j, puzzle.get(), nullptr, e); });
    broken("judge",
           [&](Error e) { return lode_judge_audit_puzzle(new_audit, nullptr, puzzle.get(), nullptr, e); });
    broken("puzzle", [&](Error e) { return lode_judge_audit_puzzle(new_audit, j, nullptr, nullptr, e); });
    broken("puzzle", [&](Error e) { return lode_judge_puzzle(nullptr, j, g, nullptr, e); });
    broken("judge", [&](Error e) { return lode_judge_puzzle(new_puzzle, nullptr, g, nullptr, e); });
    broken("grid", [&](Error e) { return lode_judge_puzzle(new_puzzle, j, nullptr, nullptr, e); });
    std::int32_t n = 0;
    broken("row", [&](Error e) { return lode_audit_chance_copy(nullptr, &n, &n, &n, audit.get(), 0, e); });
    broken("audit", [&](Error e) { return lode_audit_chance_copy(&n, &n, &n, &n, nullptr, 0, e); });
    CHECK(lode_audit_chance_copy(&n, &n, &n, &n, audit.get(), SIZE_MAX, nullptr) == LODE_BROKEN_CALL);

    CHECK(lode_grid_rows(nullptr) == 0);
    CHECK(lode_grid_columns(nullptr) == 0);
    CHECK(lode_grid_cell(nullptr, 0, 0) == nullptr);
    CHECK(lode_audit_chance_count(nullptr) == 0);
    CHECK(lode_audit_chance(nullptr, 0) == nullptr);
    CHECK(lode_audit_copy_inside(nullptr, 0, 0) == nullptr);
    lode_grid_free(nullptr);
    lode_judge_free(nullptr);
}

TEST_CASE("64 threads share a judge and its grids", "[c]") {
    const auto recipe = recipe_of("Leek\nKale\n", 5, 5);
    const auto judge = judge_of(recipe.get());
    const std::array drawings{beds, "LEEK\nKALE\n", "ÄÖÜÑ\nLEEK\nELAK\n", "ЖЖЖЖ\nLEEK\n"};
    std::vector<Held<lode_grid>> grids;
    std::vector<std::string> alone;
    for (const char* drawn : drawings) {
        grids.push_back(grid_of(drawn, recipe.get()));
        alone.push_back(json_of_audit(audited(judge_of(recipe.get()).get(), grids.back().get()).get()));
    }
    std::atomic<int> wrong = 0;
    const auto work = [&](std::size_t thread) {
        for (std::size_t round = 0; round < 2 * grids.size(); ++round) {
            const std::size_t at = (thread + round) % grids.size();
            lode_audit* audit = nullptr;
            const char *json = nullptr, *text = nullptr;
            const char* const* cells = nullptr;
            if (lode_judge_audit(&audit, judge.get(), grids[at].get(), nullptr, nullptr) != LODE_OK ||
                lode_audit_json(&json, audit, nullptr) != LODE_OK || alone[at] != json ||
                lode_grid_text(&text, grids[at].get(), nullptr) != LODE_OK ||
                lode_grid_cells(&cells, grids[at].get(), nullptr) != LODE_OK ||
                std::strncmp(text, cells[0], std::strlen(cells[0])) != 0)
                ++wrong;
            lode_audit_free(audit);
        }
    };
    {
        std::vector<std::jthread> threads;
        for (std::size_t thread = 0; thread < 64; ++thread) threads.emplace_back(work, thread);
    }
    CHECK(wrong == 0);
}
