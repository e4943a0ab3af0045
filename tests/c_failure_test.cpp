// The C API in wrong hands: refusals, errors, broken calls, hostile input, memory that ran out.

#include <algorithm>
#include <cmath>
#include <cstring>
#include <new>

#include <letterlode/files.hpp>

#include "c/error.hpp"
#include "support/c_handles.hpp"

using namespace lode::test::c_api;

TEST_CASE("a refusal says why in each of its three reasons", "[c]") {
    SECTION("impossible: five letters each, in a grid with room for one") {
        const auto recipe = recipe_of("onion\nchard\n", 5, 1);
        const auto refusal = refused(recipe.get());
        CHECK(lode_refusal_reason(refusal.get()) == LODE_REASON_IMPOSSIBLE);
        CHECK(lode_refusal_word_count(refusal.get()) == 2);
        CHECK(std::string(lode_refusal_word(refusal.get(), 0)) == "onion");
        CHECK(lode_refusal_word(refusal.get(), 2) == nullptr);
        CHECK(lode_refusal_advice_count(refusal.get()) > 0);
        CHECK(std::strlen(lode_refusal_advice(refusal.get(), 0)) > 0);
        CHECK(lode_refusal_advice(refusal.get(), 99) == nullptr);
    }
    SECTION("unfinished: the effort ran out") {
        const auto recipe = endless_recipe();
        REQUIRE(lode_recipe_set_effort(recipe.get(), 1000, nullptr) == LODE_OK);
        const auto refusal = refused(recipe.get());
        CHECK(lode_refusal_reason(refusal.get()) == LODE_REASON_UNFINISHED);
    }
    SECTION("unusable, with source, line and word") {
        const auto recipe = recipe_of("Leek\n\nB€t\n", 9, 9);
        const auto refusal = refused(recipe.get());
        CHECK(lode_refusal_reason(refusal.get()) == LODE_REASON_UNUSABLE);
        CHECK(std::string(lode_refusal_source(refusal.get())) == "garden.txt");
        CHECK(lode_refusal_line(refusal.get()) == 3);
        REQUIRE(lode_refusal_word_count(refusal.get()) == 1);
        CHECK(std::string(lode_refusal_word(refusal.get(), 0)) == "B€t");
        CHECK(lode_refusal_position(refusal.get()) == 2);
        CHECK(contains(lode_refusal_message(refusal.get()), "garden.txt:3: 'B€t' holds '€' (character 2)"));
        const char* json = nullptr;
        REQUIRE(lode_refusal_json(&json, refusal.get(), nullptr) == LODE_OK);
        lode::Recipe judge;
        judge.words = lode::read_word_lines("Leek\n\nB€t\n", "garden.txt").value();
        judge.size = lode::Size{9, 9};
        CHECK(json == lode::to_json(lode::make(judge).refusal()));
    }
    SECTION("unusable, for an empty recipe") {
        Out<lode_recipe> recipe;
        REQUIRE(lode_recipe_create(recipe, nullptr) == LODE_OK);
        CHECK(lode_refusal_reason(refused(recipe.get()).get()) == LODE_REASON_UNUSABLE);
    }
}

TEST_CASE("a setter refuses what cannot be used, with a way out, and changes nothing", "[c]") {
    const auto recipe = garden_recipe();
    const std::string before = json_of(recipe.get());
    auto* const r = recipe.get();
    const auto check = [&](const Failure& failure, const std::string& part) {
        CHECK(failure.status == LODE_UNUSABLE);
        CHECK(failure.code == LODE_UNUSABLE);
        CHECK(contains(failure.message, part));
        CHECK_FALSE(failure.advice.empty());
        CHECK(json_of(r) == before);
    };
    check(failure_of([&](Error e) { return lode_recipe_set_locale(r, "xx-nowhere", e); }), "'xx-nowhere'");
    check(failure_of([&](Error e) { return lode_recipe_set_letters(r, "UPPER", e); }), "'UPPER'");
    check(failure_of([&](Error e) { return lode_recipe_set_digraphs(r, "keep", e); }), "'keep'");
    check(failure_of([&](Error e) { return lode_recipe_set_sharp_s(r, "SS", e); }), "'SS'");
    check(failure_of([&](Error e) { return lode_recipe_set_marks(r, "fold", e); }), "'fold'");
    check(failure_of([&](Error e) { return lode_recipe_set_finals(r, "strip", e); }), "'strip'");
    check(failure_of([&](Error e) { return lode_recipe_set_grid(r, 0, 3, e); }), "0x3");
    check(failure_of([&](Error e) { return lode_recipe_set_grid(r, -1, -1, e); }), "-1x-1");
    check(failure_of([&](Error e) { return lode_recipe_set_grid(r, INT32_MAX, INT32_MAX, e); }),
          "2147483647x2147483647");
    check(failure_of([&](Error e) { return lode_recipe_set_grid_auto(r, 0, e); }), "aspect");
    check(failure_of([&](Error e) { return lode_recipe_set_grid_auto(r, std::nan(""), e); }), "aspect");
    check(failure_of([&](Error e) { return lode_recipe_set_grid_auto(r, -INFINITY, e); }), "aspect");
    const auto shape = failure_of([&](Error e) { return lode_recipe_set_shape(r, "kite", e); });
    check(shape, "'kite' is no shape");
    CHECK(contains(shape.advice.front(), "rectangle, ellipse, heart, diamond, star"));
    check(failure_of([&](Error e) { return lode_recipe_set_mask_text(r, "...\n", "m.txt", e); }), "m.txt: ");
    check(failure_of([&](Error e) { return lode_recipe_set_directions(r, "right,sideways", e); }),
          "'sideways'");
    check(failure_of([&](Error e) { return lode_recipe_set_directions(r, "", e); }), "direction");
}

TEST_CASE("an error names source, line and word of what could not be used", "[c]") {
    const auto recipe = garden_recipe();
    const auto mask = failure_of([&](Error error) {
        return lode_recipe_set_mask_text(recipe.get(), "\nOO\nO!\n", "mask.txt", error);
    });
    CHECK(mask.status == LODE_UNUSABLE);
    CHECK(mask.source == "mask.txt");
    CHECK(mask.line == 3);
    CHECK(mask.position == 2);
    CHECK(contains(mask.message, "mask.txt:3: column 2"));

    const auto bad_list = recipe_of("Leek\nK\n", 5, 5);
    Out<lode_audit> audit;
    const auto list = failure_of(
        [&](Error error) { return lode_audit_grid_text(audit, "LEEK\n", nullptr, bad_list.get(), error); });
    CHECK(list.status == LODE_UNUSABLE);
    CHECK(list.source == "garden.txt");
    CHECK(list.line == 2);
    CHECK(list.words == std::vector<std::string>{"K"});
    CHECK(audit.get() == nullptr);

    const auto grid = failure_of([&](Error error) {
        return lode_audit_grid_text(audit, "LEEK\nLEE\n", "grid.txt", recipe.get(), error);
    });
    CHECK(grid.status == LODE_UNUSABLE);
    CHECK(contains(grid.message, "grid.txt:2: row 2"));
    CHECK(grid.line == 2);
    CHECK(grid.position == 0);

    const auto cell = failure_of([&](Error error) {
        return lode_audit_grid_text(audit, "LEEK\nLE€K\n", "grid.txt", recipe.get(), error);
    });
    CHECK(contains(cell.message, "grid.txt:2: row 2, column 3 holds '€'"));
    CHECK(cell.line == 2);
    CHECK(cell.position == 3);

    const auto twice = recipe_of("Leek\nkale\nleek\n", 5, 5);
    const auto both = failure_of(
        [&](Error error) { return lode_audit_grid_text(audit, "LEEK\n", nullptr, twice.get(), error); });
    CHECK(both.line == 3);
    CHECK(both.words == std::vector<std::string>{"leek", "Leek"});

    REQUIRE(lode_recipe_add_avoided(recipe.get(), "sl€g", nullptr) == LODE_OK);
    const auto avoided = failure_of(
        [&](Error error) { return lode_audit_grid_text(audit, "LEEK\n", nullptr, recipe.get(), error); });
    CHECK(avoided.words == std::vector<std::string>{"sl€g"});
    CHECK(avoided.position == 3);
}

TEST_CASE("text that is no UTF-8 is refused at once, and named where lines are counted", "[c]") {
    constexpr const char* broken = "Leek\n\xC3(\n";
    constexpr const char* overlong = "\xC0\xAF";
    constexpr const char* surrogate = "\xED\xA0\x80";
    const auto recipe = garden_recipe();
    auto* const r = recipe.get();
    const std::string before = json_of(r);
    for (const char* bytes : {broken, overlong, surrogate, "\xFF", "caf\xE9"}) {
        const auto status = [&](auto call) { return failure_of(call).status; };
        CHECK(status([&](Error e) { return lode_recipe_set_words_text(r, bytes, "w", e); }) == LODE_UNUSABLE);
        CHECK(status([&](Error e) { return lode_recipe_add_word(r, bytes, e); }) == LODE_UNUSABLE);
        CHECK(status([&](Error e) { return lode_recipe_set_locale(r, bytes, e); }) == LODE_UNUSABLE);
        CHECK(status([&](Error e) { return lode_recipe_set_letters(r, bytes, e); }) == LODE_UNUSABLE);
        CHECK(status([&](Error e) { return lode_recipe_set_shape(r, bytes, e); }) == LODE_UNUSABLE);
        CHECK(status([&](Error e) { return lode_recipe_set_filler(r, bytes, e); }) == LODE_UNUSABLE);
        CHECK(status([&](Error e) { return lode_recipe_set_mask_text(r, bytes, "m", e); }) == LODE_UNUSABLE);
        CHECK(status([&](Error e) { return lode_recipe_set_directions(r, bytes, e); }) == LODE_UNUSABLE);
        CHECK(status([&](Error e) { return lode_recipe_add_avoided(r, bytes, e); }) == LODE_UNUSABLE);
        CHECK(status([&](Error e) { return lode_recipe_allow(r, bytes, e); }) == LODE_UNUSABLE);
        Out<lode_recipe> read;
        CHECK(status([&](Error e) { return lode_recipe_from_json(read, bytes, "j", e); }) == LODE_UNUSABLE);
        Out<lode_puzzle> puzzle;
        CHECK(status([&](Error e) { return lode_puzzle_from_json(puzzle, bytes, "j", e); }) == LODE_UNUSABLE);
        Out<lode_audit> audit;
        CHECK(status([&](Error e) { return lode_audit_grid_text(audit, bytes, "g", r, e); }) ==
              LODE_UNUSABLE);
    }
    CHECK(json_of(r) == before);
    const auto failure =
        failure_of([&](Error error) { return lode_recipe_set_words_text(r, broken, "list.txt", error); });
    CHECK(failure.line == 2);
    CHECK(failure.source == "list.txt");
}

TEST_CASE("a source may be a file's name in any bytes; what is handed back is UTF-8", "[c]") {
    const auto recipe = garden_recipe();
    const auto failure = failure_of(
        [&](Error error) { return lode_recipe_set_mask_text(recipe.get(), "!", "caf\xE9.txt", error); });
    CHECK(failure.source == "caf\uFFFD.txt");
    CHECK(lode::normalised(failure.message));
}

TEST_CASE("NULL is a broken call in every function, and never a crash", "[c]") {
    const auto recipe = garden_recipe();
    const auto puzzle = made(recipe.get());
    Out<lode_audit> audit;
    REQUIRE(lode_audit_puzzle(audit, puzzle.get(), nullptr) == LODE_OK);
    auto* const r = recipe.get();
    const auto* const p = puzzle.get();
    const auto* const a = audit.get();
    std::int32_t n = 0;

    SECTION("calls that return a status") {
        broken("row", [&](Error e) { return lode_direction_step(nullptr, &n, 0, e); });
        broken("column", [&](Error e) { return lode_direction_step(&n, nullptr, 0, e); });

        broken("recipe", [&](Error e) { return lode_recipe_create(nullptr, e); });
        broken("recipe", [&](Error e) { return lode_recipe_from_json(nullptr, "{}", "", e); });
        Out<lode_recipe> other;
        broken("json", [&](Error e) { return lode_recipe_from_json(other, nullptr, "", e); });
        broken("copy", [&](Error e) { return lode_recipe_copy(nullptr, r, e); });
        broken("recipe", [&](Error e) { return lode_recipe_copy(other, nullptr, e); });
        broken("recipe", [&](Error e) { return lode_recipe_set_words_text(nullptr, "a", "", e); });
        broken("text", [&](Error e) { return lode_recipe_set_words_text(r, nullptr, "", e); });
        broken("recipe", [&](Error e) { return lode_recipe_add_word(nullptr, "leek", e); });
        broken("word", [&](Error e) { return lode_recipe_add_word(r, nullptr, e); });
        broken("recipe", [&](Error e) { return lode_recipe_set_locale(nullptr, "en", e); });
        broken("tag", [&](Error e) { return lode_recipe_set_locale(r, nullptr, e); });
        broken("recipe", [&](Error e) { return lode_recipe_set_letters(nullptr, "keep", e); });
        broken("letter case", [&](Error e) { return lode_recipe_set_letters(r, nullptr, e); });
        broken("recipe", [&](Error e) { return lode_recipe_set_digraphs(nullptr, "join", e); });
        broken("rule for digraphs", [&](Error e) { return lode_recipe_set_digraphs(r, nullptr, e); });
        broken("recipe", [&](Error e) { return lode_recipe_set_sharp_s(nullptr, "keep", e); });
        broken("recipe", [&](Error e) { return lode_recipe_set_marks(nullptr, "keep", e); });
        broken("recipe", [&](Error e) { return lode_recipe_set_finals(nullptr, "keep", e); });
        broken("recipe", [&](Error e) { return lode_recipe_set_grid(nullptr, 5, 5, e); });
        broken("recipe", [&](Error e) { return lode_recipe_set_grid_auto(nullptr, 1, e); });
        broken("recipe", [&](Error e) { return lode_recipe_set_shape(nullptr, "star", e); });
        broken("shape", [&](Error e) { return lode_recipe_set_shape(r, nullptr, e); });
        broken("recipe", [&](Error e) { return lode_recipe_set_filler(nullptr, "words", e); });
        broken("way to choose filler", [&](Error e) { return lode_recipe_set_filler(r, nullptr, e); });
        broken("recipe", [&](Error e) { return lode_recipe_set_mask_text(nullptr, "O", "", e); });
        broken("text", [&](Error e) { return lode_recipe_set_mask_text(r, nullptr, "", e); });
        broken("recipe", [&](Error e) { return lode_recipe_set_directions(nullptr, "all", e); });
        broken("names", [&](Error e) { return lode_recipe_set_directions(r, nullptr, e); });
        broken("recipe", [&](Error e) { return lode_recipe_set_seed(nullptr, 1, e); });
        broken("recipe", [&](Error e) { return lode_recipe_set_effort(nullptr, 1, e); });
        broken("recipe", [&](Error e) { return lode_recipe_set_default_avoid_list(nullptr, 1, e); });
        broken("recipe", [&](Error e) { return lode_recipe_add_avoided(nullptr, "slug", e); });
        broken("word", [&](Error e) { return lode_recipe_add_avoided(r, nullptr, e); });
        broken("recipe", [&](Error e) { return lode_recipe_allow(nullptr, "slug", e); });
        broken("word", [&](Error e) { return lode_recipe_allow(r, nullptr, e); });
        const char* text = nullptr;
        broken("json", [&](Error e) { return lode_recipe_json(nullptr, r, e); });
        broken("recipe", [&](Error e) { return lode_recipe_json(&text, nullptr, e); });

        broken("control", [&](Error e) { return lode_control_create(nullptr, e); });
        broken("control", [&](Error e) { return lode_control_set_progress(nullptr, nullptr, nullptr, e); });
        Out<lode_puzzle> new_puzzle;
        Out<lode_refusal> refusal;
        broken("puzzle", [&](Error e) { return lode_make(nullptr, refusal, r, nullptr, e); });
        broken("refusal", [&](Error e) { return lode_make(new_puzzle, nullptr, r, nullptr, e); });
        broken("recipe", [&](Error e) { return lode_make(new_puzzle, refusal, nullptr, nullptr, e); });
        const auto refused_one = refused(recipe_of("onion\nchard\n", 5, 1).get());
        broken("json", [&](Error e) { return lode_refusal_json(nullptr, refused_one.get(), e); });
        broken("refusal", [&](Error e) { return lode_refusal_json(&text, nullptr, e); });

        broken("puzzle", [&](Error e) { return lode_puzzle_from_json(nullptr, "{}", "", e); });
        broken("json", [&](Error e) { return lode_puzzle_from_json(new_puzzle, nullptr, "", e); });
        broken("row", [&](Error e) { return lode_puzzle_placement(nullptr, &n, &n, p, 0, e); });
        broken("column", [&](Error e) { return lode_puzzle_placement(&n, nullptr, &n, p, 0, e); });
        broken("direction", [&](Error e) { return lode_puzzle_placement(&n, &n, nullptr, p, 0, e); });
        broken("puzzle", [&](Error e) { return lode_puzzle_placement(&n, &n, &n, nullptr, 0, e); });
        broken("recipe", [&](Error e) { return lode_puzzle_recipe(nullptr, p, e); });
        broken("puzzle", [&](Error e) { return lode_puzzle_recipe(other, nullptr, e); });
        broken("json", [&](Error e) { return lode_puzzle_json(nullptr, p, e); });
        broken("puzzle", [&](Error e) { return lode_puzzle_json(&text, nullptr, e); });
        broken("text", [&](Error e) { return lode_puzzle_text(nullptr, p, e); });
        broken("puzzle", [&](Error e) { return lode_puzzle_text(&text, nullptr, e); });
        broken("text", [&](Error e) { return lode_puzzle_key_text(nullptr, p, e); });
        broken("puzzle", [&](Error e) { return lode_puzzle_key_text(&text, nullptr, e); });

        Out<lode_audit> other_audit;
        broken("audit", [&](Error e) { return lode_audit_puzzle(nullptr, p, e); });
        broken("puzzle", [&](Error e) { return lode_audit_puzzle(other_audit, nullptr, e); });
        broken("audit", [&](Error e) { return lode_audit_grid_text(nullptr, "AB", "", r, e); });
        broken("grid", [&](Error e) { return lode_audit_grid_text(other_audit, nullptr, "", r, e); });
        broken("recipe", [&](Error e) { return lode_audit_grid_text(other_audit, "AB", "", nullptr, e); });
        broken("row", [&](Error e) { return lode_audit_copy(nullptr, &n, &n, &n, &n, a, 0, 0, e); });
        broken("column", [&](Error e) { return lode_audit_copy(&n, nullptr, &n, &n, &n, a, 0, 0, e); });
        broken("direction", [&](Error e) { return lode_audit_copy(&n, &n, nullptr, &n, &n, a, 0, 0, e); });
        broken("length", [&](Error e) { return lode_audit_copy(&n, &n, &n, nullptr, &n, a, 0, 0, e); });
        broken("is_stray", [&](Error e) { return lode_audit_copy(&n, &n, &n, &n, nullptr, a, 0, 0, e); });
        broken("audit", [&](Error e) { return lode_audit_copy(&n, &n, &n, &n, &n, nullptr, 0, 0, e); });
        for (const auto call : {lode_audit_avoided_copy, lode_audit_allowed_copy}) {
            broken("row", [&](Error e) { return call(nullptr, &n, &n, &n, a, 0, e); });
            broken("column", [&](Error e) { return call(&n, nullptr, &n, &n, a, 0, e); });
            broken("direction", [&](Error e) { return call(&n, &n, nullptr, &n, a, 0, e); });
            broken("length", [&](Error e) { return call(&n, &n, &n, nullptr, a, 0, e); });
            broken("audit", [&](Error e) { return call(&n, &n, &n, &n, nullptr, 0, e); });
        }
        broken("json", [&](Error e) { return lode_audit_json(nullptr, a, e); });
        broken("audit", [&](Error e) { return lode_audit_json(&text, nullptr, e); });
        broken("text", [&](Error e) { return lode_audit_text(nullptr, a, e); });
        broken("audit", [&](Error e) { return lode_audit_text(&text, nullptr, e); });

        Out<lode_rating> rating;
        broken("rating", [&](Error e) { return lode_rate_puzzle(nullptr, p, e); });
        broken("puzzle", [&](Error e) { return lode_rate_puzzle(rating, nullptr, e); });
        broken("rating", [&](Error e) { return lode_rate_grid_text(nullptr, "AB", "", r, e); });
        broken("grid", [&](Error e) { return lode_rate_grid_text(rating, nullptr, "", r, e); });
        broken("recipe", [&](Error e) { return lode_rate_grid_text(rating, "AB", "", nullptr, e); });
        broken("rating", [&](Error e) { return lode_rating_json(&text, nullptr, e); });
        broken("rating", [&](Error e) { return lode_rating_text(&text, nullptr, e); });
        REQUIRE(lode_rate_puzzle(rating, p, nullptr) == LODE_OK);
        broken("json", [&](Error e) { return lode_rating_json(nullptr, rating.get(), e); });
        broken("text", [&](Error e) { return lode_rating_text(nullptr, rating.get(), e); });
    }
    SECTION("getters") {
        CHECK(lode_rating_fixations(nullptr) == 0);
        CHECK(lode_rating_level(nullptr) == nullptr);
        CHECK(lode_error_code(nullptr) == 0);
        CHECK(lode_error_message(nullptr) == nullptr);
        CHECK(lode_error_source(nullptr) == nullptr);
        CHECK(lode_error_line(nullptr) == 0);
        CHECK(lode_error_position(nullptr) == 0);
        CHECK(lode_error_word_count(nullptr) == 0);
        CHECK(lode_error_word(nullptr, 0) == nullptr);
        CHECK(lode_error_advice_count(nullptr) == 0);
        CHECK(lode_error_advice(nullptr, 0) == nullptr);
        CHECK(lode_refusal_reason(nullptr) == 0);
        CHECK(lode_refusal_message(nullptr) == nullptr);
        CHECK(lode_refusal_source(nullptr) == nullptr);
        CHECK(lode_refusal_line(nullptr) == 0);
        CHECK(lode_refusal_position(nullptr) == 0);
        CHECK(lode_refusal_word_count(nullptr) == 0);
        CHECK(lode_refusal_word(nullptr, 0) == nullptr);
        CHECK(lode_refusal_advice_count(nullptr) == 0);
        CHECK(lode_refusal_advice(nullptr, 0) == nullptr);
        CHECK(lode_puzzle_rows(nullptr) == 0);
        CHECK(lode_puzzle_columns(nullptr) == 0);
        CHECK(lode_puzzle_cell(nullptr, 0, 0) == nullptr);
        CHECK(lode_puzzle_word_count(nullptr) == 0);
        CHECK(lode_puzzle_word(nullptr, 0) == nullptr);
        CHECK(lode_puzzle_word_length(nullptr, 0) == 0);
        CHECK(lode_puzzle_word_letter(nullptr, 0, 0) == nullptr);
        CHECK(lode_audit_is_certified(nullptr) == 0);
        CHECK(lode_audit_is_cut_short(nullptr) == 0);
        CHECK(lode_audit_word_count(nullptr) == 0);
        CHECK(lode_audit_word(nullptr, 0) == nullptr);
        CHECK(lode_audit_expected(nullptr, 0) == 0);
        CHECK(lode_audit_copy_count(nullptr, 0) == 0);
        CHECK(lode_audit_stray_count(nullptr, 0) == 0);
        CHECK(lode_audit_avoided_count(nullptr) == 0);
        CHECK(lode_audit_avoided(nullptr, 0) == nullptr);
        CHECK(lode_audit_allowed_count(nullptr) == 0);
        CHECK(lode_audit_allowed(nullptr, 0) == nullptr);
    }
    SECTION("free, cancel and reset") {
        lode_error_free(nullptr);
        lode_recipe_free(nullptr);
        lode_control_free(nullptr);
        lode_refusal_free(nullptr);
        lode_puzzle_free(nullptr);
        lode_audit_free(nullptr);
        lode_control_cancel(nullptr);
        lode_control_reset(nullptr);
    }
}

TEST_CASE("a place beyond a list's end is a broken call, or nothing", "[c]") {
    const auto puzzle = made(garden_recipe().get());
    Out<lode_audit> audit;
    REQUIRE(lode_audit_puzzle(audit, puzzle.get(), nullptr) == LODE_OK);
    std::int32_t n = 7, row = 7;
    for (const std::size_t far : {std::size_t{5}, SIZE_MAX}) {
        const auto failure = failure_of(
            [&](Error error) { return lode_puzzle_placement(&row, &n, &n, puzzle.get(), far, error); });
        CHECK(failure.status == LODE_BROKEN_CALL);
        CHECK(contains(failure.message, std::to_string(far) + " among 5"));
        CHECK(row == 0);
        CHECK(lode_puzzle_word(puzzle.get(), far) == nullptr);
        CHECK(lode_puzzle_word_length(puzzle.get(), far) == 0);
        CHECK(lode_puzzle_word_letter(puzzle.get(), far, 0) == nullptr);
        CHECK(lode_audit_word(audit.get(), far) == nullptr);
        CHECK(lode_audit_expected(audit.get(), far) == 0);
        CHECK(lode_audit_copy_count(audit.get(), far) == 0);
        CHECK(lode_audit_stray_count(audit.get(), far) == 0);
        CHECK(lode_audit_copy(&n, &n, &n, &n, &n, audit.get(), far, 0, nullptr) == LODE_BROKEN_CALL);
        CHECK(lode_audit_copy(&n, &n, &n, &n, &n, audit.get(), 0, far, nullptr) == LODE_BROKEN_CALL);
    }
    CHECK(lode_puzzle_word_letter(puzzle.get(), 1, 4) == nullptr);
    CHECK(lode_audit_avoided(audit.get(), 0) == nullptr);
    CHECK(lode_audit_allowed(audit.get(), 0) == nullptr);
    CHECK(lode_audit_avoided_copy(&n, &n, &n, &n, audit.get(), 0, nullptr) == LODE_BROKEN_CALL);
    CHECK(lode_audit_allowed_copy(&n, &n, &n, &n, audit.get(), 0, nullptr) == LODE_BROKEN_CALL);
}

TEST_CASE("a call that fails leaves NULL in its out parameters, whatever they held", "[c]") {
    const auto recipe = garden_recipe();
    auto* const junk = reinterpret_cast<lode_puzzle*>(recipe.get());
    auto* puzzle = junk;
    auto* refusal = reinterpret_cast<lode_refusal*>(junk);
    CHECK(lode_make(&puzzle, &refusal, nullptr, nullptr, nullptr) == LODE_BROKEN_CALL);
    CHECK(puzzle == nullptr);
    CHECK(refusal == nullptr);
    puzzle = junk;
    CHECK(lode_puzzle_from_json(&puzzle, "{", nullptr, nullptr) == LODE_UNUSABLE);
    CHECK(puzzle == nullptr);
    auto* error = reinterpret_cast<lode_error*>(junk);
    REQUIRE(lode_recipe_set_seed(recipe.get(), 2, &error) == LODE_OK);
    CHECK(error == nullptr);
}

TEST_CASE("JSON that is none, or another's, is refused with the place of its fault", "[c]") {
    for (const char* json : {"", "{", "[]", "null", "{\"format\":\"letterlode-audit\",\"version\":1}",
                             "{\"format\":\"letterlode-puzzle\",\"version\":2}"}) {
        Out<lode_puzzle> puzzle;
        const auto failure =
            failure_of([&](Error error) { return lode_puzzle_from_json(puzzle, json, "mine.json", error); });
        INFO(json);
        CHECK(failure.status == LODE_UNUSABLE);
        CHECK(failure.source == "mine.json");
        CHECK(contains(failure.message, "mine.json:"));
        CHECK_FALSE(failure.advice.empty());
    }
    Out<lode_puzzle> puzzle;
    const auto cut_short = failure_of(
        [&](Error error) { return lode_puzzle_from_json(puzzle, "{\n \"a\": }", "mine.json", error); });
    CHECK(contains(cut_short.message, "mine.json:2: this is no JSON: it goes wrong at column 7."));
    CHECK(cut_short.line == 2);
    CHECK(cut_short.position == 7);

    // A fault of a word within is told as any fault of a word.
    const auto bad_word = failure_of([&](Error error) {
        constexpr const char* json = R"({"format": "letterlode-puzzle", "version": 1, "rows": 1, "columns": 1,
            "recipe": {"words": ["B€t"]}, "cells": [["B"]], "words": []})";
        return lode_puzzle_from_json(puzzle, json, "mine.json", error);
    });
    CHECK(
        contains(bad_word.message, "mine.json: recipe.words cannot be used: 'B€t' holds '€' (character 2)"));
    CHECK(bad_word.words == std::vector<std::string>{"B€t"});
    CHECK(bad_word.position == 2);
    CHECK(bad_word.advice.size() == 2);

    std::string deep(100'000, '[');
    Out<lode_recipe> recipe;
    CHECK(lode_recipe_from_json(recipe, deep.c_str(), nullptr, nullptr) == LODE_UNUSABLE);
}

TEST_CASE("whatever is thrown inside becomes a status", "[c]") {
    const auto thrown = [](auto exception) {
        return failure_of([&](lode_error** error) {
            return lode::c::guarded("lode_call", error, [&]() -> std::int32_t { throw exception; });
        });
    };
    const auto fault = thrown(lode::AuditContradiction("the audit contradicts the engine"));
    CHECK(fault.status == LODE_FAULT);
    CHECK(fault.code == LODE_FAULT);
    CHECK(contains(fault.message, "lode_call: the audit contradicts the engine"));
    CHECK(thrown(std::logic_error("odd")).status == LODE_FAULT);
    CHECK(thrown(std::runtime_error("odd")).status == LODE_FAULT);
    CHECK(thrown(42).status == LODE_FAULT);
    CHECK(thrown(std::length_error("long")).status == LODE_UNUSABLE);
    const auto disk = thrown(lode::DiskFault("cannot write herbs.pdf: No space left on device"));
    CHECK(disk.status == LODE_DISK_FAULT);
    CHECK(disk.code == LODE_DISK_FAULT);
    CHECK(contains(disk.message, "No space left"));
    const auto memory = thrown(std::bad_alloc());
    CHECK(memory.status == LODE_OUT_OF_MEMORY);
    CHECK(memory.code == LODE_OUT_OF_MEMORY);
    CHECK_FALSE(memory.message.empty());
    CHECK(lode::c::guarded("lode_call", nullptr, []() -> std::int32_t { throw std::bad_alloc(); }) ==
          LODE_OUT_OF_MEMORY);
}

TEST_CASE("every status has words, and so has one that is not known", "[c]") {
    std::vector<std::string> all;
    for (std::int32_t status = LODE_OK; status <= LODE_DISK_FAULT; ++status) {
        all.emplace_back(lode_status_text(status));
        CHECK_FALSE(all.back().empty());
        CHECK(std::count(all.begin(), all.end(), all.back()) == 1);
    }
    CHECK(std::string(lode_status_text(1000)) == lode_status_text(-1));
}
