#pragma once
// From text to letters. A letter is one user-perceived letter; it fills one cell and may be several code
// points. Text is UTF-8 throughout and is normalised (NFC) before anything else is done to it.

#include <array>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include <letterlode/export.hpp>
#include <letterlode/outcome.hpp>

namespace lode {

/// A letter's number in an Alphabet. Two values are no letters: see grid.hpp.
using Letter = std::uint16_t;
/// A word or a part of it, in letters of one Alphabet.
using Letters = std::vector<Letter>;

inline constexpr Letter closed_cell = 0xFFFF;       ///< a cell that the mask leaves out
inline constexpr Letter empty_cell = 0xFFFE;        ///< an open cell that holds no letter yet
inline constexpr std::size_t max_letters = 0xFFF0;  ///< that one Alphabet can number

/// In which case letters stand in the grid.
enum class LetterCase { upper, lower, keep };
/// "upper", "lower", "keep"
[[nodiscard]] LODE_API std::string_view name(LetterCase letters);
[[nodiscard]] LODE_API std::optional<LetterCase> letter_case_named(std::string_view name);

/// Whether the letters of several characters that a language's alphabet has (CH, DD and LL in Welsh) get a
/// cell each, or one a character. "join", "split"
enum class Digraphs { join, split };
[[nodiscard]] LODE_API std::string_view name(Digraphs rule);
[[nodiscard]] LODE_API std::optional<Digraphs> digraphs_named(std::string_view name);

/// The German sharp s in two cells (SS), or in one (its capital is U+1E9E). "double", "keep"
enum class SharpS { doubled, keep };
[[nodiscard]] LODE_API std::string_view name(SharpS rule);
[[nodiscard]] LODE_API std::optional<SharpS> sharp_s_named(std::string_view name);

/// Letters with their marks, or without those that can be taken off: every mark of a Latin or Greek letter
/// that Unicode decomposes it into (CAFE for CAFÉ; Ø, Ł, Đ and ß have none, and the dot of a Turkish İ is
/// none); stress, points and vowel signs that stand on Cyrillic, Hebrew, Arabic and Syriac letters, but not
/// what makes another letter of one (й, ё, ї, and hamza and madda on أ, ؤ, آ); nothing in other scripts,
/// where vowel signs, viramas and voicing marks are what is read. "keep", "strip"
enum class Marks { keep, strip };
[[nodiscard]] LODE_API std::string_view name(Marks rule);
[[nodiscard]] LODE_API std::optional<Marks> marks_named(std::string_view name);

/// The Hebrew letters that look otherwise at a word's end (ך ם ן ף ץ), and the Greek final sigma: letters of
/// their own, or the same as within a word. "keep", "fold"
enum class Finals { keep, fold };
[[nodiscard]] LODE_API std::string_view name(Finals rule);
[[nodiscard]] LODE_API std::optional<Finals> finals_named(std::string_view name);

/// By which rules words become letters.
struct TextRules {
    std::string locale = "root";             ///< a BCP 47 tag ("en", "cy", "sr-Latn"), or "root"
    LetterCase letters = LetterCase::upper;  ///< in the grid; the list keeps its own
    Digraphs digraphs = Digraphs::join;      ///< of the language's alphabet
    std::optional<SharpS> sharp_s = {};      ///< none: doubled in upper case, kept otherwise
    Marks marks = Marks::keep;               ///< on letters
    Finals finals = Finals::keep;            ///< of Hebrew and Greek
    friend bool operator==(const TextRules&, const TextRules&) = default;
};

/// Parts letters inside a word: "Ban|gor" has N and G where "llong" has NG. It is neither shown nor hidden.
inline constexpr char letter_bar = '|';
/// The word as it is shown, without its bars.
[[nodiscard]] LODE_API std::string without_bars(std::string_view word);

/// Cuts words into letters by the rules of a locale: normalised, cased, then by grapheme clusters (UAX #29 as
/// ICU tailors it), of which the locale's alphabet joins some: the longest of CLDR's main exemplars that
/// stands there, whatever its case, and not across a bar, a space or punctuation. A letter that is written
/// longer for a long sound (Hungarian SSZ for SZ twice) has one cell, as it is one sign to its reader.
/// Spaces, hyphens, apostrophes that are no part of a letter, and other punctuation are left out, and so is
/// what cannot be seen (joiners, soft hyphens, direction marks) or only stretches a line (the Arabic
/// kashida); letters with their marks, and digits, are kept. Const calls may run on several threads at once.
class LODE_API Segmenter {
  public:
    /// Refused as unusable where the locale is no well-formed tag of a known language.
    [[nodiscard]] static Outcome<Segmenter> open(const TextRules& rules);
    Segmenter(Segmenter&&) noexcept;
    Segmenter& operator=(Segmenter&&) noexcept;
    ~Segmenter();

    /// A word cut into letters, or what stands in its way.
    struct Spelling {
        std::vector<std::string> letters;  ///< none where there is a bad character
        std::string bad;                   ///< the first character that can stand in no cell, or empty
        int bad_position = 0;              ///< its place in the text, counted in grapheme clusters from 1
    };
    /// The letters of a word, as they stand in the cells. Text that is no UTF-8 has a bad character. Linear.
    [[nodiscard]] Spelling spell(std::string_view text) const;

    /// The word as it can stand in a grid: joined as `spell` does it, and every other way to join or split
    /// its letters, the sharp s among them, whatever their case and marks; for each a text that `spell` takes
    /// apart in that way. The word itself comes first, and alone where nothing can be joined. Of very many
    /// ways so many are given as `at_most` says, and the word and the one that joins nothing in any case.
    /// Cost: the letters of what is given.
    [[nodiscard]] std::vector<std::string> readings(std::string_view word, std::size_t at_most = 64) const;

    /// One string a grapheme cluster, punctuation and spaces included, normalised and cased; nothing is
    /// joined.
    [[nodiscard]] std::vector<std::string> clusters(std::string_view text) const;

    /// The letters that its language is written with, as main_letters below gives them.
    [[nodiscard]] std::vector<std::string> main_letters() const;

    /// The rules that it was opened with.
    [[nodiscard]] const TextRules& rules() const;
    /// Whether there are letters of several characters that `spell` joins.
    [[nodiscard]] bool joins_letters() const;

  private:
    struct State;
    explicit Segmenter(std::unique_ptr<State> state);
    std::unique_ptr<State> state_;
};

/// The letter without its marks, case and final form, by which avoided words are matched: "é" and "E" give
/// the same.
[[nodiscard]] LODE_API std::string folded(std::string_view letter);

/// The text in normalisation form C, or nothing where it is no valid UTF-8.
[[nodiscard]] LODE_API std::optional<std::string> normalised(std::string_view text);

/// The letters that a locale's language is written with: CLDR's main exemplars, as far as the rules make one
/// letter of each, with those of several characters at the end (not the ones that stand for a long sound:
/// Hungarian SSZ is no letter of the alphabet). Empty for "root", which is no language, and for a language
/// that CLDR has no data of.
[[nodiscard]] LODE_API std::vector<std::string> main_letters(const TextRules& rules);

/// True where the first strong character of the text is written from right to left.
[[nodiscard]] LODE_API bool is_right_to_left(std::string_view text);

/// Letters in order of their numbers.
class LODE_API Alphabet {
  public:
    /// The number of the letter; a new one where it was not known. Throws std::length_error beyond
    /// max_letters.
    Letter add(std::string_view letter);
    /// The numbers of these letters in their order, each as `add` gives it.
    Letters add_all(const std::vector<std::string>& letters);

    /// The number of the letter, or nothing where it was never added.
    [[nodiscard]] std::optional<Letter> find(std::string_view letter) const;
    /// Throws std::out_of_range for a number that is none of this alphabet's.
    [[nodiscard]] const std::string& text(Letter letter) const { return texts_.at(letter); }
    /// How many letters there are; they are numbered from 0.
    [[nodiscard]] std::size_t size() const { return texts_.size(); }

  private:
    /// Of the letters of one byte, by that byte; none is closed_cell. Most letters are of one.
    static constexpr std::array<Letter, 128> no_bytes = [] {
        std::array<Letter, 128> none{};
        for (Letter& number : none) number = closed_cell;
        return none;
    }();
    std::vector<std::string> texts_;
    std::array<Letter, 128> bytes_ = no_bytes;
    std::unordered_map<std::string, Letter> numbers_;  // the others
};

/// A word as the maker wrote it, and the line that it stood on (0 where there is none).
struct ListedWord {
    std::string shown;  ///< as the list has it, bars included
    int line = 0;       ///< from 1
    /// How the word is marked in artwork: a colour as read_colour takes it, "none", or empty: as the others.
    std::string band = {};
};

/// A list as written. `source` names it in messages: a file's name, or empty.
struct WordLines {
    std::string source;             ///< a name for messages
    std::vector<ListedWord> words;  ///< in the order of the list
};

inline constexpr std::size_t max_list_words = 1'000'000;     ///< that are read
inline constexpr std::size_t max_list_letters = 16'000'000;  ///< of all words of a list
inline constexpr std::size_t max_word_bytes = 100'000;       ///< as shown

/// Reads a list: UTF-8, a word a line. Blank lines are passed over, and so are comments: a line that starts
/// with '#', and what follows a '#' that stands between blanks. A byte order mark and CRLF are taken.
/// A list whose first line is "word,band" (or with a semicolon or a tab) is a table: a word a row and, where
/// it has a second field, its band; fields may stand in quotes, doubled inside (RFC 4180).
/// Refused as unusable: text that is no UTF-8 (naming the line), control characters, more than
/// max_list_words, a row with more fields, quotes that are not closed.
[[nodiscard]] LODE_API Outcome<WordLines> read_word_lines(std::string_view text, std::string_view source);

inline constexpr std::size_t max_dictionary_words = 5'000'000;  ///< that are read

/// Reads a dictionary: a word a line, with what follows a '/' or a tab passed over, as the word lists of
/// spelling checkers have it, and lines that are none of text. Refused as unusable: no word, more than
/// max_dictionary_words.
[[nodiscard]] LODE_API Outcome<std::vector<std::string>> read_dictionary(std::string_view text,
                                                                         std::string_view source);

/// A word checked at the door: `letters` is what stands in the grid.
struct Word {
    std::string shown;                 ///< without bars
    std::vector<std::string> letters;  ///< one a cell, normalised and cased
    int line = 0;                      ///< of the list, from 1; 0: none
};

/// A list whose words can all stand in a grid.
struct WordList {
    std::string source;       ///< as WordLines has it
    std::vector<Word> words;  ///< in the order of the list
};

/// Spells every word. Refused as unusable, naming file, line and word: a word with fewer than two letters or
/// a character that can stand in no cell, two words with the same letters, an empty list; and lists beyond
/// any puzzle: more than max_list_letters in all, max_word_bytes in a word, or 30,000 different letters.
[[nodiscard]] LODE_API Outcome<WordList> spell(const WordLines& lines, const Segmenter& segmenter);

/// "words.txt:7: " for messages, or "" where neither source nor line is known.
[[nodiscard]] LODE_API std::string place_in(std::string_view source, int line);

}  // namespace lode
