#pragma once
// A search for words in a grid whose letters are read another way: without case and marks, say.

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include <letterlode/find.hpp>

namespace lode {

class OtherReading {
  public:
    // `read_as` gives what a letter of the alphabet is taken for.
    OtherReading(const Alphabet& alphabet, const std::function<std::string(const std::string&)>& read_as);

    // Words in letters as they are read. One that has a letter which no letter of the alphabet is read as can
    // stand nowhere and is passed over; the others have numbers in the order in which they were added.
    // Returns whether the word was added.
    bool add(const std::vector<std::string>& letters);
    // The numbers of these letters as they are read; closed_cell where none is read so.
    [[nodiscard]] Letters numbers_of(const std::vector<std::string>& letters) const;
    // The same for a word of them, by their places among them, with what numbers_of gave.
    bool add(const std::vector<std::uint32_t>& word, const Letters& numbers);
    // After the last word.
    void build();

    // As Matcher::search; `found` is called with the number of the word.
    bool search(const Grid& grid, const Matcher::Found& found, const SearchRules& rules) const;

  private:
    Alphabet read_;
    Letters read_as_;  // by letter of the alphabet, in numbers of read_
    bool is_itself_ = true;
    std::vector<Letters> words_;
    std::optional<Matcher> matcher_;
};

}  // namespace lode
