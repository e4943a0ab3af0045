#pragma once
// The words that a recipe avoids, made ready for grids of any alphabet: for the search that places and fills,
// and apart from that for the audit.

#include <memory>
#include <string>
#include <vector>

#include <letterlode/puzzle.hpp>

#include "find/avoided_list.hpp"
#include "grid/copy_guard.hpp"
#include "puzzle/avoided_words.hpp"
#include "puzzle/inner_words.hpp"
#include "puzzle/language.hpp"

namespace lode {

// Immutable; recipes that avoid the same words by the same rules share one.
class Avoidance {
  public:
    // Refused as unusable: a bad avoided or allowed word.
    [[nodiscard]] static Outcome<std::shared_ptr<const Avoidance>> read(const Recipe& recipe,
                                                                        const Segmenter& segmenter);

    [[nodiscard]] const std::vector<AvoidedReading>& readings() const { return readings_; }
    // As an audit takes them; none where nothing is avoided.
    [[nodiscard]] const std::shared_ptr<const AvoidedList>& judged() const { return judged_; }

    // What no grid may hold: the readings without the allowed ones, each once whatever its case and marks, by
    // the words as listed.
    [[nodiscard]] const std::vector<std::string>& names() const { return names_; }
    // The letters of an alphabet without case and marks, in the numbers of what is below; closed_cell for one
    // that no avoided word has.
    [[nodiscard]] Letters seen_as(const Alphabet& alphabet, const Language& language) const;
    // Finds them, by their places in `names`, in words of letters that are seen as above.
    [[nodiscard]] const InnerWords& inside() const { return inside_; }
    // Over those whose letters are all seen in a grid; the others can stand nowhere. `which` gets their
    // places in `names`, or stays empty where they are all.
    [[nodiscard]] CopyGuard guard(Letters seen_as, std::vector<std::size_t>& which) const;

  private:
    Avoidance(std::vector<AvoidedReading> readings, std::shared_ptr<const AvoidedList> judged, Alphabet plain,
              std::vector<std::string> names, std::vector<Letters> sought);

    std::vector<AvoidedReading> readings_;
    std::shared_ptr<const AvoidedList> judged_;
    Alphabet plain_;  // their letters without case and marks, and those of the allowed ones
    std::vector<std::string> names_;
    std::vector<Letters> sought_;  // by their places in names_
    std::vector<bool> is_sought_;  // by letter
    InnerWords inside_;
    CopyGuard guard_;  // over all of them; it sees no grid
};

}  // namespace lode
