#pragma once
// JSON written from beginning to end into one text, for what is written by the thousand. Like json_text.hpp
// it builds no document.

#include <charconv>
#include <concepts>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "puzzle/json_text.hpp"

namespace lode {

class JsonWriter {
  public:
    // How an object or an array is laid out: on one line, or a line a member.
    enum class Layout { one_line, lines };

    explicit JsonWriter(std::size_t room) { text_.reserve(room); }

    void begin_object(Layout layout = Layout::one_line) { begin('{', layout); }
    void begin_array(Layout layout = Layout::one_line) { begin('[', layout); }
    void end_object() { end('}'); }
    void end_array() { end(']'); }

    // The name of an object's next member.
    void name(std::string_view name) {
        separate();
        append_string(name);
        text_ += open_.back().layout == Layout::lines ? ": " : ":";
        is_named_ = true;
    }

    void string(std::string_view value) {
        separate();
        append_string(value);
    }
    void number(std::integral auto value) {
        separate();
        char digits[24];
        text_.append(digits, std::to_chars(digits, digits + sizeof digits, value).ptr);
    }
    // What is JSON already.
    void json(std::string_view value) {
        separate();
        text_ += value;
    }
    void boolean(bool value) { json(value ? "true" : "false"); }

    void member(std::string_view its_name, std::string_view value) {
        name(its_name);
        string(value);
    }
    void member(std::string_view its_name, std::integral auto value) {
        name(its_name);
        if constexpr (std::same_as<decltype(value), bool>)
            boolean(value);
        else
            number(value);
    }
    void strings(const std::vector<std::string>& values) {
        begin_array();
        for (const auto& value : values) string(value);
        end_array();
    }

    // What was written, as a file ends: with a line end.
    [[nodiscard]] std::string take() {
        text_ += '\n';
        return std::move(text_);
    }

  private:
    struct Open {
        Layout layout;
        bool is_empty = true;
    };

    void begin(char bracket, Layout layout) {
        separate();
        text_ += bracket;
        open_.push_back({layout});
    }
    void end(char bracket) {
        const Open closed = open_.back();
        open_.pop_back();
        if (closed.layout == Layout::lines && !closed.is_empty) new_line();
        text_ += bracket;
    }
    // Before a value that stands in an array, and before a member's name.
    void separate() {
        if (is_named_ || open_.empty()) {
            is_named_ = false;
            return;
        }
        Open& here = open_.back();
        if (!here.is_empty) text_ += ',';
        here.is_empty = false;
        if (here.layout == Layout::lines) new_line();
    }
    void new_line() {
        text_ += '\n';
        text_.append(open_.size(), ' ');
    }
    void append_string(std::string_view value) {
        if (!append_plain_json_string(text_, value)) text_ += json_string(value);
    }

    std::string text_;
    std::vector<Open> open_;
    bool is_named_ = false;
};

}  // namespace lode
