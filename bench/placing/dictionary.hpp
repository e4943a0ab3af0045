#pragma once
// English words, and lists drawn from them.

#include <set>
#include <vector>

#include <letterlode/grid.hpp>

#include "random/random.hpp"

namespace lode::bench {

// A is letter 0. By length, from 0 to 10; those under 4 letters are empty, and none holds a word of the
// default avoid list. Throws std::runtime_error, naming the package, where the file of words is missing.
[[nodiscard]] const std::vector<std::vector<Letters>>& words_by_length();

[[nodiscard]] const Letters& drawn_word(std::size_t least, std::size_t most, Random& random);

// A list that grows by words of which none stands in another, from either end.
class WordsApart {
  public:
    // Whether it was taken. Looks up the word's own pieces and itself among all others': its cost does not
    // grow with the list.
    bool take(const Letters& word);
    [[nodiscard]] const std::vector<Letters>& words() const { return words_; }
    [[nodiscard]] std::size_t letters() const { return letters_; }

  private:
    std::vector<Letters> words_;
    std::set<Letters> known_;   // the words
    std::set<Letters> pieces_;  // what can be read in them, from either end
    std::size_t letters_ = 0;
};

}  // namespace lode::bench
