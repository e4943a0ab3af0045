#pragma once
// The independent judge: finds every copy of every word in any grid, and audits a finished grid. It knows
// nothing of how a grid was made; it shares no code with place and fill.

#include <atomic>
#include <functional>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include <letterlode/export.hpp>
#include <letterlode/grid.hpp>
#include <letterlode/text.hpp>

namespace lode {

/// A set of cells in a line where a word can be read. A palindrome read from its other end is the same copy
/// and is given once, in one of the directions right, down, down-right, up-right.
struct Copy {
    Cell first;                              ///< where the word's first letter stands
    Direction direction = Direction::right;  ///< in which it reads
    int length = 0;                          ///< in cells
    /// Where its last letter stands.
    [[nodiscard]] Cell last() const { return moved(first, direction, length - 1); }
    friend bool operator==(const Copy&, const Copy&) = default;
};

/// What a caller may do while a grid is searched. All may be left out.
struct SearchControl {
    unsigned threads = 1;  ///< how many processors to use at the most; the result is the same
    const std::atomic<bool>* cancel = nullptr;  ///< once true, the search stops soon
    /// Called now and then, on the calling thread: all copies that begin in so many of the rows were given.
    std::function<void(long long rows_done, long long rows)> progress = {};
};

/// How a search is made.
struct SearchRules {
    Directions directions = Directions::all();        ///< in which words are read
    std::size_t most = static_cast<std::size_t>(-1);  ///< copies that are given at the most
    SearchControl control = {};                       ///< threads, cancellation and progress
};

struct SearchMeans;

/// Built once from words, run over many grids. Const calls may run on several threads at once.
/// Cost of building: linear in the letters of all words. Of a search: linear in cells and copies, whatever
/// the grid and the words; in a grid that is not made to be slow a fraction of a nanosecond a cell for tens
/// of words, some nanoseconds for thousands. Memory of a search: a byte a cell of some rows, for each thread,
/// and copies that wait for their turn, some millions at the most. Where a grid is hard, states instead, a
/// few times columns times the square root of the rows; the first such search adds an automaton to the
/// matcher, some 150 bytes a letter of the words up to some 64 MB.
class LODE_API Matcher {
  public:
    /// Words may repeat and may stand inside each other; each is found by its place in the span. Throws
    /// std::invalid_argument for an empty word.
    explicit Matcher(std::span<const Letters> words);
    Matcher(Matcher&&) noexcept;
    Matcher& operator=(Matcher&&) noexcept;
    ~Matcher();

    /// Takes a word, by its place among the matcher's, and one of its copies; false ends the search.
    using Found = std::function<bool(std::size_t word, const Copy& copy)>;

    /// Calls found(word, copy) for every copy, on the calling thread: by first cell in reading order, then by
    /// direction, length and word. Stops where it returns false. A word of one letter is found once a cell,
    /// in the first of the rules' directions; a palindrome in one of the first four directions, or, where the
    /// rules have only its opposite, in that. Returns whether it came to the end: false where found, the
    /// limit (there was one copy more) or a cancellation ended it. Lets pass what found and progress throw.
    bool search(const Grid& grid, const Found& found, const SearchRules& rules = {}) const;

    /// As search, by means that tests choose; SearchMeans is known to the library alone.
    bool search_by(const SearchMeans& means, const Grid& grid, const Found& found,
                   const SearchRules& rules) const;

  private:
    struct Index;
    std::unique_ptr<Index> index_;
};

/// A word to be judged, and where it is said to stand.
struct AuditedWord {
    std::string shown;                     ///< as findings name it
    std::vector<std::string> letters;      ///< as Segmenter::spell gives them
    std::optional<Placement> placed = {};  ///< none: anywhere
    int expected = 1;                      ///< copies, the ones inside other words among them
    std::vector<std::size_t> outer =
        {};  ///< the words that it can be read inside, by their place among the judged
};

/// What else a grid is judged by.
struct AuditRules {
    /// Avoided words as written: matched whatever their case and marks. One of fewer than two letters, or
    /// with a character that can stand in no cell, is no word and is passed over.
    std::vector<std::string> avoid;
    std::vector<std::string> allowed;  ///< of these, the ones whose copies are no finding
    /// How many copies of one word, avoided words and words by chance are listed at the most, the longest of
    /// the last; 0 is taken for 1.
    std::size_t most = 10'000;
    /// Words that may stand by chance and are told, whatever their case; marks make another letter. One with
    /// a character that can stand in no cell is passed over.
    std::vector<std::string> dictionary = {};
    std::size_t shortest_by_chance = 4;  ///< letters that such a word has at the least
};

/// What was found of one word.
struct WordFinding {
    std::string shown;                     ///< as it was judged
    int expected = 1;                      ///< copies that there should be
    std::vector<Copy> copies;              ///< every copy, the strays among them
    std::vector<Copy> stray = {};          ///< those that nothing explains
    std::vector<std::string> inside = {};  ///< of each copy, a word that it stands inside, or an empty text
};

/// A word that nobody listed, and where it stands.
struct AvoidedFinding {
    std::string word;  ///< as the avoid list or the dictionary has it
    Copy copy;         ///< where it can be read
};

/// What the independent search found in a grid.
///
/// Certified is a grid with every word in its expected copies and nowhere else, and no avoided word.
/// Where a word's placement is known, a copy that covers other cells is a stray copy, unless more than one is
/// expected and it stands inside a word that holds it. Where it is not known, the copies beyond the expected
/// ones are, those inside other words and then those that come first being the expected ones. Missing is a
/// word with fewer copies than expected.
struct Audit {
    bool certified = false;  ///< there is no finding, and the search came to its end
    bool cut_short = false;  ///< there were more copies than `most`
    bool cancelled = false;  ///< the search did not come to its end: what is listed was found, no more known
    std::size_t avoided_words = 0;        ///< how many the rules name
    std::vector<WordFinding> words;       ///< in the order that they were given in
    std::vector<std::string> missing;     ///< words with too few copies, as shown
    std::vector<AvoidedFinding> avoided;  ///< each is a finding
    std::vector<AvoidedFinding> allowed;  ///< avoided words that the rules allow: no finding
    /// Copies of dictionary words that lie in no copy of a listed word, longest first. They are no finding.
    std::vector<AvoidedFinding> chance;
};

class AvoidedList;

/// The rules for one alphabet, built once and used on many grids. Const calls may run on several threads at
/// once.
class LODE_API Judge {
  public:
    /// Of the words, `placed` is not used. The segmenter spells the avoided words; it must follow the rules
    /// by which the grids are written.
    Judge(const Alphabet& alphabet, std::span<const AuditedWord> words, const AuditRules& rules,
          const Segmenter& segmenter);
    /// By avoided words alone, which were read before; AvoidedList is known to the library alone. None: there
    /// are none.
    Judge(const Alphabet& alphabet, std::vector<AuditedWord> words,
          std::shared_ptr<const AvoidedList> avoided);
    Judge(Judge&&) noexcept;
    Judge& operator=(Judge&&) noexcept;
    ~Judge();

    /// The grid is in letters of the alphabet. `placed` says by word where it stands, if that is known; it
    /// may be empty. The grid is searched up to three times, and `progress` counts the rows of all.
    [[nodiscard]] Audit audit(const Grid& grid, std::span<const std::optional<Placement>> placed = {},
                              const SearchControl& control = {}) const;

  private:
    struct Rules;
    std::unique_ptr<Rules> rules_;
};

/// Judges one grid, by rules that are used once.
[[nodiscard]] LODE_API Audit audit(const LetteredGrid& grid, std::span<const AuditedWord> words,
                                   const AuditRules& rules, const Segmenter& segmenter,
                                   const SearchControl& control = {});

}  // namespace lode
