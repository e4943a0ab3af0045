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
    // Objects and arrays that can be open at once.
    static constexpr std::size_t most_open = 64;

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
        at_ = next(0);
        put_string(name);
        put_colon();
    }
    template <std::size_t size>
    void name(const char (&name)[size]) {
        constexpr std::size_t length = size - 1;  // without the zero
        char* const to = next(length + 2);
        *to = '"';
        std::memcpy(to + 1, name, length);
        to[length + 1] = '"';
        at_ = to + length + 2;
        put_colon();
    }

    void string(std::string_view value) {
        at_ = next(0);
        put_string(value);
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
    void grow(std::size_t bytes) {
        const auto used = static_cast<std::size_t>(at_ - text_.data());
        text_.resize(2 * text_.size() + bytes);
        at_ = text_.data() + used;
        end_ = text_.data() + text_.size();
    }

    // Writes what stands before a value or a member's name, and says where its so many bytes go.
    [[nodiscard]] char* next(std::size_t bytes) {
        char* to = room(bytes + separator_bytes());
        if (is_named_) {
            is_named_ = false;
            return to;
        }
        if (has_members_) *to++ = ',';
        has_members_ = true;
        return in_lines() ? new_line(to) : to;
    }
    [[nodiscard]] std::size_t separator_bytes() const { return open_ + 2; }
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
        has_members_ = false;
    }
    void end(char bracket) {
        const bool were_lines = in_lines();
        --open_;
        lines_ >>= 1;
        char* to = room(separator_bytes());
        if (were_lines && has_members_) to = new_line(to);
        *to = bracket;
        at_ = to + 1;
        has_members_ = true;  // of what is around it
    }
    void put_colon() {
        char* const to = room(2);
        to[0] = ':';
        to[1] = ' ';
        at_ = to + (in_lines() ? 2 : 1);
        is_named_ = true;
    }
    void put_string(std::string_view value) {
        char* const to = room(value.size() + 2);
        bool is_plain = true;
        for (std::size_t at = 0; at < value.size(); ++at) {
            to[at + 1] = value[at];
            is_plain &= plain_bytes[static_cast<unsigned char>(value[at])];
        }
        if (!is_plain) return put_escaped(value);
        to[0] = '"';
        to[value.size() + 1] = '"';
        at_ = to + value.size() + 2;
    }
    void put_escaped(std::string_view value) {
        const std::string escaped = json_string(value);
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
    std::size_t open_ = 0;      // objects and arrays
    std::uint64_t lines_ = 0;   // which of them have a line a member: a bit each, the innermost lowest
    bool has_members_ = false;  // the innermost
    bool is_named_ = false;     // what comes next is a member's value
};

}  // namespace lode
