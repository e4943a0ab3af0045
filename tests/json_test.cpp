// Puzzles and recipes as JSON: what is written is read back, and what is no puzzle is refused, whatever it
// is.

#include <catch2/catch.hpp>
#include <cmath>

#include <letterlode/puzzle.hpp>
#include <nlohmann/json.hpp>

#include "random/random.hpp"
#include "support/grids.hpp"
#include "support/recipes.hpp"

using namespace lode;
using namespace lode::test;
using Catch::Matchers::Contains;
using Json = nlohmann::ordered_json;

namespace {

Puzzle made(const Recipe& recipe) {
    auto puzzle = make(recipe);
    REQUIRE(puzzle);
    return std::move(puzzle).value();
}

void reads_back(const Recipe& recipe) {
    const Puzzle puzzle = made(recipe);
    const std::string json = to_json(puzzle);
    const auto read = puzzle_from_json(json, "sign.json");
    REQUIRE(read);
    CHECK(to_json(*read) == json);
    CHECK(read->words == puzzle.words);
    CHECK(read->audit.certified);
    CHECK(grid_text(read->grid.grid, read->grid.alphabet) ==
          grid_text(puzzle.grid.grid, puzzle.grid.alphabet));
    // Its recipe makes it again, to the byte.
    CHECK(to_json(made(read->recipe)) == json);
    const auto read_recipe = recipe_from_json(to_json(recipe), "recipe.json");
    REQUIRE(read_recipe);
    CHECK(to_json(*read_recipe) == to_json(recipe));
    CHECK(to_json(made(*read_recipe)) == json);
}

// The reading must end in a value or in a refusal with a message, and in nothing else.
bool is_read(const std::string& json) {
    const auto puzzle = puzzle_from_json(json, "hostile.json");
    const auto recipe = recipe_from_json(json, "hostile.json");
    for (const auto* refusal : {puzzle ? nullptr : &puzzle.refusal(), recipe ? nullptr : &recipe.refusal()}) {
        if (!refusal) continue;
        CHECK(refusal->reason == Refusal::Reason::unusable);
        CHECK_FALSE(refusal->message.empty());
        CHECK_FALSE(refusal->advice.empty());
        CHECK(refusal->source == "hostile.json");
        CHECK_NOTHROW(to_json(*refusal));
    }
    return bool(puzzle);
}

const std::string& right_text() {
    static const std::string text = [] {
        Recipe recipe = recipe_of({"Rake", "Hoe", "Spade"}, Size{5, 6});
        recipe.avoid = {"weed"};
        recipe.allow = {"slug"};
        return to_json(made(recipe));
    }();
    return text;
}

// Each value in the document, with what may be put there.
template <class Visit>
void each_pointer(const Json& json, const Json::json_pointer& at, Visit visit) {
    visit(at);
    if (json.is_object())
        for (const auto& [key, value] : json.items()) each_pointer(value, at / key, visit);
    if (json.is_array())
        for (std::size_t index = 0; index < json.size(); ++index)
            each_pointer(json[index], at / index, visit);
}

Refusal refused(const Json& document) {
    const auto puzzle = puzzle_from_json(document.dump(), "sign.json");
    REQUIRE_FALSE(puzzle);
    return puzzle.refusal();
}

Json with(const std::string& pointer, const Json& value) {
    Json document = Json::parse(right_text());
    document[Json::json_pointer(pointer)] = value;
    return document;
}

}  // namespace

TEST_CASE("puzzles are read back byte for byte, and their recipes make them again") {
    reads_back(recipe_of({"Rake", "Hoe", "Spade"}));
    Recipe masked = recipe_of({"Saint-Malo", "Lamb's ear", "LEVEL", "Jalapeño"});
    masked.mask = read_mask(data_file("samples/shed-mask.txt"), "").value();
    masked.seed = 18446744073709551615u;
    reads_back(masked);
    Recipe german = recipe_of({"Straße", "Grün", "Öl"}, Size{6, 7});
    german.text = {"de", LetterCase::lower};
    german.default_avoid_list = true;
    german.shape = Shape::heart;
    reads_back(german);
    Recipe marked = recipe_of({"Rake", "Bed \"A\"", "Spade"});
    marked.words.words[0].band = "SeaGreen";
    marked.words.words[1].band = "none";
    reads_back(marked);
    CHECK(recipe_from_json(to_json(marked), "").value().words.words[1].band == "none");
    Recipe greek = recipe_of({"άλφα", "βήτα", "ΟΔΟΣ"});
    greek.text.locale = "el";
    greek.directions.reset();
    reads_back(greek);
    Recipe hebrew = recipe_of({"שלום", "גינה", "צל"});
    hebrew.text.locale = "he";
    hebrew.directions.reset();
    hebrew.aspect = 1.5;
    reads_back(hebrew);
    Recipe hindi = recipe_of({"हिन्दी", "नमस्ते"});
    hindi.text = {"hi", LetterCase::keep};
    hindi.avoid = {"\"quoted\\", "tab\there"};
    reads_back(hindi);
    Recipe welsh = recipe_of({"Ban|gor", "llong", "Caffè"});
    welsh.text = {"cy"};
    reads_back(welsh);
    welsh.text = {"cy", LetterCase::lower, Digraphs::split, SharpS::keep, Marks::strip, Finals::fold};
    reads_back(welsh);
    CHECK(to_json(welsh).find("\"digraphs\": \"split\"") != std::string::npos);
}

TEST_CASE("the audit that a file brings is not believed") {
    Json document = Json::parse(right_text());
    document["audit"]["certified"] = false;
    CHECK(puzzle_from_json(document.dump(), "")->audit.certified);

    document = Json::parse(right_text());
    const auto& word = document["words"][0];
    const auto row = word["placed"]["row"].get<std::size_t>() - 1;
    const auto column = word["placed"]["column"].get<std::size_t>() - 1;
    document["cells"][row][column] = "Q";
    const auto faulty = puzzle_from_json(document.dump(), "");
    REQUIRE(faulty);
    CHECK_FALSE(faulty->audit.certified);
    CHECK(faulty->audit.missing == std::vector<std::string>{"Rake"});
}

TEST_CASE("a puzzle whose words are not those of its recipe is refused") {
    Json document = Json::parse(right_text());
    document["words"] = Json::array();
    CHECK_THAT(refused(document).message, Contains("words"));
    document = Json::parse(right_text());
    document["words"].erase(1);
    CHECK_THAT(refused(document).message, Contains("words"));
    CHECK_THAT(refused(with("/words/0/shown", "Hoe")).message, Contains("words[1]"));
    CHECK_THAT(refused(with("/words/2/letters/0", "X")).message, Contains("words[3]"));
    CHECK_THAT(refused(with("/recipe/words/1", "x")).message, Contains("'x'"));
    CHECK_THAT(refused(with("/recipe/words", {"Rake", "Hoe", "Spade", "Fork"})).message, Contains("words"));
    document = Json::parse(right_text());
    document["words"][0].swap(document["words"][1]);
    CHECK_THAT(refused(document).message, Contains("words[1]"));
}

TEST_CASE("faults of a document are named with their place in it") {
    for (const auto& [pointer, value, said] : std::vector<std::tuple<std::string, Json, std::string>>{
             {"/format", "letterlode-audit", "format"},
             {"/version", 2, "version"},
             {"/rows", 0, "rows"},
             {"/rows", 4, "cells"},
             {"/columns", 1e9, "columns"},
             {"/columns", -6, "columns"},
             {"/columns", 6.5, "columns"},
             {"/cells", "text", "cells"},
             {"/cells/1", nullptr, "cells[2]"},
             {"/cells/1/2", 7, "cells[2][3]"},
             {"/cells/1/2", "AB☃", "cells[2][3]"},
             {"/cells/1/2", "a", "cells[2][3]"},
             {"/cells/1/2", "", "cells[2][3]"},
             {"/cells/1/2", " ", "cells[2][3]"},
             {"/words", 3, "words"},
             {"/words/1/placed", "here", "words[2].placed"},
             {"/words/1/placed/direction", "east", "words[2].placed.direction"},
             {"/words/1/placed/row", 6, "words[2].placed"},
             {"/words/1/placed/column", 20001, "words[2].placed.column"},
             {"/words/1/letters", {"H"}, "words[2]"},
             {"/words/1/letters/0", 1, "words[2].letters[1]"},
             {"/recipe", nullptr, "recipe"},
             {"/recipe/words", "Rake", "recipe.words"},
             {"/recipe/words/0", 1, "recipe.words[1]"},
             {"/recipe/locale", "no such", "recipe.locale"},
             {"/recipe/letters", "capital", "recipe.letters"},
             {"/recipe/grid", "0x3", "recipe.grid"},
             {"/recipe/grid", "100000x100000", "recipe.grid"},
             {"/recipe/grid", 15, "recipe.grid"},
             {"/recipe/aspect", "wide", "recipe.aspect"},
             {"/recipe/aspect", -1, "aspect"},
             {"/recipe/shape", "circle", "recipe.shape"},
             {"/recipe/mask", {"...", "..."}, "recipe.mask"},
             {"/recipe/mask", {"O+O"}, "recipe.mask"},
             {"/recipe/mask", 5, "recipe.mask"},
             {"/recipe/directions", {"right", "east"}, "recipe.directions[2]"},
             {"/recipe/directions", "right", "recipe.directions"},
             {"/recipe/seed", -1, "recipe.seed"},
             {"/recipe/seed", 1.5, "recipe.seed"},
             {"/recipe/seed", "1", "recipe.seed"},
             {"/recipe/default_avoid_list", "no", "recipe.default_avoid_list"},
             {"/recipe/filler", "at random", "recipe.filler"},
             {"/recipe/filler", 5, "recipe.filler"},
             {"/recipe/letter_counts", {"A", 5}, "recipe.letter_counts"},
             {"/recipe/letter_counts", {{"A", -5}}, "recipe.letter_counts.A"},
             {"/recipe/longest_run", -1, "recipe.longest_run"},
             {"/recipe/look_alikes", "far", "recipe.look_alikes"},
             {"/recipe/message_then", true, "recipe.message_then"},
             {"/recipe/avoid", "weed", "recipe.avoid"},
             {"/recipe/avoid", {1}, "recipe.avoid[1]"},
             {"/recipe/avoid", {"x"}, "avoid"},
             {"/recipe/effort", -5, "recipe.effort"}}) {
        CAPTURE(pointer, value);
        const Refusal refusal = refused(with(pointer, value));
        CHECK(refusal.reason == Refusal::Reason::unusable);
        CHECK_THAT(refusal.message, Contains("sign.json: ") && Contains(said));
        CHECK_FALSE(refusal.advice.empty());
    }
}

TEST_CASE("a document that lacks a member is refused, but for those that have defaults") {
    for (const std::string pointer :
         {"/format", "/version", "/recipe", "/rows", "/columns", "/cells", "/words", "/recipe/words",
          "/words/0/shown", "/words/0/letters", "/words/0/placed", "/words/0/placed/row",
          "/words/0/placed/column", "/words/0/placed/direction"}) {
        Json document = Json::parse(right_text());
        const Json::json_pointer at(pointer);
        document[at.parent_pointer()].erase(at.back());
        CAPTURE(pointer);
        CHECK_THAT(refused(document).message, Contains(at.back()));
    }
    for (const std::string key : {"locale", "letters", "grid", "shape", "directions", "seed",
                                  "default_avoid_list", "avoid", "allow", "effort"}) {
        Json document = Json::parse(right_text());
        document["recipe"].erase(key);
        CAPTURE(key);
        CHECK(puzzle_from_json(document.dump(), ""));
    }
    Json document = Json::parse(right_text());
    document["recipe"]["added later"] = {{"by", "another version"}};
    document.erase("audit");
    CHECK(puzzle_from_json(document.dump(), ""));
}

TEST_CASE("another kind of value at any place of a document is read or refused, and nothing else") {
    const Json right = Json::parse(right_text());
    const std::vector<Json> values{nullptr,
                                   true,
                                   0,
                                   -1,
                                   1e300,
                                   18446744073709551615u,
                                   "",
                                   "A",
                                   std::string(3'000, 'A'),
                                   std::string("\0\x1B\n", 3),
                                   Json::array(),
                                   Json::object(),
                                   {"A", "A"},
                                   {{"row", 1}}};
    long refusals = 0;
    long readings = 0;
    each_pointer(right, Json::json_pointer(), [&](const Json::json_pointer& at) {
        for (const auto& value : values) {
            Json document = right;
            document[at] = value;
            CAPTURE(at.to_string(), value.dump().substr(0, 40));
            ++(is_read(document.dump()) ? readings : refusals);
        }
    });
    CHECK(refusals > 500);
    CHECK(readings > 100);
}

TEST_CASE("text that is no JSON is refused with the line and the column at which it goes wrong") {
    for (const std::string text :
         {"", " ", "{", "[", "nul", "{\"a\":1,}", "{\"a\" 1}", "\"open", "\"\\ud800\"", "{} x", "\xFF\xFE",
          "{\"a\":\"\x80\"}", "'a'", "{\"a\":01}", "\xEF\xBB\xBF", "1e", "-"}) {
        CAPTURE(text);
        CHECK_FALSE(is_read(text));
        const Refusal refusal = puzzle_from_json(text, "").refusal();
        CHECK(refusal.line == 1);
        CHECK(refusal.position > 0);
        CHECK_THAT(refusal.message,
                   Contains("line 1: ") && Contains("column " + std::to_string(refusal.position) + "."));
    }
    // The Ü is one column, and the first byte that no JSON has is the 4 of the second line.
    const Refusal refusal = recipe_from_json("{\n \"Ü\" 4}", "beds.json").refusal();
    CHECK(refusal.line == 2);
    CHECK(refusal.position == 6);
    CHECK_THAT(refusal.message, Contains("beds.json:2: ") && Contains("column 6."));
    CHECK(is_read("\xEF\xBB\xBF" + right_text()));
}

TEST_CASE("numbers that fit no type are refused") {
    for (const char* number : {"1e400", "-1e400", "1e999999999", "18446744073709551616",
                               "99999999999999999999999999", "-9223372036854775809"}) {
        for (const char* key : {"aspect", "seed", "effort"}) {
            const std::string text = std::string("{\"words\":[\"AB\"],\"") + key + "\":" + number + "}";
            CAPTURE(text);
            const auto recipe = recipe_from_json(text, "");
            if (recipe) {
                CHECK(std::string(key) == "aspect");
                CHECK_FALSE(make(*recipe));
            }
        }
    }
}

TEST_CASE("deep nesting is refused, and falls over nothing") {
    for (const std::string open : {"[", "{\"a\":", "[{\"words\":["}) {
        std::string deep;
        for (int level = 0; level < 100'000; ++level) deep += open;
        CHECK_FALSE(is_read(deep));
        CHECK_FALSE(is_read("{\"words\":" + deep));
    }
    const std::string closed = std::string(100'000, '[') + std::string(100'000, ']');
    CHECK_FALSE(is_read(closed));
    CHECK_FALSE(recipe_from_json("{\"words\":" + closed + "}", ""));
    // In a member that only later versions know, too; sixty levels are more than any of them will have.
    const std::string recipe = "{\"words\":[\"AB\"],\"later\":";
    CHECK_THAT(recipe_from_json(recipe + closed + "}", "").refusal().message, Contains("64 levels deep"));
    CHECK(recipe_from_json(recipe + std::string(60, '[') + std::string(60, ']') + "}", ""));
}

TEST_CASE("a document cut short or with one byte changed is read or refused, and nothing else") {
    const std::string& right = right_text();
    for (std::size_t end = 0; end < right.size(); end += 1 + end / 300) is_read(right.substr(0, end));
    Random random(1);
    long readings = 0;
    for (int round = 0; round < 3000; ++round) {
        std::string text = right;
        text[random.below(static_cast<std::uint32_t>(text.size()))] = static_cast<char>(random.below(256));
        readings += is_read(text) ? 1 : 0;
    }
    CHECK(readings > 100);
}

TEST_CASE("refusals are written with all that is known, and bytes that are no text are replaced") {
    Refusal refusal{Refusal::Reason::impossible, "no\xFF way", {"A\"B"}, {"try"}, "beds.txt", 7, 3};
    const Json json = Json::parse(to_json(refusal));
    CHECK(json["format"] == "letterlode-refusal");
    CHECK(json["reason"] == "impossible");
    CHECK(json["message"] == "no\uFFFD way");
    CHECK(json["words"][0] == "A\"B");
    CHECK(json["source"] == "beds.txt");
    CHECK(json["line"] == 7);
    CHECK(json["position"] == 3);
    refusal.reason = Refusal::Reason::unfinished;
    refusal.source.clear();
    refusal.line = 0;
    refusal.position = 0;
    const Json less = Json::parse(to_json(refusal));
    CHECK(less["reason"] == "unfinished");
    CHECK_FALSE(less.contains("source"));
    CHECK_FALSE(less.contains("line"));
    CHECK_FALSE(less.contains("position"));
}

TEST_CASE("rows and columns count from 1 in JSON, and a copy tells its last cell") {
    const Json json = Json::parse(to_json(audit(lettered({"XHOE"}), recipe_of({"HOE"})).value()));
    const Json& copy = json["words"][0]["copies"][0];
    CHECK(copy["row"] == 1);
    CHECK(copy["column"] == 2);
    CHECK(copy["direction"] == "right");
    CHECK(copy["last"]["row"] == 1);
    CHECK(copy["last"]["column"] == 4);
    CHECK(json["certified"] == true);
}
