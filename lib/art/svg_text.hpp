#pragma once
// What stands in the attributes of an SVG document: numbers, lengths, lists of transforms (SVG 1.1, chapters
// 4.2 and 7.6; SVG 2 where it is stricter about a number's point).

#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

#include "art/affine.hpp"

namespace lode {

// Reads on from the front of a text. Whatever is asked for and is not there leaves the place as it was.
class SvgText {
  public:
    explicit SvgText(std::string_view text) : text_(text) {}

    [[nodiscard]] std::size_t place() const { return at_; }
    [[nodiscard]] bool ended() const { return at_ == text_.size(); }
    [[nodiscard]] char next() const { return ended() ? '\0' : text_[at_]; }
    char take() { return text_[at_++]; }
    bool take(char c);

    void skip_blanks();
    // Blanks with at most one comma among them.
    void skip_separator();
    // Signed, with an exponent, or starting with its point. None that is larger than 1e12 either way.
    std::optional<double> number();
    // A single 0 or 1, after which anything may follow.
    std::optional<bool> flag();
    std::string_view letters();
    [[nodiscard]] std::string_view rest() const { return text_.substr(at_); }

  private:
    std::string_view text_;
    std::size_t at_ = 0;
};

// In user units, of which an inch has 96; percentages of `whole`.
[[nodiscard]] std::optional<double> svg_length(std::string_view text, std::optional<double> whole);
// Numbers with separators between; nothing where there is anything else.
[[nodiscard]] std::optional<std::vector<double>> svg_numbers(std::string_view text);
[[nodiscard]] std::optional<Affine> svg_transform(std::string_view text);

}  // namespace lode
