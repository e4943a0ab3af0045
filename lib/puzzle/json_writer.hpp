#pragma once
// JSON written from beginning to end into one text, for what is written by the thousand. Like json_text.hpp
// it builds no document. A puzzle is some thousand names, texts and numbers of a few bytes each: every one is
// put into room that is there already, without a call, and names that stand in the program are not searched
// for what must be escaped. Judged by tests/json_writer_test.cpp.

#include <algorithm>
#include <array>
#include <charconv>
#include <concepts>
#include <cstdint>
#include <cstring>
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

    // For about so many bytes: more take time alone.
    explicit JsonWriter(std::size_t room) : text_(std::max(room, std::size_t{64}), '\0') {
        at_ = text_.data();
        end_ = at_ + text_.size();
    }
    JsonWriter(const JsonWriter&) = delete;
    JsonWriter& operator=(const JsonWriter&) = delete;

    void begin_object(Layout layout = Layout::one_line) { begin('{', layout); }
    void begin_array(Layout layout = Layout::one_line) { begin('[', layout); }
    void end_object() { end('}'); }
    void end_array() { end(']'); }

    // The name of an object's next member: any text, or one of the program's own, which needs no escapes.
    void name(std::string_view name) {
        string(name);
        put_colon(room(most_in_colon));
    }
    template <std::size_t size>
    void name(const char (&name)[size]) {
        constexpr std::size_t length = size - 1;  // without the zero
        char* const to = next(length + 2 + most_in_colon);
        *to = '"';
        std::memcpy(to + 1, name, length);
        to[length + 1] = '"';
        put_colon(to + length + 2);
    }

    void string(std::string_view value) {
        char* const to = next(value.size() + 2);
        bool is_plain = true;
        for (std::size_t at = 0; at < value.size(); ++at) {
            to[at + 1] = value[at];
            is_plain &= plain_bytes[static_cast<unsigned char>(value[at])];
        }
        if (!is_plain) return put_escaped(to, value);
        to[0] = '"';
        to[value.size() + 1] = '"';
        at_ = to + value.size() + 2;
    }
    void number(std::integral auto value) {
        constexpr std::size_t most_digits = 24;
        char* const to = next(most_digits);
        at_ = std::to_chars(to, to + most_digits, value).ptr;
    }
    // What is JSON already.
    void json(std::string_view value) {
        char* const to = next(value.size());
        at_ = std::copy(value.begin(), value.end(), to);
    }
    void boolean(bool value) { json(value ? "true" : "false"); }

    template <class Name>
    void member(const Name& its_name, std::string_view value) {
        name(its_name);
        string(value);
    }
    template <class Name>
    void member(const Name& its_name, std::integral auto value) {
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
        *room(1) = '\n';
        text_.resize(static_cast<std::size_t>(at_ + 1 - text_.data()));
        return std::move(text_);
    }

  private:
    // Where so many bytes can be written.
    [[nodiscard]] char* room(std::size_t bytes) {
        if (static_cast<std::size_t>(end_ - at_) < bytes) grow(bytes);
        return at_;
    }
    [[gnu::noinline]] void grow(std::size_t bytes) {
        const auto used = static_cast<std::size_t>(at_ - text_.data());
        text_.resize(2 * text_.size() + bytes);
        at_ = text_.data() + used;
        end_ = text_.data() + text_.size();
    }

    // Writes what stands before a value or a member's name, and says where its so many bytes go. Nearly all
    // stand on one line, and for them there is no choice to be made: the comma is written, and where none is
    // due the value is written over it.
    [[nodiscard]] char* next(std::size_t bytes) {
        if (in_lines()) return next_in_lines(bytes);
        char* const to = room(bytes + 1);
        *to = ',';
        return to + std::exchange(commas_, 1);
    }
    [[nodiscard, gnu::noinline]] char* next_in_lines(std::size_t bytes) {
        char* to = room(bytes + 1 + most_in_new_line());
        if (std::exchange(is_named_, false)) {
            commas_ = 1;
            return to;
        }
        *to = ',';
        return new_line(to + std::exchange(commas_, 1));
    }
    [[nodiscard]] std::size_t most_in_new_line() const { return 1 + open_; }
    [[nodiscard]] char* new_line(char* to) const {
        *to = '\n';
        return std::fill_n(to + 1, open_, ' ');
    }
    // Whether the innermost object or array has a line a member.
    [[nodiscard]] bool in_lines() const { return (lines_ & 1) != 0; }

    void begin(char bracket, Layout layout) {
        char* const to = next(1);
        *to = bracket;
        at_ = to + 1;
        ++open_;
        lines_ = lines_ << 1 | (layout == Layout::lines ? 1 : 0);
        commas_ = 0;
        is_named_ = false;
    }
    void end(char bracket) {
        const bool had_lines = in_lines() && commas_ > 0;
        --open_;
        lines_ >>= 1;
        char* to = room(1 + most_in_new_line());
        if (had_lines) to = new_line(to);
        *to = bracket;
        at_ = to + 1;
        commas_ = 1;  // before what follows it
        is_named_ = false;
    }
    static constexpr std::size_t most_in_colon = 2;
    // Where there is room for it.
    void put_colon(char* to) {
        to[0] = ':';
        to[1] = ' ';
        at_ = to + (in_lines() ? 2 : 1);
        commas_ = 0;
        is_named_ = true;
    }
    // Instead of what was put there.
    void put_escaped(char* to, std::string_view value) {
        const std::string escaped = json_string(value);
        at_ = to;
        at_ = std::copy(escaped.begin(), escaped.end(), room(escaped.size()));
    }

    static constexpr auto plain_bytes = [] {
        std::array<bool, 256> plain{};
        for (std::size_t byte = 0; byte < plain.size(); ++byte)
            plain[byte] = is_plain_in_json(static_cast<char>(byte));
        return plain;
    }();

    std::string text_;  // to end_; what lies behind at_ is yet to be written
    char* at_;
    char* end_;
    std::size_t open_ = 0;     // objects and arrays, up to 64
    std::uint64_t lines_ = 0;  // which of them have a line a member: a bit each, the innermost lowest
    std::size_t commas_ = 0;   // before what comes next: one or none
    bool is_named_ = false;    // what comes next is a member's value; known where members have lines
};

}  // namespace lode
