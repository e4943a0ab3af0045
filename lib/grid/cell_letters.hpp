#pragma once
// What stands in the cells of a grid that was made elsewhere, as letters.

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>

#include <letterlode/grid.hpp>

#include "grid/cell_layout.hpp"

namespace lode {

// The letters of cells, by what is written there; each is spelled once.
class CellLetters {
  public:
    explicit CellLetters(const Segmenter& segmenter);

    // Nothing for a text that is no letter, or where the alphabet is full. The text is composed (NFC).
    std::optional<Letter> letter(std::string_view written);

    // Why there is no letter.
    struct Fault {
        std::string text;
        std::string advice;
    };
    [[nodiscard]] Fault fault(std::string_view written) const;

    [[nodiscard]] bool is_one_letter(std::string_view written) const;

    // The first letter of several characters that a row without blanks between its letters can be read with,
    // or an empty text.
    [[nodiscard]] std::string joined_in(const RowText& row) const;

    [[nodiscard]] Alphabet take() { return std::move(alphabet_); }

  private:
    static constexpr Letter unknown = empty_cell;

    // A segmenter passes over what is shown and not hidden: in a cell of a grid that is no letter, unless an
    // alphabet has it within one, like the apostrophe of C'H.
    [[nodiscard]] bool is_whole(std::string_view written) const;

    std::optional<Letter> spelled(std::string_view written);

    const Segmenter& segmenter_;
    Alphabet alphabet_;
    std::array<Letter, 128> of_byte_{};
    std::unordered_map<std::string, Letter> of_text_;
};

}  // namespace lode
