// JSON as it is written by the thousand. What is written is read back by nlohmann/json, which also writes
// what is expected of strings.

#include <limits>
#include <random>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "puzzle/json_writer.hpp"

namespace {

using namespace lode;
using Json = nlohmann::ordered_json;
using Layout = JsonWriter::Layout;

// Writes a value by the writer's own calls, with layouts drawn.
void write(JsonWriter& writer, const Json& value, std::mt19937_64& random) {
    const auto layout = [&] { return random() % 2 == 0 ? Layout::one_line : Layout::lines; };
    if (value.is_object()) {
        writer.begin_object(layout());
        for (const auto& [name, member] : value.items()) {
            writer.name(name);
            write(writer, member, random);
        }
        writer.end_object();
    } else if (value.is_array()) {
        writer.begin_array(layout());
        for (const auto& element : value) write(writer, element, random);
        writer.end_array();
    } else if (value.is_string()) {
        writer.string(value.get<std::string>());
    } else if (value.is_boolean()) {
        writer.boolean(value.get<bool>());
    } else if (value.is_number_unsigned()) {
        writer.number(value.get<std::uint64_t>());
    } else if (value.is_number_integer()) {
        writer.number(value.get<std::int64_t>());
    } else {
        writer.json("null");
    }
}

std::string random_text(std::mt19937_64& random) {
    static const std::vector<std::string> parts{
        "a", "Sage", "\"", "\\", "\n", "\x7F", "\x01", "é", "\xF0\x9F\x8C\xBF", " ", ":"};
    std::string text;
    for (auto left = random() % 6; left > 0; --left) text += parts[random() % parts.size()];
    return text;
}

Json random_value(std::mt19937_64& random, int depth) {
    switch (random() % (depth > 0 ? 8 : 6)) {
        case 0:
            return nullptr;
        case 1:
            return random() % 2 == 0;
        case 2:
            return random() >> random() % 64;
        case 3:
            return -static_cast<std::int64_t>(random() >> (1 + random() % 63));
        case 4:
        case 5:
            return random_text(random);
        case 6: {
            Json all = Json::array();
            for (auto left = random() % 5; left > 0; --left) all.push_back(random_value(random, depth - 1));
            return all;
        }
        default: {
            Json all = Json::object();
            for (auto left = random() % 5; left > 0; --left)
                all[random_text(random)] = random_value(random, depth - 1);
            return all;
        }
    }
}

}  // namespace

TEST_CASE("what is written reads back as it was, whatever the layout and the room") {
    const auto seed = GENERATE(1u, 2u, 3u);
    CAPTURE(seed);
    std::mt19937_64 random(seed);
    for (int at = 0; at < 1'000; ++at) {
        const Json value = random_value(random, 6);
        JsonWriter writer(random() % 2 == 0 ? 0 : 10'000);
        write(writer, value, random);
        const std::string text = writer.take();
        CAPTURE(text);
        REQUIRE(text.ends_with('\n'));
        REQUIRE(Json::parse(text).dump() == value.dump());
    }
}

TEST_CASE("a line a member is indented by what is open, and the rest has no blanks") {
    JsonWriter writer(0);
    writer.begin_object(Layout::lines);
    writer.member("herb", "Sage");
    writer.name("beds");
    writer.begin_array(Layout::lines);
    writer.begin_array();
    writer.number(-12);
    writer.json("null");
    writer.end_array();
    writer.begin_object();
    writer.member("open", true);
    writer.member("row", std::numeric_limits<std::uint64_t>::max());
    writer.end_object();
    writer.end_array();
    writer.name("none");
    writer.begin_array(Layout::lines);
    writer.end_array();
    writer.name("names");
    writer.strings({"Mint", "\"Dill\""});
    writer.end_object();
    CHECK(writer.take() ==
          "{\n \"herb\": \"Sage\",\n \"beds\": [\n  [-12,null],\n  "
          "{\"open\":true,\"row\":18446744073709551615}\n ],\n"
          " \"none\": [],\n \"names\": [\"Mint\",\"\\\"Dill\\\"\"]\n}\n");
}
