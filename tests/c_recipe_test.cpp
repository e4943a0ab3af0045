// What the C API can ask of a recipe, beside the recipe that C++ writes.

#include <functional>

#include "support/c_handles.hpp"

using namespace lode::test::c_api;

namespace {

using Setter = std::function<std::int32_t(lode_recipe*, Error)>;

struct Asked {
    const char* name;
    Setter set;
    std::function<void(lode::Recipe&)> set_in_cpp;
};

lode::Puzzle garden_puzzle() {
    return lode::make(garden_in_cpp()).value();
}

// Every setter that has no other test, each on top of those before it.
std::vector<Asked> all_asked(const lode_puzzle* earlier) {
    return {
        {"nested", [](auto* r, Error e) { return lode_recipe_set_nested(r, "separate", e); },
         [](auto& r) { r.nested = lode::Nested::separate; }},
        {"tight", [](auto* r, Error e) { return lode_recipe_set_grid_tight(r, 0.75, e); },
         [](auto& r) {
             r.size.reset();
             r.tight = true;
             r.aspect = 0.75;
         }},
        {"auto", [](auto* r, Error e) { return lode_recipe_set_grid_auto(r, 1.25, e); },
         [](auto& r) {
             r.tight = false;
             r.aspect = 1.25;
         }},
        {"choices", [](auto* r, Error e) { return lode_recipe_set_choices(r, 1000, e); },
         [](auto& r) { r.choices = 1000; }},
        {"message", [](auto* r, Error e) { return lode_recipe_set_message(r, "Mind the bees", e); },
         [](auto& r) { r.message = "Mind the bees"; }},
        {"message then", [](auto* r, Error e) { return lode_recipe_set_message_then(r, "filler", e); },
         [](auto& r) { r.filler_after_message = true; }},
        {"message then nothing",
         [](auto* r, Error e) { return lode_recipe_set_message_then(r, "nothing", e); },
         [](auto& r) { r.filler_after_message = false; }},
        {"no message", [](auto* r, Error e) { return lode_recipe_set_message(r, "", e); },
         [](auto& r) { r.message.clear(); }},
        {"filler", [](auto* r, Error e) { return lode_recipe_set_filler(r, "language", e); },
         [](auto& r) { r.filler = lode::FillerWay::language; }},
        {"filler text",
         [](auto* r, Error e) { return lode_recipe_set_filler_text(r, "Rain again.", "rain.txt", e); },
         [](auto& r) {
             r.letter_counts = {{"R", 1}, {"A", 3}, {"I", 2}, {"N", 2}, {"G", 1}};
             const auto segmenter = lode::Segmenter::open(r.text).value();
             const auto counted = lode::count_letters("Rain again.", segmenter);
             CHECK(std::is_permutation(counted.begin(), counted.end(), r.letter_counts.begin(),
                                       r.letter_counts.end()));
             r.letter_counts = counted;
         }},
        {"letter count anew", [](auto* r, Error e) { return lode_recipe_set_letter_count(r, "A", 77, e); },
         [](auto& r) {
             for (auto& counted : r.letter_counts)
                 if (counted.letter == "A") counted.count = 77;
         }},
        {"letter count",
         [](auto* r, Error e) { return lode_recipe_set_letter_count(r, "Z", 1'000'000'000, e); },
         [](auto& r) {
             r.letter_counts.push_back({"Z", 1'000'000'000});
         }},
        {"no letter counts", [](auto* r, Error e) { return lode_recipe_clear_letter_counts(r, e); },
         [](auto& r) { r.letter_counts.clear(); }},
        {"longest run", [](auto* r, Error e) { return lode_recipe_set_longest_run(r, 0, e); },
         [](auto& r) { r.longest_run = 0; }},
        {"look-alikes", [](auto* r, Error e) { return lode_recipe_set_look_alikes(r, "apart", e); },
         [](auto& r) { r.look_alikes_apart = true; }},
        {"look-alikes anywhere",
         [](auto* r, Error e) { return lode_recipe_set_look_alikes(r, "anywhere", e); },
         [](auto& r) { r.look_alikes_apart = false; }},
        {"pin", [](auto* r, Error e) { return lode_recipe_pin(r, "Leek", 2, 0, LODE_DOWN_RIGHT, e); },
         [](auto& r) {
             r.pins.push_back({"Leek", {{2, 0}, lode::Direction::down_right}});
         }},
        {"another pin",
         [](auto* r, Error e) { return lode_recipe_pin(r, "Squash", 19'999, 19'999, LODE_UP_LEFT, e); },
         [](auto& r) {
             r.pins.push_back({"Squash", {{19'999, 19'999}, lode::Direction::up_left}});
         }},
        {"no pins", [](auto* r, Error e) { return lode_recipe_clear_pins(r, e); },
         [](auto& r) { r.pins.clear(); }},
        {"crossings", [](auto* r, Error e) { return lode_recipe_set_crossings(r, 2, 5, e); },
         [](auto& r) {
             r.crossings = {2, 5};
         }},
        {"crossings at least",
         [](auto* r, Error e) { return lode_recipe_set_crossings(r, 3, LODE_ANY_NUMBER, e); },
         [](auto& r) {
             r.crossings = {3, {}};
         }},
        {"no crossings", [](auto* r, Error e) { return lode_recipe_set_crossings(r, 0, 0, e); },
         [](auto& r) {
             r.crossings = {0, 0};
         }},
        {"spacing", [](auto* r, Error e) { return lode_recipe_set_spacing(r, 20, e); },
         [](auto& r) { r.spacing = 20; }},
        {"leftover", [](auto* r, Error e) { return lode_recipe_set_leftover(r, 31, e); },
         [](auto& r) { r.leftover = 31; }},
        {"any leftover", [](auto* r, Error e) { return lode_recipe_set_leftover(r, LODE_ANY_NUMBER, e); },
         [](auto& r) { r.leftover.reset(); }},
        {"equal shares", [](auto* r, Error e) { return lode_recipe_set_equal_shares(r, e); },
         [](auto& r) { r.equal_shares = true; }},
        {"share", [](auto* r, Error e) { return lode_recipe_set_share(r, LODE_DOWN, 1'000'000, e); },
         [](auto& r) {
             r.equal_shares = false;
             r.weights = lode::DirectionWeights{0, 1'000'000};
         }},
        {"another share", [](auto* r, Error e) { return lode_recipe_set_share(r, LODE_DOWN_LEFT, 3, e); },
         [](auto& r) { r.weights->at(7) = 3; }},
        {"no shares", [](auto* r, Error e) { return lode_recipe_clear_shares(r, e); },
         [](auto& r) { r.weights.reset(); }},
        {"backward", [](auto* r, Error e) { return lode_recipe_set_backward(r, 0, e); },
         [](auto& r) { r.most_backward = 0; }},
        {"any backward", [](auto* r, Error e) { return lode_recipe_set_backward(r, LODE_ANY_NUMBER, e); },
         [](auto& r) { r.most_backward.reset(); }},
        {"earlier", [=](auto* r, Error e) { return lode_recipe_set_earlier(r, earlier, 0, e); },
         [](auto& r) { r.earlier = lode::earlier_of(garden_puzzle(), false); }},
        {"earlier with filler", [=](auto* r, Error e) { return lode_recipe_set_earlier(r, earlier, 1, e); },
         [](auto& r) { r.earlier = lode::earlier_of(garden_puzzle(), true); }},
        {"nothing earlier", [](auto* r, Error e) { return lode_recipe_clear_earlier(r, e); },
         [](auto& r) { r.earlier.reset(); }},
        {"directions", [](auto* r, Error e) { return lode_recipe_set_directions(r, "up", e); },
         [](auto& r) { r.directions = lode::read_directions("up").value(); }},
        {"no directions", [](auto* r, Error e) { return lode_recipe_clear_directions(r, e); },
         [](auto& r) { r.directions.reset(); }},
        {"avoided", [](auto* r, Error e) { return lode_recipe_add_avoided(r, "slug", e); },
         [](auto& r) { r.avoid = {"slug"}; }},
        {"none avoided", [](auto* r, Error e) { return lode_recipe_clear_avoided(r, e); },
         [](auto& r) { r.avoid.clear(); }},
        {"allowed", [](auto* r, Error e) { return lode_recipe_allow(r, "slug", e); },
         [](auto& r) { r.allow = {"slug"}; }},
        {"none allowed", [](auto* r, Error e) { return lode_recipe_clear_allowed(r, e); },
         [](auto& r) { r.allow.clear(); }},
        {"listed word",
         [](auto* r, Error e) { return lode_recipe_add_listed_word(r, "Chard", 9, "#c08030", e); },
         [](auto& r) {
             r.words.words.push_back({"Chard", 9, "#c08030"});
         }},
        {"listed word without a band",
         [](auto* r, Error e) { return lode_recipe_add_listed_word(r, "Endive", 0, nullptr, e); },
         [](auto& r) {
             r.words.words.push_back({"Endive", 0});
         }},
        {"listed word that is not marked",
         [](auto* r, Error e) { return lode_recipe_add_listed_word(r, "Sorrel", 0, "none", e); },
         [](auto& r) {
             r.words.words.push_back({"Sorrel", 0, "none"});
         }},
        {"no words", [](auto* r, Error e) { return lode_recipe_clear_words(r, e); },
         [](auto& r) { r.words.words.clear(); }},
    };
}

}  // namespace

TEST_CASE("what is asked of a recipe is what the C++ recipe holds", "[c]") {
    const auto recipe = garden_recipe();
    const auto puzzle = made(recipe.get());
    lode::Recipe judge = garden_in_cpp();
    for (const Asked& asked : all_asked(puzzle.get())) {
        INFO(asked.name);
        const std::string before = json_of(recipe.get());
        lode_error* error = nullptr;
        REQUIRE(asked.set(recipe.get(), &error) == LODE_OK);
        CHECK(error == nullptr);
        asked.set_in_cpp(judge);
        CHECK(json_of(recipe.get()) == lode::to_json(judge));
        CHECK(json_of(recipe.get()) != before);

        const auto failure = failure_of([&](Error e) { return asked.set(nullptr, e); });
        CHECK(failure.status == LODE_BROKEN_CALL);
        CHECK(contains(failure.message, "recipe is NULL"));
    }
}

TEST_CASE("what is asked of a recipe is what is made", "[c]") {
    const auto recipe = recipe_of("Leek\nKale\nBeet\nChard\n", 7, 7);
    auto* const r = recipe.get();
    REQUIRE(lode_recipe_pin(r, "Leek", 6, 3, LODE_RIGHT, nullptr) == LODE_OK);
    REQUIRE(lode_recipe_set_crossings(r, 0, 0, nullptr) == LODE_OK);
    REQUIRE(lode_recipe_set_message(r, "Wrenbarrow garden", nullptr) == LODE_OK);
    REQUIRE(lode_recipe_set_message_then(r, "filler", nullptr) == LODE_OK);
    const auto puzzle = made(r);
    std::int32_t row = 0, column = 0, direction = 0;
    REQUIRE(lode_puzzle_placement(&row, &column, &direction, puzzle.get(), 0, nullptr) == LODE_OK);
    CHECK(row == 6);
    CHECK(column == 3);
    CHECK(direction == LODE_RIGHT);

    // The next one differs in a word, and stands where it stood otherwise.
    Out<lode_recipe> next;
    REQUIRE(lode_puzzle_recipe(next, puzzle.get(), nullptr) == LODE_OK);
    REQUIRE(lode_recipe_set_earlier(next.get(), puzzle.get(), 1, nullptr) == LODE_OK);
    REQUIRE(lode_recipe_add_word(next.get(), "Fig", nullptr) == LODE_OK);
    const auto other = made(next.get());
    for (std::size_t word = 0; word < 4; ++word) {
        std::int32_t old_row = 0, old_column = 0, old_direction = 0;
        REQUIRE(lode_puzzle_placement(&old_row, &old_column, &old_direction, puzzle.get(), word, nullptr) ==
                LODE_OK);
        REQUIRE(lode_puzzle_placement(&row, &column, &direction, other.get(), word, nullptr) == LODE_OK);
        CHECK(row == old_row);
        CHECK(column == old_column);
        CHECK(direction == old_direction);
    }
}

TEST_CASE("a recipe's words can be read, and where they stood is told in a refusal", "[c]") {
    Out<lode_recipe> recipe;
    REQUIRE(lode_recipe_create(recipe, nullptr) == LODE_OK);
    auto* const r = recipe.get();
    CHECK(lode_recipe_word_count(r) == 0);
    REQUIRE(lode_recipe_set_words_source(r, "beds.csv", nullptr) == LODE_OK);
    REQUIRE(lode_recipe_add_listed_word(r, "Leek", 4, "tan", nullptr) == LODE_OK);
    REQUIRE(lode_recipe_add_listed_word(r, "B€t", 17, "", nullptr) == LODE_OK);
    CHECK(lode_recipe_word_count(r) == 2);
    CHECK(std::string(lode_recipe_word(r, 1)) == "B€t");
    CHECK(lode_recipe_word(r, 2) == nullptr);
    CHECK(lode_recipe_word(r, SIZE_MAX) == nullptr);
    CHECK(lode_recipe_word(nullptr, 0) == nullptr);
    CHECK(lode_recipe_word_count(nullptr) == 0);
    const auto refusal = refused(r);
    CHECK(std::string(lode_refusal_source(refusal.get())) == "beds.csv");
    CHECK(lode_refusal_line(refusal.get()) == 17);
    CHECK(lode_refusal_position(refusal.get()) == 2);

    REQUIRE(lode_recipe_set_words_source(r, nullptr, nullptr) == LODE_OK);
    REQUIRE(lode_recipe_clear_words(r, nullptr) == LODE_OK);
    CHECK(lode_recipe_word_count(r) == 0);
    REQUIRE(lode_recipe_set_words_text(r, "word,band\nLeek,tan\nKale,none\n", nullptr, nullptr) == LODE_OK);
    CHECK(contains(json_of(r), R"("band":"tan")"));
    CHECK(lode_recipe_word_count(r) == 2);
    CHECK(lode_recipe_seed(r) == 1);
    REQUIRE(lode_recipe_set_seed(r, UINT64_MAX, nullptr) == LODE_OK);
    CHECK(lode_recipe_seed(r) == UINT64_MAX);
    CHECK(lode_recipe_seed(nullptr) == 0);
}

TEST_CASE("a demand that no recipe can hold is refused at once, with a way out, and changes nothing", "[c]") {
    const auto recipe = garden_recipe();
    auto* const r = recipe.get();
    const std::string before = json_of(r);
    const auto check = [&](std::int32_t status, const std::string& part, auto call) {
        INFO(part);
        const Failure failure = failure_of(call);
        CHECK(failure.status == status);
        CHECK(contains(failure.message, part));
        CHECK((status == LODE_BROKEN_CALL || !failure.advice.empty()));
        CHECK(call(nullptr) == status);
        CHECK(json_of(r) == before);
    };
    const auto unusable = [&](const std::string& part, auto call) { check(LODE_UNUSABLE, part, call); };
    const auto broken = [&](const std::string& part, auto call) { check(LODE_BROKEN_CALL, part, call); };
    unusable("'outside'", [&](Error e) { return lode_recipe_set_nested(r, "outside", e); });
    unusable("'words'", [&](Error e) { return lode_recipe_set_message_then(r, "words", e); });
    unusable("'near'", [&](Error e) { return lode_recipe_set_look_alikes(r, "near", e); });
    unusable("aspect", [&](Error e) { return lode_recipe_set_grid_tight(r, 1e9, e); });
    for (const std::int32_t number : {-1, INT32_MIN, INT32_MAX, 21})
        unusable("spacing " + std::to_string(number),
                 [&](Error e) { return lode_recipe_set_spacing(r, number, e); });
    for (const std::int32_t number : {-1, INT32_MIN, INT32_MAX})
        unusable("longest run " + std::to_string(number),
                 [&](Error e) { return lode_recipe_set_longest_run(r, number, e); });
    for (const std::int32_t number : {-1, 0, 1001, INT32_MIN, INT32_MAX})
        unusable("choices " + std::to_string(number),
                 [&](Error e) { return lode_recipe_set_choices(r, number, e); });
    for (const std::int32_t number : {-1, 1'000'001, INT32_MIN, INT32_MAX})
        unusable("weight " + std::to_string(number),
                 [&](Error e) { return lode_recipe_set_share(r, LODE_UP, number, e); });
    for (const std::int32_t number : {-1, 20'000, INT32_MIN, INT32_MAX}) {
        unusable("row " + std::to_string(number),
                 [&](Error e) { return lode_recipe_pin(r, "Leek", number, 0, LODE_UP, e); });
        unusable("column " + std::to_string(number),
                 [&](Error e) { return lode_recipe_pin(r, "Leek", 0, number, LODE_UP, e); });
    }
    for (const std::int32_t direction : {-1, 8, INT32_MIN, INT32_MAX}) {
        broken(std::to_string(direction) + " is no direction",
               [&](Error e) { return lode_recipe_pin(r, "Leek", 0, 0, direction, e); });
        broken(std::to_string(direction) + " is no direction",
               [&](Error e) { return lode_recipe_set_share(r, direction, 1, e); });
    }
    for (const std::uint64_t number : {std::uint64_t{1'000'000'001}, UINT64_MAX})
        unusable(std::to_string(number),
                 [&](Error e) { return lode_recipe_set_letter_count(r, "A", number, e); });
    unusable("empty", [&](Error e) { return lode_recipe_set_letter_count(r, "", 1, e); });
    unusable("rain.txt: there is no letter",
             [&](Error e) { return lode_recipe_set_filler_text(r, "... !", "rain.txt", e); });
    unusable("mauvish", [&](Error e) { return lode_recipe_add_listed_word(r, "Fig", 1, "mauvish", e); });
    broken("-5 is no line", [&](Error e) { return lode_recipe_add_listed_word(r, "Fig", -5, "tan", e); });

    broken("rule for nested words is NULL", [&](Error e) { return lode_recipe_set_nested(r, nullptr, e); });
    broken("message is NULL", [&](Error e) { return lode_recipe_set_message(r, nullptr, e); });
    broken("is NULL", [&](Error e) { return lode_recipe_set_message_then(r, nullptr, e); });
    broken("text is NULL", [&](Error e) { return lode_recipe_set_filler_text(r, nullptr, "", e); });
    broken("letter is NULL", [&](Error e) { return lode_recipe_set_letter_count(r, nullptr, 1, e); });
    broken("is NULL", [&](Error e) { return lode_recipe_set_look_alikes(r, nullptr, e); });
    broken("word is NULL", [&](Error e) { return lode_recipe_pin(r, nullptr, 0, 0, 0, e); });
    broken("word is NULL", [&](Error e) { return lode_recipe_add_listed_word(r, nullptr, 0, "", e); });
    broken("puzzle is NULL", [&](Error e) { return lode_recipe_set_earlier(r, nullptr, 1, e); });

    for (const char* bytes : {"\xC3(", "\xC0\xAF", "\xED\xA0\x80", "\xFF", "caf\xE9"}) {
        unusable("", [&](Error e) { return lode_recipe_set_nested(r, bytes, e); });
        unusable("", [&](Error e) { return lode_recipe_set_message(r, bytes, e); });
        unusable("", [&](Error e) { return lode_recipe_set_message_then(r, bytes, e); });
        unusable("rain.txt: this is no UTF-8 text.",
                 [&](Error e) { return lode_recipe_set_filler_text(r, bytes, "rain.txt", e); });
        unusable("", [&](Error e) { return lode_recipe_set_letter_count(r, bytes, 1, e); });
        unusable("", [&](Error e) { return lode_recipe_set_look_alikes(r, bytes, e); });
        unusable("", [&](Error e) { return lode_recipe_pin(r, bytes, 0, 0, 0, e); });
        unusable("", [&](Error e) { return lode_recipe_add_listed_word(r, bytes, 0, nullptr, e); });
        unusable("", [&](Error e) { return lode_recipe_add_listed_word(r, "Fig", 0, bytes, e); });
    }
}

TEST_CASE("demands that cannot be met together, or are beyond any grid, are refused when a puzzle is made",
          "[c]") {
    const auto reason = [](const Setter& set) {
        const auto recipe = garden_recipe();
        REQUIRE(set(recipe.get(), nullptr) == LODE_OK);
        return lode_refusal_reason(refused(recipe.get()).get());
    };
    CHECK(reason([](auto* r, Error e) { return lode_recipe_set_crossings(r, 5, 2, e); }) ==
          LODE_REASON_UNUSABLE);
    CHECK(reason([](auto* r, Error e) { return lode_recipe_set_crossings(r, UINT64_MAX, UINT64_MAX, e); }) ==
          LODE_REASON_IMPOSSIBLE);
    CHECK(reason([](auto* r, Error e) { return lode_recipe_set_leftover(r, UINT64_MAX - 1, e); }) ==
          LODE_REASON_UNUSABLE);
    CHECK(reason([](auto* r, Error e) { return lode_recipe_pin(r, "Leek", 19'999, 0, LODE_UP, e); }) ==
          LODE_REASON_UNUSABLE);
    CHECK(reason([](auto* r, Error e) { return lode_recipe_pin(r, "Turnip", 0, 0, LODE_RIGHT, e); }) ==
          LODE_REASON_UNUSABLE);
    CHECK(reason([](auto* r, Error e) { return lode_recipe_set_share(r, LODE_RIGHT, 0, e); }) ==
          LODE_REASON_UNUSABLE);
    CHECK(reason([](auto* r, Error e) { return lode_recipe_set_letter_count(r, "A", 3, e); }) ==
          LODE_REASON_UNUSABLE);
}
