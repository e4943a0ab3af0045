// The C API as its callers meet it; the C++ API is the judge of what it hands out.

#include <letterlode/version.hpp>

#include "support/c_handles.hpp"

using namespace lode::test::c_api;

TEST_CASE("the header's version is the library's", "[c]") {
    CHECK(std::string(lode_version()) == LODE_VERSION);
    CHECK(std::string(lode_version()) == lode::version());
}

TEST_CASE("a puzzle made through C is the one made through C++, byte for byte", "[c]") {
    const auto puzzle = made(garden_recipe().get());
    const auto judge = lode::make(garden_in_cpp());
    REQUIRE(judge);
    CHECK(json_of(puzzle.get()) == lode::to_json(*judge));
    const char* text = nullptr;
    REQUIRE(lode_puzzle_text(&text, puzzle.get(), nullptr) == LODE_OK);
    CHECK(text == lode::puzzle_text(*judge));
    REQUIRE(lode_puzzle_key_text(&text, puzzle.get(), nullptr) == LODE_OK);
    CHECK(text == lode::key_text(*judge));
}

TEST_CASE("a puzzle's cells and placements can be read without JSON", "[c]") {
    const auto puzzle = made(garden_recipe().get());
    CHECK(lode_puzzle_rows(puzzle.get()) == 12);
    CHECK(lode_puzzle_columns(puzzle.get()) == 14);
    REQUIRE(lode_puzzle_word_count(puzzle.get()) == 5);
    CHECK(std::string(lode_puzzle_word(puzzle.get(), 0)) == "Broad Beans");
    CHECK(std::string(lode_puzzle_word(puzzle.get(), 3)) == "Küchenkraut");
    CHECK(lode_puzzle_word_length(puzzle.get(), 0) == 10);
    CHECK(std::string(lode_puzzle_word_letter(puzzle.get(), 3, 1)) == "Ü");
    for (std::size_t word = 0; word < 5; ++word) {
        std::int32_t row = -1, column = -1, direction = -1, down = -1, across = -1;
        REQUIRE(lode_puzzle_placement(&row, &column, &direction, puzzle.get(), word, nullptr) == LODE_OK);
        REQUIRE(lode_direction_step(&down, &across, direction, nullptr) == LODE_OK);
        for (std::size_t letter = 0; letter < lode_puzzle_word_length(puzzle.get(), word); ++letter) {
            const auto steps = static_cast<std::int32_t>(letter);
            const char* cell = lode_puzzle_cell(puzzle.get(), row + down * steps, column + across * steps);
            REQUIRE(cell);
            CHECK(std::string(cell) == lode_puzzle_word_letter(puzzle.get(), word, letter));
        }
    }
}

TEST_CASE("C counts rows and columns from 0, JSON from 1", "[c]") {
    // One word as long as its grid of one row can stand in one place only.
    const auto recipe = recipe_of("marjoram\n", 8, 1);
    REQUIRE(lode_recipe_set_directions(recipe.get(), "right", nullptr) == LODE_OK);
    const auto puzzle = made(recipe.get());
    std::int32_t row = -1, column = -1, direction = -1;
    REQUIRE(lode_puzzle_placement(&row, &column, &direction, puzzle.get(), 0, nullptr) == LODE_OK);
    CHECK(row == 0);
    CHECK(column == 0);
    CHECK(direction == LODE_RIGHT);
    CHECK(std::string(lode_puzzle_cell(puzzle.get(), 0, 7)) == "M");
    CHECK(contains(json_of(puzzle.get()), R"("placed":{"row":1,"column":1,"direction":"right"})"));
}

TEST_CASE("directions have names and steps, and nothing else has", "[c]") {
    for (const auto direction : lode::all_directions) {
        const auto number = static_cast<std::int32_t>(direction);
        CHECK(lode_direction_name(number) == lode::name(direction));
        std::int32_t row = 9, column = 9;
        REQUIRE(lode_direction_step(&row, &column, number, nullptr) == LODE_OK);
        CHECK(lode::Cell{row, column} == lode::step(direction));
    }
    for (const std::int32_t number : {-1, 8, INT32_MAX, INT32_MIN}) {
        CHECK(lode_direction_name(number) == nullptr);
        std::int32_t row = 9, column = 9;
        CHECK(lode_direction_step(&row, &column, number, nullptr) == LODE_BROKEN_CALL);
        CHECK(row == 0);
        CHECK(column == 0);
    }
}

TEST_CASE("every setter of a recipe writes what the C++ recipe holds", "[c]") {
    Out<lode_recipe> recipe;
    REQUIRE(lode_recipe_create(recipe, nullptr) == LODE_OK);
    CHECK(json_of(recipe.get()) == lode::to_json(lode::Recipe{}));

    lode::Recipe judge;
    const auto same = [&] { CHECK(json_of(recipe.get()) == lode::to_json(judge)); };
    CHECK(lode_recipe_add_word(recipe.get(), "Thyme", nullptr) == LODE_OK);
    CHECK(lode_recipe_add_word(recipe.get(), "Cafe\u0301", nullptr) == LODE_OK);
    judge.words.words = {{"Thyme", 0}, {"Caf\u00E9", 0}};
    same();
    CHECK(lode_recipe_set_words_text(recipe.get(), "Leek\n", nullptr, nullptr) == LODE_OK);
    judge.words.words = {{"Leek", 1}};
    same();
    CHECK(lode_recipe_set_locale(recipe.get(), "cy", nullptr) == LODE_OK);
    judge.text.locale = "cy";
    same();
    CHECK(lode_recipe_set_letters(recipe.get(), "keep", nullptr) == LODE_OK);
    judge.text.letters = lode::LetterCase::keep;
    same();
    CHECK(lode_recipe_set_digraphs(recipe.get(), "split", nullptr) == LODE_OK);
    judge.text.digraphs = lode::Digraphs::split;
    same();
    CHECK(lode_recipe_set_sharp_s(recipe.get(), "double", nullptr) == LODE_OK);
    judge.text.sharp_s = lode::SharpS::doubled;
    same();
    CHECK(lode_recipe_set_marks(recipe.get(), "strip", nullptr) == LODE_OK);
    judge.text.marks = lode::Marks::strip;
    same();
    CHECK(lode_recipe_set_finals(recipe.get(), "fold", nullptr) == LODE_OK);
    judge.text.finals = lode::Finals::fold;
    same();
    CHECK(lode_recipe_set_grid_auto(recipe.get(), 1.5, nullptr) == LODE_OK);
    judge.aspect = 1.5;
    same();
    CHECK(lode_recipe_set_grid(recipe.get(), 9, 7, nullptr) == LODE_OK);
    judge.size = lode::Size{7, 9};
    same();
    CHECK(lode_recipe_set_shape(recipe.get(), "heart", nullptr) == LODE_OK);
    judge.shape = lode::Shape::heart;
    same();
    CHECK(lode_recipe_set_mask_text(recipe.get(), ".O.\nOOO\n", nullptr, nullptr) == LODE_OK);
    judge.mask = lode::read_mask(".O.\nOOO\n", "").value();
    same();
    CHECK(lode_recipe_set_directions(recipe.get(), "down,up-left", nullptr) == LODE_OK);
    judge.directions = lode::read_directions("down,up-left").value();
    same();
    CHECK(lode_recipe_set_seed(recipe.get(), UINT64_MAX, nullptr) == LODE_OK);
    judge.seed = UINT64_MAX;
    same();
    CHECK(lode_recipe_set_effort(recipe.get(), 12, nullptr) == LODE_OK);
    judge.effort = 12;
    same();
    CHECK(lode_recipe_set_filler(recipe.get(), "easy-weeding", nullptr) == LODE_OK);
    judge.filler = lode::FillerWay::easy_weeding;
    same();
    CHECK(lode_recipe_set_default_avoid_list(recipe.get(), 0, nullptr) == LODE_OK);
    judge.default_avoid_list = false;
    same();
    CHECK(lode_recipe_add_avoided(recipe.get(), "slug", nullptr) == LODE_OK);
    CHECK(lode_recipe_add_avoided(recipe.get(), "snail", nullptr) == LODE_OK);
    judge.avoid = {"slug", "snail"};
    same();
    CHECK(lode_recipe_allow(recipe.get(), "snail", nullptr) == LODE_OK);
    judge.allow = {"snail"};
    same();

    Out<lode_recipe> copy;
    REQUIRE(lode_recipe_copy(copy, recipe.get(), nullptr) == LODE_OK);
    Out<lode_recipe> read;
    REQUIRE(lode_recipe_from_json(read, json_of(recipe.get()).c_str(), "recipe.json", nullptr) == LODE_OK);
    CHECK(json_of(read.get()) == lode::to_json(judge));
    REQUIRE(lode_recipe_set_seed(recipe.get(), 3, nullptr) == LODE_OK);
    CHECK(json_of(copy.get()) == lode::to_json(judge));
}

TEST_CASE("a grid, an auto grid and a shape take a mask back", "[c]") {
    const auto recipe = garden_recipe();
    const auto masked = [&] {
        REQUIRE(lode_recipe_set_mask_text(recipe.get(), "OO\nOO\n", nullptr, nullptr) == LODE_OK);
        REQUIRE(contains(json_of(recipe.get()), "\"mask\""));
    };
    masked();
    REQUIRE(lode_recipe_set_grid(recipe.get(), 9, 9, nullptr) == LODE_OK);
    CHECK_FALSE(contains(json_of(recipe.get()), "\"mask\""));
    masked();
    REQUIRE(lode_recipe_set_grid_auto(recipe.get(), 1, nullptr) == LODE_OK);
    CHECK_FALSE(contains(json_of(recipe.get()), "\"mask\""));
    masked();
    REQUIRE(lode_recipe_set_shape(recipe.get(), "star", nullptr) == LODE_OK);
    CHECK_FALSE(contains(json_of(recipe.get()), "\"mask\""));
}

TEST_CASE("closed cells and cells outside have no letter", "[c]") {
    const auto recipe = recipe_of("fig\n", 1, 1);
    REQUIRE(lode_recipe_set_mask_text(recipe.get(), "OOO\n..O\n", nullptr, nullptr) == LODE_OK);
    const auto puzzle = made(recipe.get());
    CHECK(lode_puzzle_cell(puzzle.get(), 0, 0));
    CHECK(lode_puzzle_cell(puzzle.get(), 1, 0) == nullptr);
    for (const std::int32_t far : {-1, 3, INT32_MAX, INT32_MIN}) {
        CHECK(lode_puzzle_cell(puzzle.get(), far, 0) == nullptr);
        CHECK(lode_puzzle_cell(puzzle.get(), 0, far) == nullptr);
    }
}

TEST_CASE("a puzzle gives its recipe back, with the size that was chosen", "[c]") {
    const auto recipe = garden_recipe();
    REQUIRE(lode_recipe_set_grid_auto(recipe.get(), 1, nullptr) == LODE_OK);
    const auto puzzle = made(recipe.get());
    Out<lode_recipe> chosen;
    REQUIRE(lode_puzzle_recipe(chosen, puzzle.get(), nullptr) == LODE_OK);
    const auto size = std::to_string(lode_puzzle_columns(puzzle.get())) + "x" +
                      std::to_string(lode_puzzle_rows(puzzle.get()));
    CHECK(contains(json_of(chosen.get()), "\"grid\": \"" + size + "\""));
    CHECK(json_of(made(chosen.get()).get()) == json_of(puzzle.get()));
}

TEST_CASE("an audit of a drawn grid finds copies, strays and avoided words where they stand", "[c]") {
    // LEEK twice; CHARD once, from right to left; no PLUM; SLUG, which is avoided, and SNAIL, which is
    // allowed.
    const auto recipe = recipe_of("Leek\nChard\nPlum\n", 5, 5);
    REQUIRE(lode_recipe_add_avoided(recipe.get(), "slug", nullptr) == LODE_OK);
    REQUIRE(lode_recipe_add_avoided(recipe.get(), "snail", nullptr) == LODE_OK);
    REQUIRE(lode_recipe_allow(recipe.get(), "SNAIL", nullptr) == LODE_OK);
    Out<lode_audit> held;
    REQUIRE(lode_audit_grid_text(held,
                                 "L E E K X\n"
                                 "X X X E X\n"
                                 "D R A H C\n"
                                 ". S L U G\n"
                                 "S N A I L\n",
                                 "grid.txt", recipe.get(), nullptr) == LODE_OK);
    const auto* const audit = held.get();
    CHECK(lode_audit_is_certified(audit) == 0);
    CHECK(lode_audit_is_cut_short(audit) == 0);
    REQUIRE(lode_audit_word_count(audit) == 3);
    CHECK(std::string(lode_audit_word(audit, 1)) == "Chard");
    CHECK(lode_audit_expected(audit, 1) == 1);
    REQUIRE(lode_audit_copy_count(audit, 1) == 1);
    CHECK(lode_audit_stray_count(audit, 1) == 0);
    CHECK(lode_audit_copy_count(audit, 2) == 0);
    std::int32_t row = -1, column = -1, direction = -1, length = -1, stray = -1;
    REQUIRE(lode_audit_copy(&row, &column, &direction, &length, &stray, audit, 1, 0, nullptr) == LODE_OK);
    CHECK(row == 2);
    CHECK(column == 4);
    CHECK(direction == LODE_LEFT);
    CHECK(length == 5);
    CHECK(stray == 0);
    REQUIRE(lode_audit_avoided_count(audit) == 1);
    CHECK(std::string(lode_audit_avoided(audit, 0)) == "slug");
    REQUIRE(lode_audit_avoided_copy(&row, &column, &direction, &length, audit, 0, nullptr) == LODE_OK);
    CHECK(row == 3);
    CHECK(column == 1);
    CHECK(direction == LODE_RIGHT);
    CHECK(length == 4);
    REQUIRE(lode_audit_allowed_count(audit) == 1);
    CHECK(std::string(lode_audit_allowed(audit, 0)) == "snail");
    REQUIRE(lode_audit_allowed_copy(&row, &column, &direction, &length, audit, 0, nullptr) == LODE_OK);
    CHECK(row == 4);
    CHECK(column == 0);

    const char* text = nullptr;
    REQUIRE(lode_audit_json(&text, audit, nullptr) == LODE_OK);
    CHECK(contains(text, R"("missing": ["Plum"])"));
    REQUIRE(lode_audit_text(&text, audit, nullptr) == LODE_OK);
    CHECK(contains(text, "Plum"));
}

TEST_CASE("a puzzle is rated as the C++ API rates it", "[c]") {
    const auto recipe = recipe_of("Leek\nKale\n", 6, 6);
    const auto puzzle = made(recipe.get());
    const char* json = nullptr;
    REQUIRE(lode_puzzle_json(&json, puzzle.get(), nullptr) == LODE_OK);
    const auto read = lode::puzzle_from_json(json, "").value();
    const auto expected = lode::rate(read).value();
    Out<lode_rating> rating;
    REQUIRE(lode_rate_puzzle(rating, puzzle.get(), nullptr) == LODE_OK);
    CHECK(lode_rating_fixations(rating.get()) == expected.difficulty.fixations);
    CHECK(std::string(lode_rating_level(rating.get())) == lode::name(expected.difficulty.level));
    REQUIRE(lode_rating_json(&json, rating.get(), nullptr) == LODE_OK);
    CHECK(std::string(json) == lode::to_json(expected));
    REQUIRE(lode_rating_text(&json, rating.get(), nullptr) == LODE_OK);
    CHECK(contains(json, "Leek"));

    // A drawn grid of the same letters is as difficult.
    Out<lode_rating> drawn;
    REQUIRE(lode_rate_grid_text(drawn, lode::grid_text(read.grid.grid, read.grid.alphabet).c_str(),
                                "grid.txt", recipe.get(), nullptr) == LODE_OK);
    CHECK(lode_rating_fixations(drawn.get()) == expected.difficulty.fixations);
}

TEST_CASE("of two copies of a word in a drawn grid, the second is the stray one", "[c]") {
    const auto recipe = recipe_of("Leek\n", 4, 4);
    Out<lode_audit> audit;
    REQUIRE(lode_audit_grid_text(audit, "LEEK\nXXXX\nKEEL\n", nullptr, recipe.get(), nullptr) == LODE_OK);
    CHECK(lode_audit_is_certified(audit.get()) == 0);
    REQUIRE(lode_audit_copy_count(audit.get(), 0) == 2);
    CHECK(lode_audit_stray_count(audit.get(), 0) == 1);
    std::int32_t row = -1, column = -1, direction = -1, length = -1, stray = -1;
    REQUIRE(lode_audit_copy(&row, &column, &direction, &length, &stray, audit.get(), 0, 0, nullptr) ==
            LODE_OK);
    CHECK(stray == 0);
    REQUIRE(lode_audit_copy(&row, &column, &direction, &length, &stray, audit.get(), 0, 1, nullptr) ==
            LODE_OK);
    CHECK(row == 2);
    CHECK(column == 3);
    CHECK(direction == LODE_LEFT);
    CHECK(stray == 1);
}

TEST_CASE("a puzzle's JSON is read back, and judged again", "[c]") {
    const auto puzzle = made(garden_recipe().get());
    const std::string json = json_of(puzzle.get());
    Out<lode_puzzle> read;
    REQUIRE(lode_puzzle_from_json(read, json.c_str(), "puzzle.json", nullptr) == LODE_OK);
    CHECK(json_of(read.get()) == json);
    Out<lode_audit> audit;
    REQUIRE(lode_audit_puzzle(audit, read.get(), nullptr) == LODE_OK);
    CHECK(lode_audit_is_certified(audit.get()) == 1);
    CHECK(lode_audit_word_count(audit.get()) == 5);
    CHECK(lode_audit_copy_count(audit.get(), 4) == 1);

    // A J in the place of every K of the grid: Leek is gone, whatever the file says of itself.
    std::string spoilt = json;
    const auto end = json.find("\"words\"", json.find("\"cells\""));
    for (auto at = json.find("\"K\"", json.find("\"cells\"")); at < end; at = json.find("\"K\"", at + 1))
        spoilt[at + 1] = 'J';
    Out<lode_puzzle> spoilt_puzzle;
    REQUIRE(lode_puzzle_from_json(spoilt_puzzle, spoilt.c_str(), nullptr, nullptr) == LODE_OK);
    Out<lode_audit> spoilt_audit;
    REQUIRE(lode_audit_puzzle(spoilt_audit, spoilt_puzzle.get(), nullptr) == LODE_OK);
    CHECK(lode_audit_is_certified(spoilt_audit.get()) == 0);
    CHECK(lode_audit_copy_count(spoilt_audit.get(), 1) == 0);
}
