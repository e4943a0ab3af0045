#pragma once
// The avoided words of an audit: spelled once, and then sought in grids of any alphabet.

#include <cstdint>
#include <string>
#include <vector>

#include <letterlode/find.hpp>

namespace lode {

// Immutable once it is read.
class AvoidedList {
  public:
    AvoidedList(const AuditRules& rules, const Segmenter& segmenter);

    struct Word {
        std::string name;  // as the rules have it
        bool is_allowed;
        std::vector<std::uint32_t> letters;  // by their places in `letters` below
    };
    // Those of two letters or more, each once whatever its case and marks.
    [[nodiscard]] const std::vector<Word>& words() const { return words_; }
    // Without case and marks, each once. There may be more than an Alphabet has room for.
    [[nodiscard]] const std::vector<std::string>& letters() const { return letters_; }
    // How many words the rules name.
    [[nodiscard]] std::size_t named() const { return named_; }

  private:
    std::vector<std::string> letters_;
    std::vector<Word> words_;
    std::size_t named_;
};

}  // namespace lode
