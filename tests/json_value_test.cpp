// Documents as values. The judge is the JSON library's own document.

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "puzzle/json_text.hpp"
#include "puzzle/json_value.hpp"
#include "random/random.hpp"

using namespace lode;

namespace {

using Judge = nlohmann::ordered_json;

// The value as the judge would hold it.
Judge judged(const JsonValue& value) {
    if (value.is_null()) return nullptr;
    if (value.boolean()) return *value.boolean();
    if (value.whole_number()) return *value.whole_number();
    if (value.number()) return *value.number();
    if (value.string()) return *value.string();
    if (const auto* array = value.array()) {
        Judge all = Judge::array();
        for (const auto& element : *array) all.push_back(judged(element));
        return all;
    }
    Judge all = Judge::object();
    for (const auto& [name, member] : *value.object()) all[name] = judged(member);
    return all;
}

// Any document, of the bytes of the random numbers.
Judge any_document(Random& random, int depth) {
    switch (random.below(depth > 0 ? 8 : 6)) {
        case 0:
            return nullptr;
        case 1:
            return random.below(2) == 0;
        case 2:
            return (std::uint64_t{random.below(UINT32_MAX)} << 32) + random.below(UINT32_MAX);
        case 3:
            return random.below(UINT32_MAX) / 1024.0;
        case 4:
            return std::string(random.below(4), 'a') + "\"\\\n\u00E9\u0001";
        case 5:
            return "";
        case 6: {
            Judge array = Judge::array();
            for (auto left = random.below(5); left > 0; --left)
                array.push_back(any_document(random, depth - 1));
            return array;
        }
        default: {
            Judge object = Judge::object();
            for (auto left = random.below(5); left > 0; --left)
                object["name " + std::to_string(random.below(9))] = any_document(random, depth - 1);
            return object;
        }
    }
}

}  // namespace

TEST_CASE("documents are read as another reader reads them") {
    Random random(2024);
    for (int count = 0; count < 2000; ++count) {
        const Judge document = any_document(random, 5);
        CHECK(judged(parse_json(document.dump())) == document);
        CHECK(judged(parse_json(document.dump(2))) == document);
    }
}

TEST_CASE("numbers below zero and with fractions are numbers, and no whole ones") {
    for (const char* text : {"-1", "-9223372036854775808", "1.5", "1e3", "-0"}) {
        const JsonValue value = parse_json(text);
        INFO(text);
        CHECK_FALSE(value.whole_number());
        REQUIRE(value.number());
        CHECK(*value.number() == Judge::parse(text).get<double>());
    }
    CHECK(*parse_json("18446744073709551615").whole_number() == 18446744073709551615u);
    CHECK_FALSE(parse_json("18446744073709551616").whole_number());
    CHECK_THROWS_AS(parse_json("1e999"), JsonFault);
}

TEST_CASE("of two members of one name the later one counts") {
    const JsonValue value = parse_json(R"({"seed":1,"seed":2})");
    REQUIRE(value.find("seed"));
    CHECK(*value.find("seed")->whole_number() == 2);
    CHECK(value.find("Seed") == nullptr);
    CHECK(parse_json("[1]").find("seed") == nullptr);
}

TEST_CASE("what is no JSON, or nested too deep, is no document") {
    for (const char* text :
         {"", " ", "{", "[1,]", "{\"a\"}", "nul", "\"\xC3(\"", "\"\t\"", "1 2", "NaN", "'a'"})
        CHECK_THROWS_AS(parse_json(text), JsonFault);
    const auto nested = [](std::size_t levels) {
        return std::string(levels, '[') + std::string(levels, ']');
    };
    CHECK(parse_json(nested(max_json_depth)).array());
    CHECK_THROWS_AS(parse_json(nested(max_json_depth + 1)), JsonFault);
}

TEST_CASE("composed JSON is what another writer writes") {
    for (const std::string text : {"", "a", "\"\\/\b\f\n\r\t\x01\x1F\x7F", "\u00E9\u20AC\U0001F331"})
        CHECK(json_string(text) == Judge(text).dump());
    CHECK(json_string("caf\xE9!") == "\"caf\uFFFD!\"");
    for (const double number : {1.0, 0.1, 1.5, 100.0, 0.010000000000000002})
        CHECK(json_number(number) == Judge(number).dump());
    CHECK(json_strings({}) == "[]");
    CHECK(json_strings({"a", "b"}) == Judge({"a", "b"}).dump());
    CHECK(json_object({}) == "{}");
    CHECK(json_object({{"a", "1"}, {"b\n", json_bool(false)}}) == Judge({{"a", 1}, {"b\n", false}}).dump());
    CHECK(json_array_in_lines({}) == "[]");
    CHECK(json_array_in_lines({"1", "2"}) == "[\n  1,\n  2\n ]");
    CHECK(json_document({{"a", "1"}, {"b", "[]"}}) == "{\n \"a\": 1,\n \"b\": []\n}\n");
}
