#pragma once
// Text in the form that man reads: roff with the macros of man(7).

#include <string>
#include <string_view>
#include <vector>

namespace lode::cli {

class Roff {
  public:
    // Running text, filled by man. Options in it keep their dashes.
    void paragraph(std::string_view text);
    void section(std::string_view title);
    // What is explained, already marked up, and its explanation.
    void item(const std::string& marked_up, std::string_view text);
    // Commands, each on a line of its own; a long one goes on in the next, as a shell lets it.
    void commands(const std::vector<std::string>& commands);
    // A line as it is.
    void line(const std::string& marked_up) { text_ += marked_up + "\n"; }

    [[nodiscard]] const std::string& text() const { return text_; }

  private:
    std::string text_;
};

// Running text in which nothing is taken for a command of roff; every character is plain ASCII afterwards.
[[nodiscard]] std::string roff_prose(std::string_view text);
// The same of what is typed: no dash becomes a hyphen, no quote a curved one.
[[nodiscard]] std::string roff_code(std::string_view text);
[[nodiscard]] std::string roff_bold(std::string_view code);
[[nodiscard]] std::string roff_italic(std::string_view code);

}  // namespace lode::cli
