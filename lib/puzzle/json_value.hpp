#pragma once
// A JSON document as values. The JSON library parses it; its own values are not used, since they ask for
// memory where they are destroyed, and a program whose memory has run out would end there.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace lode {

class JsonValue {
  public:
    struct Member;
    using Array = std::vector<JsonValue>;
    using Object = std::vector<Member>;  // in the document's order; of two of one name the later one counts

    JsonValue() = default;  // null
    template <class T>
    explicit JsonValue(T value) : held_(std::move(value)) {}

    // What it holds, or nothing where it holds something else.
    [[nodiscard]] bool is_null() const { return std::holds_alternative<std::monostate>(held_); }
    [[nodiscard]] const bool* boolean() const { return std::get_if<bool>(&held_); }
    [[nodiscard]] const std::uint64_t* whole_number() const { return std::get_if<std::uint64_t>(&held_); }
    [[nodiscard]] std::optional<double> number() const;
    [[nodiscard]] const std::string* string() const { return std::get_if<std::string>(&held_); }
    [[nodiscard]] const Array* array() const { return std::get_if<Array>(&held_); }
    [[nodiscard]] const Object* object() const { return std::get_if<Object>(&held_); }
    // The member of an object, or nothing.
    [[nodiscard]] const JsonValue* find(std::string_view name) const;

    [[nodiscard]] Array* array() { return std::get_if<Array>(&held_); }
    [[nodiscard]] Object* object() { return std::get_if<Object>(&held_); }

  private:
    std::variant<std::monostate, bool, std::uint64_t, double, std::string, Array, Object> held_;
};

struct JsonValue::Member {
    std::string name;
    JsonValue value;
};

// Why a text is no document: a sentence, and where it goes wrong, if that is known: line and column from 1.
struct JsonFault {
    std::string what;
    int line = 0;
    int column = 0;
};

// Deeper nesting is refused: the formats of this project need six levels.
inline constexpr std::size_t max_json_depth = 64;

// Throws JsonFault for what is no JSON (RFC 8259), too deep, or holds a number that no double holds.
[[nodiscard]] JsonValue parse_json(std::string_view text);

}  // namespace lode
