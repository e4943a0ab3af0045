#pragma once
// Which of some sequences of letters stand inside which words, read from either end.

#include <cstddef>
#include <functional>
#include <memory>
#include <span>

#include <letterlode/text.hpp>

namespace lode {

enum class InnerCopies { one, several };

// The sequences made ready once, for words that come later. Const calls may run on several threads at once.
class InnerWords {
  public:
    // Cost: the letters of all sequences.
    explicit InnerWords(std::span<const Letters> sought);
    InnerWords(InnerWords&&) noexcept;
    InnerWords& operator=(InnerWords&&) noexcept;
    ~InnerWords();

    using Found = std::function<bool(std::size_t inner, std::size_t outer, InnerCopies copies)>;
    // Calls found(inner, outer, copies) once for every pair where sought[inner] can be read in words[outer],
    // forward or backward, and says whether in one set of cells or in several; outer words in order. Stops
    // where found returns false. Cost: the letters of all words, the number of sequences, and what is found.
    void find(std::span<const Letters> words, const Found& found) const;

  private:
    struct State;
    std::unique_ptr<const State> state_;
};

// For words that come but once.
void find_inner_words(std::span<const Letters> sought, std::span<const Letters> words,
                      const InnerWords::Found& found);

}  // namespace lode
