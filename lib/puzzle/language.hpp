#pragma once
// What the rules of a text say of its language, worked out once: it takes longer than all else that a recipe
// of a few words is checked for.

#include <memory>
#include <string>
#include <unordered_map>
#include <vector>

#include <letterlode/text.hpp>

namespace lode {

// Immutable; recipes with the same rules share one.
class Language {
  public:
    // Refused as Segmenter::open does.
    [[nodiscard]] static Outcome<std::shared_ptr<const Language>> open(const TextRules& rules);

    [[nodiscard]] const Segmenter& segmenter() const { return segmenter_; }
    // Whether the letters of the language are known.
    [[nodiscard]] bool is_known() const { return !cases_.front().letters.empty(); }

    // The letters of the language, in the case that the rules name.
    struct InOneCase {
        std::vector<std::string> letters;
        std::vector<std::string> latin;  // A to Z, where the language or its letters are not known
    };
    // Where letters keep their case, of both.
    [[nodiscard]] const std::vector<InOneCase>& cases() const { return cases_; }
    // As `folded` gives it: of the language's letters it is known.
    [[nodiscard]] std::string plain(const std::string& letter) const;

  private:
    explicit Language(Segmenter segmenter);

    Segmenter segmenter_;
    std::vector<InOneCase> cases_;
    std::unordered_map<std::string, std::string> plain_;
};

}  // namespace lode
