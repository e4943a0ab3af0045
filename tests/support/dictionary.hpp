#pragma once
// English words (package wamerican), and lists drawn from them.

#include <cstdint>
#include <string>
#include <vector>

namespace lode::test {

// The words of `least` to `most` letters that are written with a to z alone, in capitals. Throws
// std::runtime_error, naming the package, where the file is missing.
const std::vector<std::string>& english_words(int least, int most);

// A list as a careful maker would write it, the same for the same seed: a word is drawn again where it stands
// in another or another in it, read from either end, or where it holds one of the avoided words.
std::vector<std::string> drawn_list(const std::vector<std::string>& words, int count,
                                    const std::vector<std::string>& avoided, std::uint64_t seed);

}  // namespace lode::test
