#pragma once
// Dictionary words that stand in a grid by chance.

#include <string>
#include <vector>

#include <letterlode/find.hpp>

#include "find/covered_lines.hpp"
#include "find/other_reading.hpp"

namespace lode {

class ByChance {
  public:
    // Words of fewer than `shortest` letters, and those with a character that can stand in no cell, are
    // passed over; of words with the same letters the one that is written with the fewest bytes is told.
    ByChance(const Alphabet& alphabet, const std::vector<std::string>& dictionary, std::size_t shortest,
             const Segmenter& segmenter);

    // Appends to `findings` the copies that lie in none of `explained`, longest first, then by first cell and
    // direction, `most` at the most. Returns whether that is all: false where there were more, or where the
    // search was cancelled.
    bool find(const Grid& grid, const CoveredLines& explained, std::size_t most, const SearchControl& control,
              std::vector<AvoidedFinding>& findings) const;

  private:
    ByChance(const Alphabet& alphabet, const std::vector<std::string>& dictionary, std::size_t shortest,
             Segmenter&& one_case);
    OtherReading reading_;
    std::vector<std::string> words_;  // by their numbers in the reading
};

}  // namespace lode
