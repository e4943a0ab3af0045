#pragma once
// The ways in which a word can stand in cells.

#include <string>
#include <string_view>
#include <vector>

#include "text/joined_letters.hpp"

namespace lode {

struct Joining {
    const JoinedLetters& letters;
    bool keeps_sharp_s;
};

// See Segmenter::readings. `letters` are the word's where nothing is joined.
[[nodiscard]] std::vector<std::string> readings_of(std::string_view word,
                                                   const std::vector<std::string>& letters,
                                                   const Joining& joining, std::size_t at_most);

}  // namespace lode
