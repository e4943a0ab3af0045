#include "puzzle/json_value.hpp"

#include <algorithm>

#include <nlohmann/json.hpp>

namespace lode {
namespace {

using Parser = nlohmann::json;
constexpr int number_out_of_range = 406;  // the JSON library's number for it

// Takes down what the parser tells. What is open stands on a stack: only the innermost grows, so that the
// others stay where they are.
class Builder {
  public:
    explicit Builder(std::string_view text) : text_(text) {}

    bool null() { return add(JsonValue()); }
    bool boolean(bool value) { return add(JsonValue(value)); }
    bool number_unsigned(std::uint64_t value) { return add(JsonValue(value)); }
    bool number_integer(std::int64_t value) { return add(JsonValue(static_cast<double>(value))); }
    bool number_float(double value, const std::string&) { return add(JsonValue(value)); }
    bool string(std::string& value) { return add(JsonValue(std::move(value))); }
    bool binary(Parser::binary_t&) { return false; }  // never in a text

    bool start_object(std::size_t) { return open(JsonValue(JsonValue::Object())); }
    bool start_array(std::size_t) { return open(JsonValue(JsonValue::Array())); }
    bool key(std::string& name) {
        open_.back()->object()->push_back({std::move(name), {}});
        return true;
    }
    bool end_object() { return close(); }
    bool end_array() { return close(); }

    bool parse_error(std::size_t byte, const std::string&, const Parser::exception& error) {
        if (error.id == number_out_of_range)
            throw JsonFault{"it holds a number that is too large for any use."};
        throw at_byte(byte);
    }

    JsonValue take() { return std::move(root_); }

  private:
    JsonValue& place(JsonValue value) {
        if (open_.empty()) return root_ = std::move(value);
        if (auto* array = open_.back()->array()) return array->emplace_back(std::move(value));
        return open_.back()->object()->back().value = std::move(value);
    }
    bool add(JsonValue value) {
        place(std::move(value));
        return true;
    }
    bool open(JsonValue value) {
        if (open_.size() == max_json_depth)
            throw JsonFault{"it is nested more than " + std::to_string(max_json_depth) + " levels deep."};
        open_.push_back(&place(std::move(value)));
        return true;
    }
    bool close() {
        open_.pop_back();
        return true;
    }

    // A column is a character, of which UTF-8 marks the first byte. `byte` counts from 1, and is one too many
    // where the text ends too early.
    [[nodiscard]] JsonFault at_byte(std::size_t byte) const {
        const std::string_view before = text_.substr(0, byte == 0 ? 0 : byte - 1);
        const auto line = 1 + std::count(before.begin(), before.end(), '\n');
        const std::string_view row = before.substr(before.rfind('\n') + 1);
        const auto column =
            1 + std::count_if(row.begin(), row.end(), [](char unit) { return (unit & '\xC0') != '\x80'; });
        return {"this is no JSON: it goes wrong at column " + std::to_string(column) + ".",
                static_cast<int>(line), static_cast<int>(column)};
    }

    std::string_view text_;
    JsonValue root_;
    std::vector<JsonValue*> open_;
};

}  // namespace

std::optional<double> JsonValue::number() const {
    if (const auto* whole = whole_number()) return static_cast<double>(*whole);
    if (const auto* real = std::get_if<double>(&held_)) return *real;
    return std::nullopt;
}

const JsonValue* JsonValue::find(std::string_view name) const {
    const auto* members = object();
    if (!members) return nullptr;
    for (auto member = members->rbegin(); member != members->rend(); ++member)
        if (member->name == name) return &member->value;
    return nullptr;
}

JsonValue parse_json(std::string_view text) {
    Builder builder(text);
    Parser::sax_parse(text, &builder);
    return builder.take();
}

}  // namespace lode
