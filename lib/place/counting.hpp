#pragma once
// What counting alone says about words that are to come: which candidates leave too few lines for the long
// words, long before a search would have tried it.
//
// A line is a row, a column or a diagonal, from one closed cell or edge to the next. Two words exclude each
// other where they cannot both lie along one line: they are too long to stand side by side on the longest
// one, and where they overlap their letters do not agree enough to save the room. Of words that all exclude
// each other, each needs a line of its own; that is a matching of words to lines, and by Hall's theorem there
// is none as soon as some of the words have fewer lines between them than they are words.
//
// A candidate of any word takes lines away from the others. Along its own line it shuts out every word that
// excludes its own. A line that it crosses it leaves to those words alone that have a candidate there with
// its letter in the cell where it crosses, or one that does not reach that cell. Where the words to come can
// no longer be matched to the lines that are left, the candidate is in no placement.
//
// Proof. Take any placement of all words that contains candidate c and keeps to the sets. Each excluding word
// u other than c's own stands on one line, in a candidate of its set. No two of them on the same line, since
// they exclude each other; not on c's own line where u and c's word exclude each other; and where c crosses
// u's line, either u does not reach the cell or it has c's letter there. So u's line is one that was left to
// u, and the words and their lines are a matching. Where there is no matching, there is no such placement.
//
// This is the filter for all-different variables (Regin, "A filtering algorithm for constraints of difference
// in CSPs", AAAI 1994), asked once for each candidate with what the candidate rules out. One matching is kept
// and mended for each candidate that breaks it (augmenting paths: Berge, "Two theorems in graph theory", PNAS
// 43, 1957). Without it a proof goes through every order of parallel long words in the rows that they fill.
// Judged by tests/counting_test.cpp against brute force, by tests/oracles/sat_test.cpp against a SAT solver.

#include <cstdint>
#include <span>
#include <vector>

#include "place/candidates.hpp"

namespace lode {

class LineCounting {
  public:
    // The candidates must outlive it.
    LineCounting(const PlaceTask& task, const Candidates& candidates);

    enum class Verdict { impossible, narrowed, unchanged };
    // Takes candidates of the words to come out of the set that are in no placement of all of them. The set
    // must hold none that the words in place rule out. `impossible` where a word has none left or the words
    // have too few lines.
    [[nodiscard]] Verdict narrow(Block* set, std::span<const std::uint32_t> to_come);
    // How many candidates it has looked at so far: what it cost.
    [[nodiscard]] std::uint64_t looks() const { return looks_; }
    // Whether there are words enough for it to say anything.
    [[nodiscard]] bool is_useful() const { return long_words_.size() > 1; }

  private:
    // Sets of long words, a bit for each, and sets of lines.
    using WordSet = std::uint32_t;
    using LineSet = std::uint64_t;
    static constexpr std::size_t most_long_words = 32;
    static constexpr std::size_t most_lines = 64;
    static constexpr std::size_t axes = 4;
    static constexpr std::uint8_t none = 0xFF;

    struct Line {
        std::vector<std::uint32_t> cells;
        std::uint32_t axis = 0;
    };

    void list_lines(const PlaceTask& task);
    void choose_long_words(const PlaceTask& task);
    void note_uses(const PlaceTask& task);
    void offer_lines(const Block* set, std::span<const std::uint32_t> to_come);
    void offer_lines_of(std::size_t number, const Block* set);
    [[nodiscard]] bool match_all();
    [[nodiscard]] bool augment(std::size_t number);
    void note_breaks();
    [[nodiscard]] WordSet broken_by(Candidate candidate, std::uint32_t word) const;
    [[nodiscard]] bool find_free_lines(Candidate candidate, WordSet broken) const;
    [[nodiscard]] bool can_match_beside(Candidate candidate, std::uint32_t word, WordSet broken);
    [[nodiscard]] Verdict narrow_word(Block* set, std::uint32_t word);
    [[nodiscard]] std::size_t row_of(std::uint32_t cell, std::size_t axis) const {
        return (cell * axes + axis) * letters_;
    }

    const Candidates& candidates_;
    std::size_t cells_;
    std::size_t letters_ = 0;  // the words' letters lie below
    std::vector<std::uint32_t> long_words_;
    std::vector<WordSet> excludes_;      // by word: the long words that it excludes
    std::vector<std::uint8_t> number_;   // by word: where it is among the long words
    std::vector<Line> lines_;            // those on which long words have candidates
    std::vector<std::uint8_t> line_at_;  // by cell and axis
    std::vector<std::uint16_t> place_on_line_;
    std::vector<std::uint8_t> axis_of_;     // by candidate
    std::vector<LineSet> touched_by_;       // by candidate: all lines that run through one of its cells
    std::vector<std::uint32_t> first_use_;  // by candidate, where its uses start
    std::vector<std::uint32_t> uses_;       // cell and letter of each of its cells, as one number
    std::uint64_t looks_ = 0;

    // Of the call that is under way.
    WordSet present_ = 0;                // long words to come
    std::vector<LineSet> lines_of_;      // by long word
    std::vector<WordSet> words_on_;      // by line
    std::vector<WordSet> left_;          // by cell, axis and letter: the words that the letter leaves there
    std::vector<std::uint8_t> word_at_;  // by line, in the matching
    std::vector<std::uint8_t> at_line_;  // by long word, in the matching
    std::vector<std::uint8_t> kept_word_at_;
    std::vector<WordSet> breaks_;   // by axis, cell and letter: the matched words that lose their line
    std::vector<WordSet> allowed_;  // by line, for the candidate that is being looked at
    LineSet free_ = 0;              // lines of no word in the matching
    LineSet seen_ = 0;
};

}  // namespace lode
